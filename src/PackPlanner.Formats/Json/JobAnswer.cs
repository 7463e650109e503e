using System.Text.Json.Serialization;

namespace PackPlanner.Formats.Json;

/// <summary>What <c>job --json</c> prints: the job without the data that it holds.</summary>
public sealed record JobAnswer : Answer
{
    /// <inheritdoc/>
    public override string Schema => "packplanner/job";

    /// <summary>The job's file.</summary>
    public required string Job { get; init; }

    /// <summary>What it is called.</summary>
    public required string Title { get; init; }

    /// <summary>How often it was changed.</summary>
    public required int Revision { get; init; }

    /// <summary>True for a copy of invented data.</summary>
    public required bool Demo { get; init; }

    /// <summary>What this call did, in order.</summary>
    public required IReadOnlyList<string> Did { get; init; }

    /// <summary>Everything that a job may be told, known or not.</summary>
    public required IReadOnlyList<GivenJson> Givens { get; init; }

    /// <summary>Files whose content is in the job.</summary>
    public required IReadOnlyList<JobSourceJson> Sources { get; init; }

    /// <summary>What comes first in its groups: equal-ah, even-currents or fewest-moves.</summary>
    public required string Favour { get; init; }

    /// <summary>How much of each sort there is.</summary>
    public required JobCountsJson Counts { get; init; }

    /// <summary>Name of the change that undo takes back; null when there is none.</summary>
    public required string? Undo { get; init; }

    /// <summary>Name of the change that redo makes again; null when there is none.</summary>
    public required string? Redo { get; init; }

    /// <summary>Names of all changes that stand, oldest first.</summary>
    public required IReadOnlyList<string> Changes { get; init; }

    /// <summary>Files written by this call; empty but for export.</summary>
    public IReadOnlyList<string> Files { get; init; } = [];
}

/// <summary>One given.</summary>
/// <param name="Key">Its key, unit included.</param>
/// <param name="What">What it is.</param>
/// <param name="Value">The figure; null when unknown or no figure.</param>
/// <param name="Word">The word; null when unknown or no word.</param>
/// <param name="Ticked">The tick; null when unknown or no tick.</param>
/// <param name="From">Where it comes from; null when unknown.</param>
/// <param name="On">The day on which it was given; null when unknown.</param>
/// <param name="Without">What is not done or not checked while it is unknown.</param>
public sealed record GivenJson(
    string Key, string What, double? Value, string? Word, bool? Ticked, string? From, string? On, string Without);

/// <summary>A file whose content is in the job.</summary>
/// <param name="Id">Its name inside the job.</param>
/// <param name="File">Its name when it was added.</param>
/// <param name="Sha256">Checksum of its bytes.</param>
/// <param name="Kind">What it was read as.</param>
/// <param name="Rows">Rows that are held; null for a document.</param>
/// <param name="RowsSetAside">Rows of the file that are not held; null for a document.</param>
/// <param name="Understood">What was understood and assumed while reading.</param>
public sealed record JobSourceJson(
    string Id, string File, string Sha256, string Kind, int? Rows, int? RowsSetAside, IReadOnlyList<string> Understood);

/// <summary>How much of each sort a job holds.</summary>
/// <param name="Cells">Cells, repeats counted once.</param>
/// <param name="Rows">Rows of cells.</param>
/// <param name="Edits">Values changed by hand.</param>
/// <param name="Verdicts">Verdicts set by hand.</param>
/// <param name="Locks">Cells locked into a group.</param>
/// <param name="Groups">Groups of a grouping that was read or made by hand; 0 while the search decides.</param>
/// <param name="Logs">Logs.</param>
/// <param name="TapReadings">Readings typed at sense taps.</param>
public sealed record JobCountsJson(int Cells, int Rows, int Edits, int Verdicts, int Locks, int Groups, int Logs, int TapReadings);

/// <summary>Source-generated description.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(JobAnswer))]
public sealed partial class JobAnswerContext : JsonSerializerContext;
