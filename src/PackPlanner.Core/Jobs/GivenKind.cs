namespace PackPlanner.Core.Jobs;

/// <summary>What sort of value a given takes, and in which unit it is kept.</summary>
public enum GivenKind
{
    /// <summary>A chemistry's trade name.</summary>
    Chemistry,

    /// <summary>A whole number, at least 1.</summary>
    Count,

    /// <summary>Ampere-hours.</summary>
    AmpereHours,

    /// <summary>Volts.</summary>
    Volts,

    /// <summary>Amperes.</summary>
    Amperes,

    /// <summary>Watt-hours for each kilometre.</summary>
    WattHoursPerKm,

    /// <summary>Milliohm.</summary>
    Milliohm,

    /// <summary>Ohm.</summary>
    Ohm,

    /// <summary>Degrees Celsius.</summary>
    DegC,

    /// <summary>A share from 0 to 1, typed and shown as per cent.</summary>
    Fraction,

    /// <summary>Kilograms.</summary>
    Kilograms,

    /// <summary>Kilometres.</summary>
    Kilometres,

    /// <summary>Metres.</summary>
    Metres,

    /// <summary>Millimetres.</summary>
    Millimetres,

    /// <summary>Millifarads.</summary>
    Millifarads,

    /// <summary>Seconds.</summary>
    Seconds,

    /// <summary>A tick.</summary>
    YesNo,

    /// <summary>Free words.</summary>
    Words,
}
