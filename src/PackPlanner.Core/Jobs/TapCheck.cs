namespace PackPlanner.Core.Jobs;

/// <summary>Judges readings at sense taps before a monitor is plugged in.</summary>
/// <remarks>Common practice, no source: a step within 0.1 V of its group's own volts, from pack minus within 0.1 V or 0.5 %, whichever is more.</remarks>
public static class TapCheck
{
    /// <summary>How far a step, or a reading near pack minus, may be off.</summary>
    public const double ToleranceV = 0.1;

    /// <summary>How far a reading from pack minus may be off, as a fraction of it.</summary>
    public const double ToleranceFraction = 0.005;

    /// <summary>Volts expected from pack minus at each tap.</summary>
    /// <param name="groupV">Volts of each group in series order, shape [S]; NaN where unknown.</param>
    /// <returns>Shape [S + 1]; NaN from the first unknown group on.</returns>
    public static double[] Expected(IReadOnlyList<double> groupV)
    {
        double[] volts = new double[groupV.Count + 1];
        for (int tap = 1; tap < volts.Length; tap++)
            volts[tap] = volts[tap - 1] + groupV[tap - 1];
        return volts;
    }

    /// <summary>How far a reading from pack minus may be off.</summary>
    /// <param name="expectedV">Volts expected there.</param>
    /// <returns>Volts either way.</returns>
    public static double Tolerance(double expectedV) => Math.Max(ToleranceV, ToleranceFraction * Math.Abs(expectedV));

    /// <summary>Whether one reading is as it must be.</summary>
    /// <param name="tap">0 is pack minus.</param>
    /// <param name="expectedV">As <see cref="Expected"/> gives them.</param>
    /// <param name="readings">What the meter showed, by tap.</param>
    /// <returns>True or false; null where nothing was read or nothing is expected.</returns>
    public static bool? IsRight(int tap, IReadOnlyList<double> expectedV, IReadOnlyDictionary<int, double> readings)
    {
        if (!readings.TryGetValue(tap, out double read) || double.IsNaN(expectedV[tap]))
            return null;
        if (Math.Abs(read - expectedV[tap]) > Tolerance(expectedV[tap]))
            return false;
        return tap == 0 || !readings.TryGetValue(tap - 1, out double before)
            || Math.Abs(read - before - (expectedV[tap] - expectedV[tap - 1])) <= ToleranceV;
    }
}
