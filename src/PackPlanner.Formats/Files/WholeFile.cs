using System.Text;

namespace PackPlanner.Formats.Files;

/// <summary>Writes a file so that a reader, or a crash, finds the old one or the new one, never half of one.</summary>
public static class WholeFile
{
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    /// <summary>Writes text beside the target, flushes it to the disk, then puts it in the target's place.</summary>
    /// <param name="path">The target; its folder must exist.</param>
    /// <param name="text">The whole content.</param>
    /// <exception cref="IOException">The disk is full, or the folder is gone.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder or the target may not be written.</exception>
    public static void Write(string path, string text) => Write(path, Utf8.GetBytes(text));

    /// <summary>Writes bytes beside the target, flushes them to the disk, then puts them in the target's place.</summary>
    /// <param name="path">The target; its folder must exist.</param>
    /// <param name="content">The whole content.</param>
    /// <exception cref="IOException">The disk is full, or the folder is gone.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder or the target may not be written.</exception>
    public static void Write(string path, byte[] content)
    {
        string full = Path.GetFullPath(path);
        string beside = $"{full}.{Environment.ProcessId}.new";
        try
        {
            using (FileStream stream = new(beside, FileMode.Create, FileAccess.Write, FileShare.None))
            {
                stream.Write(content);
                stream.Flush(flushToDisk: true);
            }

            File.Move(beside, full, overwrite: true);
        }
        catch
        {
            File.Delete(beside);
            throw;
        }
    }
}
