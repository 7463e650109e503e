using PackPlanner.Core.Cautions;
using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Screening;

/// <summary>A lot of cells with a verdict each, and the figures that the verdicts rest on.</summary>
public sealed record ScreenedLot
{
    /// <summary>One entry per label, in the order in which the labels first came.</summary>
    public required IReadOnlyList<ScreenedCell> Cells { get; init; }

    /// <summary>Median capacity over all cells with a usable one, before any verdict, Ah.</summary>
    public double? MedianCapacityAh { get; init; }

    /// <summary>Median resistance over all cells with a usable one, before any verdict, milliohm.</summary>
    public double? MedianResistanceMilliohm { get; init; }

    /// <summary>How well a capacity repeats.</summary>
    public required Repeatability Repeatability { get; init; }

    /// <summary>Tester slots, by name; empty where the table has none.</summary>
    public required IReadOnlyList<SlotOffset> Slots { get; init; }

    /// <summary>The models of the lot; one entry where the table names none.</summary>
    public required IReadOnlyList<ModelLot> Models { get; init; }

    /// <summary>The chemistry of most cells; null when unknown.</summary>
    public Chemistry? Chemistry { get; init; }

    /// <summary>Names of all chemistries met; more than one is never one pack.</summary>
    public required IReadOnlyList<string> Chemistries { get; init; }

    /// <summary>True when the anode was taken for graphite because the lot rests higher than any LTO cell can.</summary>
    public bool GraphiteByVolts { get; init; }

    /// <summary>The resistance limit that the user set, milliohm; null where the limit is 1.5 times the median of each model.</summary>
    public double? HighestMilliohm { get; init; }

    /// <summary>Cautions, gravest first.</summary>
    public required IReadOnlyList<Caution> Cautions { get; init; }

    /// <summary>How many cells have a verdict.</summary>
    /// <param name="verdict">The verdict.</param>
    /// <returns>Cells.</returns>
    public int Count(Verdict verdict) => Cells.Count(cell => cell.Verdict == verdict);
}
