using PackPlanner.Core.Bench;
using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Screening;

/// <summary>One cell with its repeats combined, and the verdict on it.</summary>
public sealed record ScreenedCell
{
    /// <summary>What is written on the cell.</summary>
    public required string Label { get; init; }

    /// <summary>Use, hold or reject.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>Why, gravest first; remarks on unchecked readings stand last.</summary>
    public required IReadOnlyList<VerdictReason> Reasons { get; init; }

    /// <summary>Mean of its whole capacity tests, Ah, as read; null when there is none.</summary>
    public double? CapacityAh { get; init; }

    /// <summary>One standard deviation of <see cref="CapacityAh"/>, Ah.</summary>
    public double? CapacitySpreadAh { get; init; }

    /// <summary>The mean with each test's slot offset taken off, Ah; null where an offset is unknown.</summary>
    public double? CorrectedCapacityAh { get; init; }

    /// <summary>Whole capacity tests of this cell.</summary>
    public int CapacityTests { get; init; }

    /// <summary>Charge counted in a test that was broken off, Ah; it is not a capacity.</summary>
    public double? AbortedAh { get; init; }

    /// <summary>Capacity over rated capacity, at the test's own rate; null when either is unknown.</summary>
    public double? HealthFraction { get; init; }

    /// <summary>Rated capacity that the health is taken from, Ah.</summary>
    public double? RatedAh { get; init; }

    /// <summary>Current of the capacity test, amperes.</summary>
    public double? TestCurrentA { get; init; }

    /// <summary>Cut-off of the capacity test, volts.</summary>
    public double? TestCutoffV { get; init; }

    /// <summary>Resistance, milliohm; the mean where it was read more than once.</summary>
    public double? ResistanceMilliohm { get; init; }

    /// <summary>One standard deviation of <see cref="ResistanceMilliohm"/>, milliohm.</summary>
    public double? ResistanceSpreadMilliohm { get; init; }

    /// <summary>Which quantity the resistance is.</summary>
    public ResistanceKind ResistanceKind { get; init; }

    /// <summary>Seconds after the step at which a DC resistance was read.</summary>
    public double? ResistanceAfterS { get; init; }

    /// <summary>The 1 kHz figure where the table has one beside the DC figure, milliohm.</summary>
    public double? AcResistanceMilliohm { get; init; }

    /// <summary>Latest resting volts.</summary>
    public double? RestV { get; init; }

    /// <summary>What dated resting volts tell about self-discharge; null when there are none.</summary>
    public SelfDischarge? SelfDischarge { get; init; }

    /// <summary>Model as written.</summary>
    public string? Model { get; init; }

    /// <summary>Slot of its first capacity test.</summary>
    public string? Slot { get; init; }

    /// <summary>Batch or origin.</summary>
    public string? Batch { get; init; }

    /// <summary>Chemistry that it was judged by; null when unknown.</summary>
    public string? Chemistry { get; init; }

    /// <summary>Where it lies.</summary>
    public string? Tray { get; init; }

    /// <summary>Damage that was noted: swollen, dented, leaking, smell, rust, torn wrap.</summary>
    public IReadOnlyList<string> Conditions { get; init; } = [];

    /// <summary>True when a caution of 1 to 5 or 14 stands: such a cell is never grouped or charged on this program's word.</summary>
    public bool HeldForSafety { get; init; }

    /// <summary>The rows that it was put together from, in file order.</summary>
    public required IReadOnlyList<CellRow> Rows { get; init; }
}
