namespace PackPlanner.Core.Jobs;

/// <summary>Volts between which something must lie.</summary>
/// <param name="LowV">At least; NaN where unknown.</param>
/// <param name="HighV">At most; NaN where unknown.</param>
public readonly record struct VoltSpan(double LowV, double HighV);

/// <summary>Judges readings at sense taps before a monitor is plugged in.</summary>
/// <remarks>Common practice, no source: a step within 0.1 V of its group's own volts, from pack minus within 0.1 V or 0.5 %, whichever is more.</remarks>
public static class TapCheck
{
    /// <summary>How far a step, or a reading near pack minus, may be off.</summary>
    public const double ToleranceV = 0.1;

    /// <summary>How far a reading from pack minus may be off, as a fraction of it.</summary>
    public const double ToleranceFraction = 0.005;

    /// <summary>Volts of a group: its own where it was measured at rest, else anywhere between empty and full.</summary>
    /// <param name="restV">As measured; null: not.</param>
    /// <param name="emptyV">Volts of an empty group; null: unknown.</param>
    /// <param name="fullV">Volts of a full group; null: unknown.</param>
    // A sound pack at half charge is a tenth of a volt or more from its nominal volts in each group.
    public static VoltSpan Group(double? restV, double? emptyV, double? fullV) =>
        restV is { } measured ? new VoltSpan(measured, measured) : new VoltSpan(emptyV ?? double.NaN, fullV ?? double.NaN);

    /// <summary>Volts expected from pack minus at each tap.</summary>
    /// <param name="groups">Each group in series order, shape [S].</param>
    /// <returns>Shape [S + 1]; NaN from the first unknown group on.</returns>
    public static VoltSpan[] Expected(IReadOnlyList<VoltSpan> groups)
    {
        VoltSpan[] taps = new VoltSpan[groups.Count + 1];
        for (int tap = 1; tap < taps.Length; tap++)
            taps[tap] = new VoltSpan(taps[tap - 1].LowV + groups[tap - 1].LowV, taps[tap - 1].HighV + groups[tap - 1].HighV);
        return taps;
    }

    /// <summary>How far a reading from pack minus may be off.</summary>
    /// <param name="expectedV">Volts expected there.</param>
    /// <returns>Volts either way.</returns>
    public static double Tolerance(double expectedV) => Math.Max(ToleranceV, ToleranceFraction * Math.Abs(expectedV));

    /// <summary>Whether one reading is as it must be.</summary>
    /// <param name="tap">0 is pack minus.</param>
    /// <param name="expected">As <see cref="Expected"/> gives them.</param>
    /// <param name="readings">What the meter showed, by tap.</param>
    /// <returns>True or false; null where nothing was read or nothing is expected.</returns>
    public static bool? IsRight(int tap, IReadOnlyList<VoltSpan> expected, IReadOnlyDictionary<int, double> readings) =>
        Fault(tap, expected, readings) is { } fault ? fault == TapFault.None : null;

    /// <summary>What is wrong with one reading.</summary>
    /// <param name="tap">0 is pack minus.</param>
    /// <param name="expected">As <see cref="Expected"/> gives them.</param>
    /// <param name="readings">What the meter showed, by tap.</param>
    /// <returns>Null where nothing was read or nothing is expected.</returns>
    // Beside a reading that is wrong itself the step tells nothing: that one is the odd one, and it alone says stop.
    public static TapFault? Fault(int tap, IReadOnlyList<VoltSpan> expected, IReadOnlyDictionary<int, double> readings)
    {
        if (IsRightFromMinus(tap, expected, readings) is not { } right)
            return null;
        if (!right)
            return TapFault.FromMinus;
        if (tap == 0 || IsRightFromMinus(tap - 1, expected, readings) != true)
            return TapFault.None;
        double step = readings[tap] - readings[tap - 1];
        return step >= expected[tap].LowV - expected[tap - 1].LowV - ToleranceV && step <= expected[tap].HighV - expected[tap - 1].HighV + ToleranceV ? TapFault.None : TapFault.Step;
    }

    private static bool? IsRightFromMinus(int tap, IReadOnlyList<VoltSpan> expected, IReadOnlyDictionary<int, double> readings) =>
        !readings.TryGetValue(tap, out double read) || double.IsNaN(expected[tap].LowV + expected[tap].HighV) ? null
        : read >= expected[tap].LowV - Tolerance(expected[tap].LowV) && read <= expected[tap].HighV + Tolerance(expected[tap].HighV);
}
