using System.Security.Cryptography;
using System.Text.RegularExpressions;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats.Files;

namespace PackPlanner.Formats.JobFiles;

/// <summary>Opens, saves and copies job files. A file is always the old one or the new one, never half of one.</summary>
public static partial class JobFile
{
    /// <summary>What a job file's name ends in.</summary>
    public const string Ending = ".job.json";

    /// <summary>Makes the file of a new job.</summary>
    /// <param name="path">Where; the ending .job.json is added when it is missing.</param>
    /// <param name="history">The job.</param>
    /// <returns>The open job, or why it could not be written. A file that exists is never replaced.</returns>
    public static Outcome<OpenJob> Create(string path, JobHistory history)
    {
        string named = WithEnding(path);
        return File.Exists(named) || Directory.Exists(named)
            ? Refusal.Input("job-exists", named, "there is already a file of this name", "Choose another name, or open that job. Nothing was changed.")
            : Write(named, history, UnknownFields.None, expected: null);
    }

    /// <summary>Opens a job.</summary>
    /// <param name="path">Its file, with or without the ending.</param>
    /// <returns>The open job, or why it could not be read.</returns>
    public static Outcome<OpenJob> Open(string path)
    {
        string named = File.Exists(path) ? path : WithEnding(path);
        byte[] bytes;
        try
        {
            bytes = File.ReadAllBytes(named);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return File.Exists(named)
                ? Refusal.Input("job-not-read", named, $"it could not be read: {fault.Message.TrimEnd('.')}", "See that you may read it.")
                : Refusal.Input("job-not-found", named, "there is no such file", $"packplanner job new {named} makes it.");
        }

        ReadOnlyMemory<byte> text = bytes.AsSpan() is [0xEF, 0xBB, 0xBF, ..] ? bytes.AsMemory(3) : bytes;
        if (!JobText.Read(named, text).Is(out (JobHistory History, UnknownFields Unknown) read, out Refusal? why))
            return why;
        return new OpenJob(named, read.History, FingerprintOf(bytes), read.Unknown);
    }

    /// <summary>Whether a name given among other files means a job, with or without its ending.</summary>
    /// <param name="path">A name as typed.</param>
    /// <returns>True for a name of a job, for one that a job file lies under, and for a file that begins as a job.</returns>
    public static bool IsNamedBy(string path) => path.EndsWith(Ending, StringComparison.OrdinalIgnoreCase)
        || (File.Exists(path) ? JsonLook.HeadOf(path) is { } head && SchemaOfAJob().IsMatch(head) : File.Exists(WithEnding(path)));

    [GeneratedRegex("^\\s*\\{\\s*\"schema\"\\s*:\\s*\"packplanner/job\"")]
    private static partial Regex SchemaOfAJob();

    /// <summary>Saves an open job in its place.</summary>
    /// <param name="job">The job with its changes.</param>
    /// <returns>The job as saved; refused with code job-changed-elsewhere when another program wrote the file since, and then nothing is written.</returns>
    public static Outcome<OpenJob> Save(OpenJob job) => Write(job.Path, job.History, job.Unknown, job.Fingerprint);

    /// <summary>Takes away what a killed program left half written beside a job. While another program writes the job, nothing is touched.</summary>
    /// <param name="path">The job's file.</param>
    public static void SweepStrays(string path)
    {
        // The turn to write is taken only where there is something to sweep: a program that wants it meanwhile would be refused.
        if (WholeFile.StraysBeside(path).Count == 0)
            return;
        try
        {
            using FileStream turn = Turn(path);
            WholeFile.SweepStrays(path);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // Somebody writes, or nobody may: what lies there can wait.
        }
    }

    /// <summary>Writes a copy of a job with all its changes under another name.</summary>
    /// <param name="job">The job.</param>
    /// <param name="path">The new file, which must not exist.</param>
    /// <returns>The copy, open.</returns>
    public static Outcome<OpenJob> Copy(OpenJob job, string path)
    {
        string named = WithEnding(path);
        return File.Exists(named) || Directory.Exists(named)
            ? Refusal.Input("job-exists", named, "there is already a file of this name", "Choose another name. Nothing was changed.")
            : Write(named, job.History, job.Unknown, expected: null);
    }

    /// <summary>The name with the ending of job files.</summary>
    /// <param name="path">A name, with or without it.</param>
    /// <returns>The name with it.</returns>
    public static string WithEnding(string path) =>
        path.EndsWith(".json", StringComparison.OrdinalIgnoreCase) ? path : path + Ending;

    /// <summary>Checksum of a file's bytes as jobs keep it.</summary>
    /// <param name="bytes">The bytes.</param>
    /// <returns>64 lower-case hexadecimal digits.</returns>
    public static string FingerprintOf(ReadOnlySpan<byte> bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));

    private static FileStream Turn(string path) => new($"{path}.lock", FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None, 1, FileOptions.DeleteOnClose);

    private static Outcome<OpenJob> Write(string path, JobHistory history, UnknownFields unknown, string? expected)
    {
        byte[] bytes = JobText.Write(history, unknown);
        try
        {
            // Held only while checking and writing, so that of two programs that save at once the second sees the first.
            using FileStream turn = Turn(path);
            string? found = File.Exists(path) ? FingerprintOf(File.ReadAllBytes(path)) : null;
            if (found != expected && found is not null)
            {
                return Refusal.Input("job-changed-elsewhere", path, "another program has changed this job since it was read here",
                    "Open it again to go on from there, or keep yours by job copy under another name. Nothing was written.");
            }

            WholeFile.Write(path, bytes);
            return new OpenJob(path, history, FingerprintOf(bytes), unknown);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return Refusal.Input("job-not-written", path, $"it could not be written: {fault.Message.TrimEnd('.')}",
                "Name a folder that exists and that you may write, with room on the disk; what was there is as it was.");
        }
    }
}
