using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Screening;

/// <summary>What the user says about a lot before it is judged. Everything may be left out.</summary>
public sealed record ScreeningRequest
{
    /// <summary>Capacity of a new cell, Ah. Where the table gives different ones for different cells, the table's own are used.</summary>
    public double? RatedAh { get; init; }

    /// <summary>Least capacity as a fraction of the rated one (of the lot's median where no rated one is known); null for 0.8, our choice.</summary>
    public double? LeastFraction { get; init; }

    /// <summary>Highest resistance, milliohm; null for 1.5 times the median of the cell's own model.</summary>
    public double? HighestMilliohm { get; init; }

    /// <summary>The chemistry, where the user states it; cells that say otherwise are held.</summary>
    public Chemistry? Chemistry { get; init; }

    /// <summary>Charge limit from the data sheet, volts; null for the chemistry's.</summary>
    public double? FullV { get; init; }

    /// <summary>Cut-off from the data sheet, volts; null for the chemistry's.</summary>
    public double? EmptyV { get; init; }

    /// <summary>One standard deviation of repeating a capacity test, as a fraction; null when not stated.</summary>
    public double? RepeatabilityFraction { get; init; }

    /// <summary>Readings without which a cell is held.</summary>
    public IReadOnlyCollection<ReadingName> Required { get; init; } = [];

    /// <summary>True to judge by safety only: no limits of capacity, resistance or lot statistics.</summary>
    public bool OnlySafety { get; init; }

    /// <summary>True to take each slot's own offset off its capacities before judging.</summary>
    public bool CorrectSlots { get; init; }

    /// <summary>Verdicts that the user gave by hand, by label. They never lift a safety reason.</summary>
    public IReadOnlyDictionary<string, HandVerdict> ByHand { get; init; } = new Dictionary<string, HandVerdict>();
}
