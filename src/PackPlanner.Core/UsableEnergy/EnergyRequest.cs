using PackPlanner.Core.Cells;

namespace PackPlanner.Core.UsableEnergy;

/// <summary>Everything that the usable energy of a string depends on. What is not given is null and said to be.</summary>
public sealed record EnergyRequest
{
    /// <summary>Groups in series from pack minus, at least one.</summary>
    public required IReadOnlyList<SeriesGroup> Groups { get; init; }

    /// <summary>One chemistry for the whole pack.</summary>
    public required Chemistry Chemistry { get; init; }

    /// <summary>Volts of a group to which the pack is charged; null: the chemistry's charge limit.</summary>
    public double? FullV { get; init; }

    /// <summary>Loaded volts of a group at which the ride ends; null: the chemistry's cut-off.</summary>
    public double? EmptyV { get; init; }

    /// <summary>Loaded volts of the whole pack at which the controller gives up; null: unknown.</summary>
    public double? PackEmptyV { get; init; }

    /// <summary>Most volts that the controller bears; null: unknown.</summary>
    public double? ControllerMaxV { get; init; }

    /// <summary>What is drawn; null: the figures are those at rest.</summary>
    public LoadPlan? Load { get; init; }

    /// <summary>Cell temperature of the ride, degrees Celsius; null: as in the tests.</summary>
    public double? TemperatureDegC { get; init; }

    /// <summary>Part of the energy that is kept back, 0..1.</summary>
    public double ReserveFraction { get; init; }

    /// <summary>Each link between two groups, milliohm; null: unknown.</summary>
    public double? LinkMilliohm { get; init; }

    /// <summary>Leads, fuse and contactor together, milliohm; null: left out.</summary>
    public double? LeadsMilliohm { get; init; }

    /// <summary>Each of the two joints of a cell with its strip or bar, milliohm; null: taken as part of the cell's resistance.</summary>
    public double? JointMilliohm { get; init; }

    /// <summary>Largest current, amperes; null: unknown.</summary>
    public double? PeakA { get; init; }

    /// <summary>How long the largest current lasts, seconds; null: unknown.</summary>
    public double? PeakS { get; init; }

    /// <summary>Mass of one cell, kilograms; null: unknown.</summary>
    public double? CellMassKg { get; init; }

    /// <summary>Capacity of a group when new, ampere-hours; null: ageing is not told.</summary>
    public double? RatedAh { get; init; }

    /// <summary>Volts of a group on the label; null: the chemistry's.</summary>
    public double? NominalV { get; init; }

    /// <summary>Current through a group in the tests that gave the capacities, amperes; null: taken as next to nothing.</summary>
    public double? TestCurrentA { get; init; }

    /// <summary>Volts at which those tests ended; null: taken as <see cref="EmptyV"/>.</summary>
    public double? TestCutoffV { get; init; }

    /// <summary>One standard deviation of repeating the test of one cell, as a fraction.</summary>
    public double RepeatabilityFraction { get; init; } = DefaultRepeatabilityFraction;

    /// <summary>Assumed where the user states none. Common practice, no source.</summary>
    public const double DefaultRepeatabilityFraction = 0.015;

    /// <summary>All joints as the string's current meets them, milliohm; null where they or the cells in parallel are unknown.</summary>
    public double? JointsMilliohm => JointMilliohm is { } joint && Groups.All(group => group.Parallel is not null)
        ? Groups.Sum(group => 2 * joint / group.Parallel!.Value)
        : null;

    /// <summary>Links, joints and leads together, milliohm; what is unknown counts as nothing.</summary>
    public double BesideCellsMilliohm => (LinkMilliohm ?? 0) * (Groups.Count - 1) + (LeadsMilliohm ?? 0) + (JointsMilliohm ?? 0);

    /// <summary>Whether full lies above empty, both are volts that a group of this chemistry can have, and its curve has a shape between them.</summary>
    public bool HasLimitsOfItsChemistry => EndsAtV < ChargedToV && ChargedToV <= Chemistry.Physics.HighestV && EndsAtV >= Chemistry.Physics.LowestV
        && Chemistry.Curve.Spans(CountedFromV, CountedToV);

    /// <summary>Resting volts at which the capacities count as full.</summary>
    internal double CountedFromV => Math.Max(Chemistry.FullV, ChargedToV);

    /// <summary>Resting volts at which they count as empty.</summary>
    internal double CountedToV => TestCutoffV ?? EndsAtV;

    /// <summary>The charge limit that holds.</summary>
    public double ChargedToV => FullV ?? Chemistry.FullV;

    /// <summary>The cut-off that holds.</summary>
    public double EndsAtV => EmptyV ?? Chemistry.CutoffV;

    /// <summary>Capacity of a group on the label: what is given, else the mean of the groups.</summary>
    public double LabelAh => RatedAh ?? Groups.Average(group => group.CapacityAh);

    /// <summary>Volts of a group on the label.</summary>
    public double LabelV => NominalV ?? Chemistry.NominalV;
}
