using PackPlanner.Core.Cautions;

namespace PackPlanner.Core.Sizing;

/// <summary>One choice of cell, S and P with every figure that follows. A figure whose inputs are missing is null.</summary>
public sealed record PackChoice
{
    /// <summary>The cell model.</summary>
    public required SizingCell Cell { get; init; }

    /// <summary>What the need alone says, without any S or P.</summary>
    public required NeedFigures Need { get; init; }

    /// <summary>S that controller and charger allow.</summary>
    public required SeriesWindow Window { get; init; }

    /// <summary>Groups in series.</summary>
    public required int Series { get; init; }

    /// <summary>Cells in parallel; null when nothing says how many.</summary>
    public int? Parallel { get; init; }

    /// <summary>Smallest P that gives the energy.</summary>
    public int? ParallelForEnergy { get; init; }

    /// <summary>Smallest P that carries the peak.</summary>
    public int? ParallelForPeakCurrent { get; init; }

    /// <summary>Smallest P that carries the continuous current at the low end of voltage.</summary>
    public int? ParallelForContinuousCurrent { get; init; }

    /// <summary>S x P.</summary>
    public int? Cells { get; init; }

    /// <summary>Cells that the space was found to take; null when no space was given.</summary>
    public int? Places { get; init; }

    /// <summary>Volts at full charge.</summary>
    public double? VoltageFullV { get; init; }

    /// <summary>Nominal volts.</summary>
    public double? VoltageNominalV { get; init; }

    /// <summary>Volts at the cells' cut-off.</summary>
    public double? VoltageCutoffV { get; init; }

    /// <summary>Controller's highest volts less the pack's.</summary>
    public double? MarginControllerMaxV { get; init; }

    /// <summary>Pack's cut-off less the controller's low-voltage limit.</summary>
    public double? MarginControllerMinV { get; init; }

    /// <summary>Peak, amperes, at the low end of voltage.</summary>
    public double? PeakCurrentA { get; init; }

    /// <summary>Continuous, amperes, at nominal volts.</summary>
    public double? ContinuousCurrentA { get; init; }

    /// <summary>Continuous, amperes, at the low end of voltage.</summary>
    public double? ContinuousCurrentLowA { get; init; }

    /// <summary>Whole pack, milliohm.</summary>
    public double? PackResistanceMilliohm { get; init; }

    /// <summary>Share of the energy that turns into heat in the pack.</summary>
    public double? OhmicLossFraction { get; init; }

    /// <summary>Usable energy, watt-hours.</summary>
    public double? EnergyUsableWh { get; init; }

    /// <summary>Range, kilometres.</summary>
    public double? RangeKm { get; init; }

    /// <summary>Rated ampere-hours of the pack.</summary>
    public double? CapacityAh { get; init; }

    /// <summary>Rated energy, watt-hours.</summary>
    public double? EnergyNominalWh { get; init; }

    /// <summary>Fall of volts at the peak.</summary>
    public double? SagPeakV { get; init; }

    /// <summary>Volts that stay at the peak, from nominal.</summary>
    public double? VoltageUnderPeakV { get; init; }

    /// <summary>Heat at the peak, watts.</summary>
    public double? HeatPeakW { get; init; }

    /// <summary>Heat at the continuous current, watts.</summary>
    public double? HeatContinuousW { get; init; }

    /// <summary>Peak over rated Ah.</summary>
    public double? CRatePeak { get; init; }

    /// <summary>Continuous over rated Ah.</summary>
    public double? CRateContinuous { get; init; }

    /// <summary>Peak of one cell, amperes, if all share alike.</summary>
    public double? CellPeakA { get; init; }

    /// <summary>Continuous current of one cell at the low end, amperes.</summary>
    public double? CellContinuousA { get; init; }

    /// <summary>Cells, kilograms.</summary>
    public double? CellMassKg { get; init; }

    /// <summary>Cells, box, links and monitor, kilograms.</summary>
    public double? PackMassKg { get; init; }

    /// <summary>Charging current, amperes.</summary>
    public double? ChargeCurrentA { get; init; }

    /// <summary>Hours for a full charge.</summary>
    public double? ChargeHours { get; init; }

    /// <summary>Short-circuit current by DC resistance, amperes: the low estimate.</summary>
    public double? ShortCircuitA { get; init; }

    /// <summary>Short-circuit current of the first instant, amperes: breaking capacities are chosen from it.</summary>
    public double? ProspectiveShortCircuitA { get; init; }

    /// <summary>Smallest fuse rating, amperes; a starting point, never final.</summary>
    public double? FuseMinA { get; init; }

    /// <summary>Wheel turns a minute.</summary>
    public double? WheelRpm { get; init; }

    /// <summary>Top speed that the motor's turns allow, kilometres per hour.</summary>
    public double? TopSpeedByMotorKmh { get; init; }

    /// <summary>Top speed that the power allows, kilometres per hour.</summary>
    public double? TopSpeedByPowerKmh { get; init; }

    /// <summary>The smaller of the two that are known.</summary>
    public double? TopSpeedKmh { get; init; }

    /// <summary>Energy left in the cells when the controller stops first, watt-hours; null when the cells stop first.</summary>
    public double? StrandedWh { get; init; }

    /// <summary>Codes of the limits that this choice breaks, sorted.</summary>
    public IReadOnlyList<string> LimitsBroken { get; init; } = [];

    /// <summary>Codes of the limits that could not be checked, sorted.</summary>
    public IReadOnlyList<string> NotChecked { get; init; } = [];

    /// <summary>What keeps this choice from being smaller or larger.</summary>
    public BindingLimit? Binding { get; init; }

    /// <summary>Price of the cells for each usable kilowatt-hour.</summary>
    public double? PricePerUsableKWh { get; init; }

    /// <summary>Joints to weld or bolt: each cell has two.</summary>
    public int? Links { get; init; }

    /// <summary>Cautions that this choice raises.</summary>
    public IReadOnlyList<Caution> Cautions { get; init; } = [];
}
