using PackPlanner.Core.Jobs;

namespace PackPlanner.Formats.JobFiles;

/// <summary>A job together with the file that it lies in.</summary>
public sealed record OpenJob
{
    internal OpenJob(string path, JobHistory history, string fingerprint, UnknownFields unknown)
    {
        Path = path;
        History = history;
        Fingerprint = fingerprint;
        Unknown = unknown;
    }

    /// <summary>The file, as the user named it.</summary>
    public string Path { get; }

    /// <summary>The job and its changes. Make changes with <c>open with { History = open.History.Do(…) }</c> and save the result.</summary>
    public JobHistory History { get; init; }

    /// <summary>Checksum of the file as this program last read or wrote it.</summary>
    public string Fingerprint { get; }

    internal UnknownFields Unknown { get; }
}
