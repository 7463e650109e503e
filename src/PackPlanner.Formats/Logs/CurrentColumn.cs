using System.Globalization;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>The current of a log: its unit, its fillers, and which direction is positive.</summary>
internal static class CurrentColumn
{
    // Current steps smaller than this share of the largest current are noise.
    private const double SmallestStep = 0.03;

    /// <summary>Finds the unit from the size of the figures where the heading has none.</summary>
    /// <param name="column">Figures as written.</param>
    /// <param name="ratedAh">Capacity that the user named, ampere-hours.</param>
    /// <param name="packUnit">Unit in which the pack's volts were found to be written without saying so; null where that is not known.</param>
    /// <param name="both">The two readings that remain.</param>
    /// <returns>Null when two units remain equally plausible; both are then named.</returns>
    internal static FileUnit? UnitOf(LogColumn column, double? ratedAh, FileUnit? packUnit, out (string One, string Other) both)
    {
        both = default;
        if (column.Unit is { Of: Dimension.Current } given)
            return given;
        double[] sizes = [.. column.Values.Where(double.IsFinite).Select(Math.Abs).Order()];
        if (sizes.Length == 0)
            return FileUnit.Ampere;
        column.SetBy = "heading and values";
        double high = sizes[(int)((sizes.Length - 1) * 0.995)];
        bool whole = column.Values.Take(5000).All(value => !double.IsFinite(value) || value == Math.Floor(value));
        if (!whole)
            return high > 3000 ? FileUnit.Milliampere : FileUnit.Ampere;
        if (ratedAh is { } rated && high > 0)
        {
            // A pack is seldom drawn beyond five times its capacity an hour, nor its largest current below a twentieth.
            FileUnit[] fits = [.. new[] { FileUnit.Ampere, FileUnit.Deciampere, FileUnit.Centiampere, FileUnit.Milliampere }
                .Where(unit => unit.Convert(high) / rated is > 0.05 and < 5)];
            if (fits.Length == 1)
                return fits[0];
            if (fits.Length > 1)
                return fits.Contains(FileUnit.Ampere) ? FileUnit.Ampere : fits.Contains(FileUnit.Milliampere) ? FileUnit.Milliampere : fits[0];
        }

        if (packUnit == FileUnit.Decivolt || packUnit == FileUnit.Centivolt || packUnit == FileUnit.Millivolt)
            return packUnit == FileUnit.Decivolt ? FileUnit.Deciampere : packUnit == FileUnit.Centivolt ? FileUnit.Centiampere : FileUnit.Milliampere;
        if (high is < 400)
            return FileUnit.Ampere;
        if (high > 2000)
            return FileUnit.Milliampere;
        both = (Text(high, "A"), Text(high, "mA"));
        return null;
    }

