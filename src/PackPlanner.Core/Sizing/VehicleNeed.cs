namespace PackPlanner.Core.Sizing;

/// <summary>What the vehicle is to do. Null is unknown; a missing fraction counts as 1, a missing reserve, grade or accessory as 0.</summary>
public sealed record VehicleNeed
{
    /// <summary>Energy for each kilometre, watt-hours; null: computed from the road load where that is known.</summary>
    public double? WhPerKm { get; init; }

    /// <summary>Vehicle, rider and load, kilograms.</summary>
    public double? MassKg { get; init; }

    /// <summary>Drag coefficient times frontal area, square metres.</summary>
    public double? DragAreaM2 { get; init; }

    /// <summary>Rolling resistance coefficient, dimensionless.</summary>
    public double? RollingCoefficient { get; init; }

    /// <summary>Slope, per cent.</summary>
    public double? GradePercent { get; init; }

    /// <summary>Battery to wheel, 0..1.</summary>
    public double? EfficiencyFraction { get; init; }

    /// <summary>Lamps and the like, watts.</summary>
    public double? AccessoryW { get; init; }

    /// <summary>Kilograms per cubic metre; missing: 1.225.</summary>
    public double? AirDensityKgM3 { get; init; }

    /// <summary>Cruising speed, kilometres per hour.</summary>
    public double? SpeedKmh { get; init; }

    /// <summary>Wanted range, kilometres.</summary>
    public double? RangeKm { get; init; }

    /// <summary>Peak power at the battery, watts.</summary>
    public double? PeakPowerW { get; init; }

    /// <summary>Continuous power at the battery, watts; missing: energy per kilometre times speed.</summary>
    public double? ContinuousPowerW { get; init; }

    /// <summary>Share kept for the way home, 0..1.</summary>
    public double? ReserveFraction { get; init; }

    /// <summary>Share of the rated energy that the working limits leave, 0..1.</summary>
    public double? UsableFraction { get; init; }

    /// <summary>Share of the rated energy left at the end of the pack's planned life, 0..1.</summary>
    public double? AgeingFraction { get; init; }

    /// <summary>Share left in the cold, 0..1.</summary>
    public double? TemperatureFactor { get; init; }

    /// <summary>Share of a cell's rated current that is to be used, 0..1.</summary>
    public double? CurrentDerate { get; init; }

    /// <summary>Lowest temperature at which it will be charged, degrees Celsius.</summary>
    public double? ChargeTemperatureDegC { get; init; }
}
