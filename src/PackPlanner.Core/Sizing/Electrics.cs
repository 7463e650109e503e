namespace PackPlanner.Core.Sizing;

/// <summary>What the pack is joined to. Null is unknown.</summary>
public sealed record Electrics
{
    /// <summary>Highest volts of the controller.</summary>
    public double? ControllerMaxV { get; init; }

    /// <summary>Its low-voltage limit, volts.</summary>
    public double? ControllerMinV { get; init; }

    /// <summary>Its current limit, amperes.</summary>
    public double? ControllerMaxA { get; init; }

    /// <summary>Charger's end voltage, volts.</summary>
    public double? ChargerV { get; init; }

    /// <summary>Charger's current, amperes.</summary>
    public double? ChargerA { get; init; }

    /// <summary>Hours of tapering at the end of a charge; missing: 0.5, common practice, no source.</summary>
    public double? TaperHours { get; init; }

    /// <summary>All links and leads of the pack together, milliohm.</summary>
    public double? LinkResistanceMilliohm { get; init; }

    /// <summary>Fuse rating, amperes.</summary>
    public double? FuseA { get; init; }

    /// <summary>Fuse's DC voltage rating, volts.</summary>
    public double? FuseV { get; init; }

    /// <summary>Fuse's breaking capacity, amperes.</summary>
    public double? FuseBreakingA { get; init; }

    /// <summary>Highest current that the controller feeds back, amperes.</summary>
    public double? RegenA { get; init; }

    /// <summary>Volts per thousand revolutions is the other way round: revolutions a minute for each volt.</summary>
    public double? MotorRpmPerV { get; init; }

    /// <summary>Share of the free speed that the motor reaches under load, 0..1.</summary>
    public double? MotorLoadedFraction { get; init; }

    /// <summary>Motor turns for one wheel turn.</summary>
    public double? GearRatio { get; init; }

    /// <summary>Way of one wheel turn, millimetres.</summary>
    public double? WheelCircumferenceMm { get; init; }
}
