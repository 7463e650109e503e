namespace PackPlanner.Core.Sizing;

/// <summary>What sizing knows of one cell model; null is unknown and stays unknown in everything that hangs on it.</summary>
public sealed record SizingCell
{
    /// <summary>Model name, for people; null when not given.</summary>
    public string? Name { get; init; }

    /// <summary>Chemistry name; null when not given.</summary>
    public string? Chemistry { get; init; }

    /// <summary>Nominal volts.</summary>
    public double? NominalV { get; init; }

    /// <summary>Highest charging volts.</summary>
    public double? FullV { get; init; }

    /// <summary>Working cut-off, volts; not below the data sheet's.</summary>
    public double? CutoffV { get; init; }

    /// <summary>Rated capacity, ampere-hours.</summary>
    public double? CapacityAh { get; init; }

    /// <summary>Mass, grams.</summary>
    public double? MassG { get; init; }

    /// <summary>DC resistance, warm, milliohm.</summary>
    public double? ResistanceMilliohm { get; init; }

    /// <summary>Resistance at 1 kHz, milliohm.</summary>
    public double? AcResistanceMilliohm { get; init; }

    /// <summary>Highest continuous discharge, amperes.</summary>
    public double? ContinuousDischargeA { get; init; }

    /// <summary>Highest discharge for seconds, amperes.</summary>
    public double? PeakDischargeA { get; init; }

    /// <summary>Highest charging current, amperes.</summary>
    public double? MaxChargeA { get; init; }

    /// <summary>Lowest charging temperature, degrees Celsius.</summary>
    public double? MinChargeDegC { get; init; }

    /// <summary>Price of one cell, in whatever money the user thinks in.</summary>
    public double? Price { get; init; }
}
