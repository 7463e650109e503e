using System.Text.Json.Serialization;

namespace PackPlanner.Formats.Json;

/// <summary>What a verb prints that writes files of a job.</summary>
public abstract record WrittenFilesAnswer : Answer
{
    /// <summary>The job's title.</summary>
    [JsonPropertyOrder(-90)]
    public required string Title { get; init; }

    /// <summary>Its revision, which stands on everything that is written.</summary>
    [JsonPropertyOrder(-89)]
    public required int Revision { get; init; }

    /// <summary>Files written, in order.</summary>
    public required IReadOnlyList<WrittenFileJson> Files { get; init; }

    /// <summary>What could not be made.</summary>
    public required IReadOnlyList<NotWrittenJson> Missing { get; init; }
}

/// <summary>One file.</summary>
/// <param name="Name">The sheet or picture.</param>
/// <param name="File">Where it lies.</param>
public sealed record WrittenFileJson(string Name, string File);

/// <summary>What could not be made.</summary>
/// <param name="Name">The sheet or picture.</param>
/// <param name="Why">What it lacks.</param>
public sealed record NotWrittenJson(string Name, string Why);
