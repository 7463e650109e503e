using PackPlanner.Core.Cells;

namespace PackPlanner.Core.UsableEnergy;

/// <summary>How the resistance that was measured once changes with charge and temperature.</summary>
/// <remarks>
/// <para>
/// Charge: ten pulses of a 2013 cell at 25 °C gave 2.00 to 2.20 mΩ from 90 % down to 20 %, and 2.53 mΩ at 10 %. So: level
/// down to 20 %, then rising along the line through the last two, beyond 10 % as an extrapolation. The shape is scaled
/// so that its mean from full to empty is 1: heat at a constant current then agrees with I²R by hand.
/// Source: [NissanLeaf2013].
/// </para>
/// <para>
/// Temperature: an Arrhenius factor that doubles the resistance from 25 °C to 0 °C. Source: [FromMemory], a default only.
/// </para>
/// </remarks>
internal static class ResistanceLaw
{
    private const double LevelDownToFraction = 0.2;
    private const double LevelMilliohm = 2.05;
    private const double AtTenPercentMilliohm = 2.53;
    private const double RisePerFraction = (AtTenPercentMilliohm / LevelMilliohm - 1) / 0.1;
    private const double Mean = 1 + RisePerFraction * LevelDownToFraction * LevelDownToFraction / 2;

    // Half at 25 °C of what it is at 0 °C.
    private static readonly double SlopeKelvin = Arrhenius.SlopeKelvin(0, ColdCapacity.TestDegC, 0.5);

    /// <summary>Factor on the given resistance at a state of charge; below 0 as at 0.</summary>
    internal static double AtCharge(double fraction) => fraction >= LevelDownToFraction
        ? 1 / Mean
        : (1 + RisePerFraction * Math.Min(LevelDownToFraction - fraction, LevelDownToFraction)) / Mean;

    /// <summary>Factor on the given resistance at a temperature, 1 at 25 °C.</summary>
    internal static double AtTemperature(double degC) => Arrhenius.Factor(SlopeKelvin, degC, ColdCapacity.TestDegC);
}
