using System.Diagnostics.CodeAnalysis;
using PackPlanner.Core.Cells;

namespace PackPlanner.Formats.Tables;

/// <summary>What the user said about a table or a log, and what the caller cannot do without.</summary>
public sealed record ReadOptions
{
    /// <summary>auto, point or comma: the mark before decimals.</summary>
    [SuppressMessage("Naming", "CA1720", Justification = "It is the name of the option that the user types.")]
    public string Decimal { get; init; } = "auto";

    /// <summary>auto, discharge or charge: which direction of the current is positive in the file.</summary>
    public string CurrentSign { get; init; } = "auto";

    /// <summary>What the user said of single columns.</summary>
    public ColumnChoices Columns { get; init; } = ColumnChoices.None;

    /// <summary>Chemistry that the user named; null when not named.</summary>
    public Chemistry? Chemistry { get; init; }

    /// <summary>Capacity when new of a cell, or of a group in the log of a pack, ampere-hours; null when not named.</summary>
    public double? RatedAh { get; init; }

    /// <summary>Series groups that the user named; null when not named.</summary>
    public int? Series { get; init; }

    /// <summary>A table without any capacity is an error, not a table with unknown capacities.</summary>
    public bool NeedsCapacity { get; init; }

    /// <summary>A table without any resistance is an error.</summary>
    public bool NeedsResistance { get; init; }

    /// <summary>A table without any resting voltage is an error.</summary>
    public bool NeedsRestVoltage { get; init; }

    /// <summary>The table says which cell is in which group: beside labels, the only other column of a table without a heading is the group.</summary>
    public bool NamesGroups { get; init; }

    /// <summary>Groups are those of a pack that is named elsewhere and counted from 1: a column of groups with 0 is an error, not counted from 0.</summary>
    public bool GroupsFromOne { get; init; }

    /// <summary>Opens standard input, for a file named -; null where there is none.</summary>
    public Func<Stream>? StandardInput { get; init; }

    /// <summary>What is said of standard input in messages and answers; a file in memory has its own name.</summary>
    public string StandardInputName { get; init; } = "standard input";

    /// <summary>Length of the parts in which a log is read side by side; what is read does not depend on it.</summary>
    internal int PartBytes { get; init; } = TextParts.UsualPartBytes;

    /// <summary>Cancelled when the user stops.</summary>
    public CancellationToken Stopped { get; init; }

    /// <summary>Told how far the reading is; null when nobody listens.</summary>
    public IProgress<ReadProgress>? Progress { get; init; }
}