    /// <summary>Takes out fillers: one sample far beyond all others, or the largest figure that a counter can hold.</summary>
    internal static void Clean(LogColumn column, FileUnit unit, int[] lines, RowCounter counter)
    {
        double[] values = column.Values;
        double least = 300 / unit.Scale;
        double largest = 0;
        foreach (double value in values)
            largest = Math.Max(largest, double.IsNaN(value) ? 0 : Math.Abs(value));
        if (largest <= least)
        {
            // Nothing can be a filler, so the figures need not be sorted to find one.
            if (unit.Scale != 1)
                for (int i = 0; i < values.Length; i++)
                    values[i] = unit.Convert(values[i]);
            return;
        }

        double[] sizes = [.. values.Where(double.IsFinite).Select(Math.Abs).Order()];
        double usualHigh = sizes.Length == 0 ? 0 : sizes[(int)((sizes.Length - 1) * 0.998)];
        double limit = Math.Max(5 * usualHigh, least);
        for (int i = 0; i < values.Length; i++)
        {
            double size = Math.Abs(values[i]);
            bool lone = size > limit
                && !(i > 0 && Math.Abs(values[i - 1]) > limit / 2)
                && !(i + 1 < values.Length && Math.Abs(values[i + 1]) > limit / 2);
            bool filler = size is 65535 or 32768 or 32767 or 6553.5 or 3276.7 or 655.35 or 327.67;
            if (lone || (filler && size > limit) || double.IsInfinity(values[i]))
            {
                counter.Sample(column.Name, $"{values[i].ToString("0.###", CultureInfo.InvariantCulture)}, a lone value far beyond all others", lines.Length > i ? lines[i] : 0);
                values[i] = double.NaN;
            }
            else if (unit.Scale != 1)
            {
                values[i] = unit.Convert(values[i]);
            }
        }
    }

    /// <summary>Finds which direction is positive from how the volts answer.</summary>
    /// <param name="timeS">Seconds.</param>
    /// <param name="currentA">As in the file.</param>
    /// <param name="volts">Volts of a cell, or the mean of the groups.</param>
    /// <returns>The sign and the evidence in words.</returns>
    internal static (CurrentSign Sign, string Evidence) SignOf(double[] timeS, double[] currentA, double[] volts)
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
        if (oneSided && IsUnsigned(timeS, currentA, volts, most, alongWhenLow, alongWhenHigh))
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

    // Without a sign a rising current lowers the volts in one part of the log and raises them in another, both clearly,
    // and there are long stretches of rising and of falling volts while it flows.
    private static bool IsUnsigned(double[] timeS, double[] currentA, double[] volts, double most, double falling, double rising)
    {
        double fellS = 0;
        double roseS = 0;
        int window = Math.Max(5, currentA.Length / 200);
        for (int from = 0; from + window < currentA.Length; from += window)
        {
            int to = from + window;
            double flow = 0;
            bool steady = true;
            for (int i = from; i <= to; i++)
            {
                flow += Math.Abs(currentA[i]);
                steady &= Math.Abs(currentA[i] - currentA[from]) < 0.3 * most;
            }

            flow /= window + 1;
            double change = volts[to] - volts[from];
            if (!(flow > 0.1 * most) || !steady || !double.IsFinite(change))
                continue;
            fellS += change < -0.002 ? timeS[to] - timeS[from] : 0;
            roseS += change > 0.002 ? timeS[to] - timeS[from] : 0;
        }

        double less = Math.Min(falling, rising);
        bool stepsBothWays = less > 0.1 * Math.Max(falling, rising);
        return (stepsBothWays && Math.Min(fellS, roseS) > 0.1 * Math.Max(fellS, roseS)) || WholeStepsBothWays(timeS, currentA, volts, most) || FlowEdges.BothWays(timeS, currentA, volts, most);
    }

    // From rest to rest: one long stretch of current that lifts the volts at once and goes on lifting them, and one that does the
    // opposite. A small charging current beside a large discharge shows only here.
    private static bool WholeStepsBothWays(double[] timeS, double[] currentA, double[] volts, double most)
    {
        const double shortestS = 300;
        const double leastPart = 0.02;
        (bool rose, bool fell) = (false, false);
        int from = -1;
        for (int i = 1; i < currentA.Length; i++)
        {
            bool rest = Math.Abs(currentA[i]) < 0.02 * most;
            if (!rest && from < 0 && Math.Abs(currentA[i - 1]) < 0.02 * most)
                from = i;
            if (!rest || from < 0)
                continue;
            (double at, double jump, double change) = (volts[from], volts[from] - volts[from - 1], volts[i - 1] - volts[from]);
            if (timeS[i - 1] - timeS[from] >= shortestS && timeS[from] - timeS[from - 1] <= 120)
            {
                rose |= jump > 0 && change > leastPart * at;
                fell |= jump < 0 && change < -leastPart * at;
            }

            from = -1;
        }

        return rose && fell;
    }

    private static string Text(double figure, string unit) => string.Create(CultureInfo.InvariantCulture, $"{figure:0.###} {unit}");
}

/// <summary>Which direction of the current is positive in a file.</summary>
internal enum CurrentSign
{
    Unknown,
    Discharge,
    Charge,
    Unsigned,
}
