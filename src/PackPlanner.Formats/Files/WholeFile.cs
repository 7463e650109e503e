using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace PackPlanner.Formats.Files;

/// <summary>Writes a file so that a reader, or a crash, finds the old one or the new one, never half of one.</summary>
/// <remarks>A link stays a link and what it points to is written; a private file stays private; a device or a pipe is written into, never replaced.</remarks>
public static class WholeFile
{
    private const string Ending = ".new";
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    /// <summary>Writes text beside the target, flushes it to the disk, then puts it in the target's place.</summary>
    /// <param name="path">The target; its folder must exist.</param>
    /// <param name="text">The whole content.</param>
    /// <param name="flushToDisk">Waits until the disk has it, so that a power cut too leaves the old one or the new one.</param>
    /// <exception cref="IOException">The disk is full, or the folder is gone.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder or the target may not be written.</exception>
    public static void Write(string path, string text, bool flushToDisk = true) => Write(path, Utf8.GetBytes(text), flushToDisk);

    /// <summary>Writes bytes beside the target, flushes them to the disk, then puts them in the target's place.</summary>
    /// <param name="path">The target; its folder must exist.</param>
    /// <param name="content">The whole content.</param>
    /// <param name="flushToDisk">Waits until the disk has it, so that a power cut too leaves the old one or the new one.</param>
    /// <exception cref="IOException">The disk is full, or the folder is gone.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder or the target may not be written.</exception>
    public static void Write(string path, byte[] content, bool flushToDisk = true)
    {
        string full = Target(path);
        if (IsDeviceOrPipe(full))
        {
            using FileStream into = new(full, FileMode.Open, FileAccess.Write, FileShare.ReadWrite);
            into.Write(content);
            return;
        }

        string beside = string.Create(CultureInfo.InvariantCulture, $"{full}.{Environment.ProcessId}{Ending}");
        try
        {
            using (FileStream stream = new(beside, Options(full)))
            {
                stream.Write(content);
                stream.Flush(flushToDisk);
            }

            File.Move(beside, full, overwrite: true);
        }
        catch (Exception fault)
        {
            if (File.Exists(beside))
                File.Delete(beside);
            if (OfTarget(fault, beside, full) is { } said)
                throw said;
            throw;
        }

        // What a killed program left beside goes when the next one has written there.
        SweepStrays(full);
    }

    // The file beside carries the number of the process, and nobody named it.
    private static Exception? OfTarget(Exception fault, string beside, string full) => fault switch
    {
        DirectoryNotFoundException => new DirectoryNotFoundException($"the folder {Path.GetDirectoryName(full)} is not there", fault),
        _ when !fault.Message.Contains(beside, StringComparison.Ordinal) => null,
        UnauthorizedAccessException => new UnauthorizedAccessException(fault.Message.Replace(beside, full, StringComparison.Ordinal), fault),
        IOException => new IOException(fault.Message.Replace(beside, full, StringComparison.Ordinal), fault),
        _ => null,
    };

    private static string Target(string path)
    {
        FileInfo named = new(Path.GetFullPath(path));
        return named.LinkTarget is null ? named.FullName : named.ResolveLinkTarget(returnFinalTarget: true)!.FullName;
    }

    private static bool IsDeviceOrPipe(string full)
    {
        if (!File.Exists(full))
            return false;
        if (!OperatingSystem.IsWindows() && full.StartsWith("/dev/", StringComparison.Ordinal))
            return true;
        // Opening changes nothing in an ordinary file, and refuses one that its owner has made read-only.
        using FileStream there = new(full, FileMode.Open, FileAccess.Write, FileShare.ReadWrite);
        return !there.CanSeek;
    }

    private static FileStreamOptions Options(string full)
    {
        FileStreamOptions options = new() { Mode = FileMode.Create, Access = FileAccess.Write, Share = FileShare.None };
        if (!OperatingSystem.IsWindows() && File.Exists(full))
            options.UnixCreateMode = File.GetUnixFileMode(full);
        return options;
    }

    /// <summary>What killed programs left half written beside a file: none of a program that runs, and nothing that another gave a like name.</summary>
    /// <param name="path">The file that was being written.</param>
    /// <returns>Whole paths; none where the folder cannot be looked into.</returns>
    public static IReadOnlyList<string> StraysBeside(string path)
    {
        try
        {
            string full = Target(path), name = Path.GetFileName(full);
            return [.. Directory.EnumerateFiles(Path.GetDirectoryName(full)!, $"{name}.*{Ending}").Where(stray => IsOfTheDead(Path.GetFileName(stray)[(name.Length + 1)..^Ending.Length]))];
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return [];
        }
    }

    /// <summary>Takes away what killed programs left half written beside a file, as far as that may be done; the file itself is not touched.</summary>
    /// <param name="path">The file that was being written.</param>
    public static void SweepStrays(string path)
    {
        try
        {
            foreach (string stray in StraysBeside(path))
                File.Delete(stray);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // It is nobody's loss; a stray may lie there until a later time.
        }
    }

    private static bool IsOfTheDead(string middle) =>
        int.TryParse(middle, NumberStyles.None, CultureInfo.InvariantCulture, out int writer) && !Runs(writer);

    private static bool Runs(int process)
    {
        try
        {
            using Process found = Process.GetProcessById(process);
            return true;
        }
        catch (ArgumentException)
        {
            return false;
        }
    }
}
