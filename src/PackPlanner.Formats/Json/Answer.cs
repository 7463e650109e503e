using System.Text.Json.Serialization;

namespace PackPlanner.Formats.Json;

/// <summary>What every answer of a verb carries beside its own keys.</summary>
/// <remarks>
/// Each verb has a record of its own that derives from this one, so that a new name in Core cannot change what
/// scripts read. Keys are camel case; unknown is null; a number is never NaN (use <see cref="JsonFigures"/>).
/// </remarks>
public abstract record Answer
{
    /// <summary>packplanner/VERB.</summary>
    [JsonPropertyOrder(-100)]
    public abstract string Schema { get; }

    /// <summary>Version of this document's shape.</summary>
    [JsonPropertyOrder(-99)]
    public int Version { get; init; } = 1;

    /// <summary>Rows of the files that were read; left out where no table or log was read.</summary>
    [JsonPropertyOrder(90)]
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public int? RowsRead { get; init; }

    /// <summary>Rows that the answer rests on.</summary>
    [JsonPropertyOrder(91)]
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public int? RowsUsed { get; init; }

    /// <summary>Rows left out, at most a thousand for each reason.</summary>
    [JsonPropertyOrder(92)]
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<SetAsideRow>? RowsSetAside { get; init; }

    /// <summary>All rows left out, counted by reason.</summary>
    [JsonPropertyOrder(93)]
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<SetAsideCount>? RowsSetAsideCounts { get; init; }

    /// <summary>Single values lost in rows that were used.</summary>
    [JsonPropertyOrder(94)]
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<SamplesSetAside>? SamplesSetAside { get; init; }

    /// <summary>Why a search ended before its own end; left out when it was not stopped.</summary>
    [JsonPropertyOrder(95)]
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? StoppedBy { get; init; }

    /// <summary>What was understood and assumed, one sentence each.</summary>
    [JsonPropertyOrder(96)]
    public IReadOnlyList<string> Understood { get; init; } = [];

    /// <summary>Cautions that this answer raises, gravest first.</summary>
    [JsonPropertyOrder(100)]
    public IReadOnlyList<CautionJson> Cautions { get; init; } = [];
}

/// <summary>A row that was not used.</summary>
/// <param name="File">As the user named it.</param>
/// <param name="Line">Counted from 1.</param>
/// <param name="Reason">Why, in words.</param>
public sealed record SetAsideRow(string File, int Line, string Reason);

/// <summary>How many rows were not used for one reason.</summary>
/// <param name="Reason">Why, in words.</param>
/// <param name="Count">Rows.</param>
/// <param name="FirstLine">Line of the first of them, counted from 1.</param>
public sealed record SetAsideCount(string Reason, int Count, int FirstLine);

/// <summary>Values of one column that were lost in rows that were used.</summary>
/// <param name="Column">The column's name in the file.</param>
/// <param name="Kind">What stood there: the filler value, or what is wrong with it.</param>
/// <param name="Count">How many.</param>
/// <param name="FirstLine">Line of the first, counted from 1.</param>
public sealed record SamplesSetAside(string Column, string Kind, int Count, int FirstLine);
