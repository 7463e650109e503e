namespace PackPlanner.Core.Cells;

/// <summary>Where a resting voltage says how full a cell is, and where it does not.</summary>
public static class CurveTells
{
    // The knees of LFP at low current. Common practice, no source.
    private const double LowerKneeV = 3.15;
    private const double UpperKneeV = 3.40;

    /// <summary>How well resting volts are read and repeat, volts; one standard deviation. Common practice, no source.</summary>
    public const double ReadingV = 0.003;

    /// <summary>True on a plateau, where volts say next to nothing about charge.</summary>
    /// <param name="chemistry">The chemistry.</param>
    /// <param name="restV">Resting volts.</param>
    /// <returns>Whether charge cannot be told.</returns>
    /// <remarks>Source: [LfpPlateau]: 0.8 to 1.2 mV for each percent and 5 to 25 mV of hysteresis.</remarks>
    public static bool IsSilent(Chemistry chemistry, double restV) => chemistry.HasFlatCurve && restV is > LowerKneeV and < UpperKneeV;

    /// <summary>State of charge at resting volts.</summary>
    /// <param name="chemistry">The chemistry.</param>
    /// <param name="restV">Resting volts.</param>
    /// <returns>Fraction and one standard deviation of it; null on a plateau.</returns>
    public static (double Fraction, double Spread)? FractionAt(Chemistry chemistry, double restV)
    {
        if (IsSilent(chemistry, restV))
            return null;
        double fraction = chemistry.Curve.FractionAt(restV);
        return (fraction, ReadingV / Math.Max(1e-3, chemistry.Curve.SlopeAt(fraction)));
    }

    /// <summary>Resting volts at a state of charge.</summary>
    /// <param name="chemistry">The chemistry.</param>
    /// <param name="fraction">State of charge, 1 full.</param>
    /// <returns>Volts; null on a plateau, where hysteresis is more than the difference that charge makes.</returns>
    public static double? VoltsAt(Chemistry chemistry, double fraction) =>
        chemistry.Curve.VoltsAt(fraction) is var restV && !IsSilent(chemistry, restV) ? restV : null;
}
