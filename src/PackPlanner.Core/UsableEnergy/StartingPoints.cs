using PackPlanner.Core.Packs;

namespace PackPlanner.Core.UsableEnergy;

/// <summary>Fuse, cable and pre-charge to start a choice from, never the final one. What is unknown is null.</summary>
/// <param name="ContinuousA">The ride's effective current, amperes; null without a load.</param>
/// <param name="FuseLeastA">Least rating by that current, amperes.</param>
/// <param name="FuseStandardA">The next standard rating; null also above the largest.</param>
/// <param name="BreakingCapacityA">First-instant short circuit that the fuse must be able to break, amperes.</param>
/// <param name="MustClearA">Low short-circuit figure at which it must still clear in time, amperes: of the cold pack where a temperature under 25 °C is said.</param>
/// <param name="CableByFuseMm2">Smallest flexible cable that a table lets carry the fuse's rating, square millimetres.</param>
/// <param name="CableByDropMm2">Smallest flexible cable that loses at most <see cref="MostDropFraction"/>, square millimetres; null also without a length.</param>
/// <param name="CableM">One way from pack to controller, metres.</param>
/// <param name="PreCharge">The largest resistor that charges the controller in time; null without its capacitors.</param>
public sealed record StartingPoints(
    double? ContinuousA,
    double? FuseLeastA,
    double? FuseStandardA,
    double? BreakingCapacityA,
    double? MustClearA,
    double? CableByFuseMm2,
    double? CableByDropMm2,
    double? CableM,
    PreCharge? PreCharge)
{
    /// <summary>Part of the nominal volts that the cable may lose. Common practice, no source.</summary>
    public const double MostDropFraction = 0.01;

    /// <summary>Part of the pack's volts that the controller is to have before the contactor closes. Common practice, no source.</summary>
    public const double ChargedFraction = 0.99;

    /// <summary>Seconds within which it is to have them. Common practice, no source.</summary>
    public const double WithinS = 0.5;

    /// <summary>The larger of the two cables; null while the length or the load is unknown, or where no cable of the tables does.</summary>
    public double? CableMm2 => CableByFuseMm2 is { } byFuse && CableByDropMm2 is { } byDrop ? Math.Max(byFuse, byDrop) : null;

    /// <summary>Milliohm of <see cref="CableMm2"/> there and back at 20 °C; null when it is unknown.</summary>
    public double? CableMilliohm => CableMm2 is { } areaMm2 ? CableTable.OhmPerKm(areaMm2, flexible: true) * 2 * CableM : null;

    /// <summary>Volts that <see cref="CableMm2"/> loses there and back at 20 °C; null when it is unknown.</summary>
    public double? CableDropV => ContinuousA * CableMilliohm / 1000;

    /// <summary>Works them out.</summary>
    /// <param name="request">The string.</param>
    /// <param name="effectiveA">The ride's effective current, amperes; 0 without a load.</param>
    /// <param name="shorted">Its short-circuit currents.</param>
    /// <param name="protection">Length of the cable and capacitors of the controller, where known.</param>
    /// <returns>The figures.</returns>
    public static StartingPoints Of(EnergyRequest request, double effectiveA, StringShortCircuit shorted, StringProtection protection)
    {
        double? loadA = effectiveA > 0 ? effectiveA : null;
        double? fuseA = loadA is { } continuousA ? FuseRule.NextStandardA(continuousA) : null;
        double mostV = MostDropFraction * request.Groups.Count * request.LabelV;
        return new StartingPoints(
            loadA,
            FuseRule.OverContinuous * loadA,
            fuseA,
            shorted.ProspectiveA,
            shorted.LowA is { } warmA ? InTheCold(request, warmA) : null,
            fuseA is { } ratingA ? CableTable.SmallestForFuse(ratingA) : null,
            loadA is { } ampere && protection.CableM is { } metres ? CableTable.SmallestForDrop(ampere, metres, mostV) : null,
            protection.CableM,
            protection.CapacitanceF is { } farads
                ? new PreCharge(request.Groups.Count * request.ChargedToV, PreCharge.LargestResistorOhm(farads, ChargedFraction, WithinS), farads)
                : null);
    }

    /// <summary>Factor of the cold on the resistance of cells; 1 where no temperature is said, and in the warm, which this rule takes no credit for.</summary>
    /// <param name="request">The string.</param>
    /// <returns>1 or more.</returns>
    public static double ColdFactor(EnergyRequest request) => request.TemperatureDegC is { } degC ? Math.Max(1, ResistanceLaw.AtTemperature(degC)) : 1;

    // Cold cells push less through a short circuit: a fuse that clears the warm pack's may not clear theirs.
    private static double InTheCold(EnergyRequest request, double warmA)
    {
        double packV = request.Groups.Count * request.ChargedToV;
        double besideOhm = request.BesideCellsMilliohm / 1000;
        return packV / ((packV / warmA - besideOhm) * ColdFactor(request) + besideOhm);
    }
}
