namespace PackPlanner.Formats.Files;

/// <summary>Writes several files into one folder, each whole.</summary>
public static class FolderFiles
{
    /// <summary>Writes text files.</summary>
    /// <param name="folder">Made when it is missing.</param>
    /// <param name="files">Names and contents.</param>
    /// <returns>The paths written, in the same order, or why one could not be.</returns>
    public static Outcome<IReadOnlyList<string>> Write(string folder, IReadOnlyList<(string Name, string Text)> files) =>
        Write(folder, [.. files.Select(file => (file.Name, System.Text.Encoding.UTF8.GetBytes(file.Text)))]);

    /// <summary>Writes files.</summary>
    /// <param name="folder">Made when it is missing.</param>
    /// <param name="files">Names and contents.</param>
    /// <returns>The paths written, in the same order, or why one could not be.</returns>
    public static Outcome<IReadOnlyList<string>> Write(string folder, IReadOnlyList<(string Name, byte[] Bytes)> files)
    {
        List<string> written = [];
        try
        {
            Directory.CreateDirectory(folder);
            foreach ((string name, byte[] bytes) in files)
            {
                string path = Path.Combine(folder, name);
                WholeFile.Write(path, bytes);
                written.Add(path);
            }

            return written;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return Refusal.Input("folder-not-written", folder, $"it could not be written: {fault.Message.TrimEnd('.')}",
                written.Count == 0 ? "Name a folder that you may write." : $"Name a folder that you may write; {written.Count} of {files.Count} files are written.");
        }
    }
}
