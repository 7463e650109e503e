using System.Diagnostics.CodeAnalysis;
using PackPlanner.Core.Cells;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>What the user said about a log.</summary>
public sealed record LogReadOptions
{
    /// <summary>auto, point or comma: the mark before decimals.</summary>
    [SuppressMessage("Naming", "CA1720", Justification = "It is the name of the option that the user types.")]
    public string Decimal { get; init; } = "auto";

    /// <summary>auto, discharge or charge: which direction of the current is positive in the file.</summary>
    public string CurrentSign { get; init; } = "auto";

    /// <summary>Chemistry that the user named, for what volts a cell can have; null when not named.</summary>
    public Chemistry? Chemistry { get; init; }

    /// <summary>Capacity when new of a cell, or of a group in the log of a pack, ampere-hours; null when not named.</summary>
    public double? RatedAh { get; init; }

    /// <summary>Series groups that the user named; null when not named.</summary>
    public int? Series { get; init; }

    /// <summary>Opens standard input, for a file named -; null where there is none.</summary>
    public Func<Stream>? StandardInput { get; init; }

    /// <summary>Cancelled when the user stops.</summary>
    public CancellationToken Stopped { get; init; }

    /// <summary>Told how far the reading is; null when nobody listens.</summary>
    public IProgress<ReadProgress>? Progress { get; init; }
}
