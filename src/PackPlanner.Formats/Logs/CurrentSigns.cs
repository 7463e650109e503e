using System.Globalization;

namespace PackPlanner.Formats.Logs;

/// <summary>Finds which direction of a current is positive from how the volts answer.</summary>
internal static class CurrentSigns
{
    // Current steps smaller than this share of the largest current are noise.
    private const double SmallestStep = 0.03;

    /// <summary>Finds which direction is positive from how the volts answer.</summary>
    /// <param name="timeS">Seconds.</param>
    /// <param name="currentA">As in the file.</param>
    /// <param name="volts">Volts of a cell, or the mean of the groups.</param>
    /// <returns>The sign and the evidence in words.</returns>
    internal static (CurrentSign Sign, string Evidence) Of(double[] timeS, double[] currentA, double[] volts)
    {
        double high = 0;
        double low = 0;
        foreach (double value in currentA)
        {
            high = value > high ? value : high;
            low = value < low ? value : low;
        }

        double most = Math.Max(high, -low);
        if (most <= 0)
            return (CurrentSign.Unknown, "the current is nought in every row");
        (double both, int steps, double alongWhenLow, double alongWhenHigh, double stepV) = Steps(timeS, currentA, volts, most);
        bool oneSided = Math.Min(high, -low) < 0.02 * most;
        if (oneSided && UnsignedCurrent.Is(timeS, currentA, volts, most, alongWhenLow, alongWhenHigh))
            return (CurrentSign.Unsigned, "it is never negative, yet the volts rise at times and fall at times while it flows");
        if (steps >= 5 && Math.Abs(both) > 0.25)
            return both < 0
                ? (CurrentSign.Discharge, string.Create(CultureInfo.InvariantCulture, $"volts fall when it rises, in {steps} steps"))
                : (CurrentSign.Charge, string.Create(CultureInfo.InvariantCulture, $"volts rise when it rises, in {steps} steps"));
        double slow = Slow(timeS, currentA, volts);
        // Few steps that are most of what the volts ever do say more than a drift that they upset.
        bool stepsRule = steps > 0 && Math.Abs(both) > 0.9 && both * slow < 0 && stepV > 0.3 * Range(volts);
        if (Math.Abs(slow) > 0.3 && !stepsRule)
            return slow < 0
                ? (CurrentSign.Discharge, "volts fall while it flows")
                : (CurrentSign.Charge, "volts rise while it flows");
        if (steps > 0 && Math.Abs(both) > 0.25)
            return (both < 0 ? CurrentSign.Discharge : CurrentSign.Charge, $"from {steps} steps alone");
        return (CurrentSign.Unknown, "the volts do not answer it clearly");
    }

    /// <summary>Correlation of the steps of the volts with those of the current: near -1 where a rising current lowers them.</summary>
    /// <param name="timeS">Seconds.</param>
    /// <param name="currentA">Amperes.</param>
    /// <param name="volts">Volts of a cell, or the mean of the groups.</param>
    internal static double Answer(double[] timeS, double[] currentA, double[] volts) =>
        Steps(timeS, currentA, volts, currentA.Where(double.IsFinite).Select(Math.Abs).DefaultIfEmpty(0).Max()).Both;

    // Correlation of steps of volts with steps of current between neighbouring rows.
    private static (double Both, int Steps, double WhenFalling, double WhenRising, double StepV) Steps(double[] timeS, double[] currentA, double[] volts, double most)
    {
        double iv = 0;
        double ii = 0;
        double vv = 0;
        int steps = 0;
        double[] sides = [0, 0];
        for (int i = 1; i < currentA.Length; i++)
        {
            double di = currentA[i] - currentA[i - 1];
            double dv = volts[i] - volts[i - 1];
            if (!(Math.Abs(di) > SmallestStep * most) || !double.IsFinite(dv) || timeS[i] - timeS[i - 1] > 120)
                continue;
            iv += di * dv;
            ii += di * di;
            vv += dv * dv;
            steps++;
            if (dv * di < 0)
                sides[0] -= di * dv;
            else
                sides[1] += di * dv;
        }

        return (ii * vv > 0 ? iv / Math.Sqrt(ii * vv) : 0, steps, sides[0], sides[1], steps > 0 ? Math.Sqrt(vv / steps) : 0);
    }

    private static double Range(double[] volts)
    {
        (double low, double high) = (double.MaxValue, double.MinValue);
        foreach (double value in volts)
        {
            low = value < low ? value : low;
            high = value > high ? value : high;
        }

        return high - low;
    }

    // Correlation of the charge counted with the volts: one current that flows for hours has no steps.
    private static double Slow(double[] timeS, double[] currentA, double[] volts)
    {
        int n = 0;
        double ah = 0;
        double sx = 0;
        double sy = 0;
        double sxx = 0;
        double syy = 0;
        double sxy = 0;
        for (int i = 1; i < currentA.Length; i++)
        {
            double step = timeS[i] - timeS[i - 1];
            if (!double.IsFinite(currentA[i]) || !double.IsFinite(volts[i]))
                continue;
            ah += step < 600 ? currentA[i] * step / 3600 : 0;
            n++;
            sx += ah;
            sy += volts[i];
            sxx += ah * ah;
            syy += volts[i] * volts[i];
            sxy += ah * volts[i];
        }

        double cov = sxy - (sx * sy / Math.Max(1, n));
        double spread = (sxx - (sx * sx / Math.Max(1, n))) * (syy - (sy * sy / Math.Max(1, n)));
        return spread > 0 ? cov / Math.Sqrt(spread) : 0;
    }
}

/// <summary>Which direction of the current is positive in a file.</summary>
internal enum CurrentSign
{
    Unknown,
    Discharge,
    Charge,
    Unsigned,
}
