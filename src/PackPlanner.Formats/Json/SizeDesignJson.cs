using PackPlanner.Core.Sizing;

namespace PackPlanner.Formats.Json;

/// <summary>Every figure of one choice; null where an input was missing. Names and rules are explained in docs/methods/sizing.md.</summary>
public sealed record SizeDesignJson
{
    /// <summary>Figures as Core has them, under the names that scripts read.</summary>
    /// <param name="c">The choice.</param>
    /// <returns>The same for JSON.</returns>
    public static SizeDesignJson From(PackChoice c) => new()
    {
        Name = c.Cell.Name,
        WhPerKm = c.Need.WhPerKm,
        EnergyDeliveredWh = c.Need.EnergyDeliveredWh,
        EnergyNominalNeededWh = c.Need.EnergyNominalNeededWh,
        SeriesMin = c.Window.Min,
        SeriesMax = c.Window.Max,
        SeriesMinStranding = c.Window.MinStranding,
        SeriesMatchingCharger = c.Window.MatchingCharger,
        Series = c.Series,
        Parallel = c.Parallel,
        ParallelForEnergy = c.ParallelForEnergy,
        ParallelForPeakCurrent = c.ParallelForPeakCurrent,
        ParallelForContinuousCurrent = c.ParallelForContinuousCurrent,
        Cells = c.Cells,
        Places = c.Places,
        VoltageFullV = c.VoltageFullV,
        VoltageNominalV = c.VoltageNominalV,
        VoltageCutoffV = c.VoltageCutoffV,
        MarginControllerMaxV = c.MarginControllerMaxV,
        MarginControllerMinV = c.MarginControllerMinV,
        PeakCurrentA = c.PeakCurrentA,
        ContinuousCurrentA = c.ContinuousCurrentA,
        ContinuousCurrentLowA = c.ContinuousCurrentLowA,
        PackResistanceMilliohm = c.PackResistanceMilliohm,
        OhmicLossFraction = c.OhmicLossFraction,
        EnergyUsableWh = c.EnergyUsableWh,
        RangeKm = c.RangeKm,
        CapacityAh = c.CapacityAh,
        EnergyNominalWh = c.EnergyNominalWh,
        SagPeakV = c.SagPeakV,
        VoltageUnderPeakV = c.VoltageUnderPeakV,
        HeatPeakW = c.HeatPeakW,
        HeatContinuousW = c.HeatContinuousW,
        CRatePeak = c.CRatePeak,
        CRateContinuous = c.CRateContinuous,
        CellPeakA = c.CellPeakA,
        CellContinuousA = c.CellContinuousA,
        CellMassKg = c.CellMassKg,
        PackMassKg = c.PackMassKg,
        ChargeCurrentA = c.ChargeCurrentA,
        ChargeHours = c.ChargeHours,
        ShortCircuitA = c.ShortCircuitA,
        ProspectiveShortCircuitA = c.ProspectiveShortCircuitA,
        FuseMinA = c.FuseMinA,
        WheelRpm = c.WheelRpm,
        TopSpeedByMotorKmh = c.TopSpeedByMotorKmh,
        TopSpeedByPowerKmh = c.TopSpeedByPowerKmh,
        TopSpeedKmh = c.TopSpeedKmh,
        StrandedWh = c.StrandedWh,
        LimitsBroken = c.LimitsBroken,
        NotChecked = c.NotChecked,
        Binding = c.Binding,
        PricePerUsableKWh = c.PricePerUsableKWh,
        Links = c.Links,
    };

    /// <summary>Cell model.</summary>
    public string? Name { get; init; }

    /// <summary>Watt-hours per kilometre.</summary>
    public double? WhPerKm { get; init; }

    /// <summary>Watt-hours to be delivered over the range.</summary>
    public double? EnergyDeliveredWh { get; init; }

    /// <summary>Rated watt-hours that this takes.</summary>
    public double? EnergyNominalNeededWh { get; init; }

    /// <summary>Fewest in series whose cut-off is not under the controller.</summary>
    public int? SeriesMin { get; init; }

    /// <summary>Most in series whose full charge is not above the controller.</summary>
    public int? SeriesMax { get; init; }

    /// <summary>From here the controller stops before the cells are empty.</summary>
    public int? SeriesMinStranding { get; init; }

    /// <summary>All S that suit the charger.</summary>
    public IReadOnlyList<int>? SeriesMatchingCharger { get; init; }

    /// <summary>Groups in series.</summary>
    public int? Series { get; init; }

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
}
