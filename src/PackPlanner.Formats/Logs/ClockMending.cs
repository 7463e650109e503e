namespace PackPlanner.Formats.Logs;

/// <summary>Mends moments that fall back or leap by years.</summary>
internal static class ClockMending
{
    internal const double DayS = 86400;

    /// <summary>No ride waits that long for its next row.</summary>
    internal const double LeapS = 5 * 365 * DayS;

    /// <summary>Some moment lies before the one above it, or years behind it.</summary>
    internal static bool IsNeeded(double[] seconds) => Falls(seconds) > 0 || LeapsYears(seconds);

    /// <summary>Moments that never fall, and the order of the rows where they were sorted.</summary>
    // Falls back to the start, or to 1970 or 2000, are a clock that was reset, once or at every ride: the log goes on by the usual step.
    // A clock without date that falls by over an hour stands on the next day. An hour back is the end of summer time. All else is disorder: sorted.
    internal static (double[] Seconds, int[]? Order) Mend(double[] seconds, TimeColumn time, double usual, bool alwaysSort, List<string> said)
    {
        int falls = Falls(seconds);
        // Where a third of all rows fall back, no clock was reset so often: the rows are shuffled or stand backward.
        if (alwaysSort || falls > Math.Max(3, seconds.Length / 3))
            return Sort(seconds, said, falls);
        int resets = 0;
        for (int i = 1; i < seconds.Length; i++)
            resets += seconds[i] < seconds[i - 1] && IsReset(seconds, i, time, usual) ? 1 : 0;
        bool seldom = falls <= Math.Max(3, seconds.Length / 200);
        if (seldom ? resets == 0 && !LeapsYears(seconds) : resets * 10 < falls * 8)
            return Sort(seconds, said, falls);
        return (new GoingOn(seconds, time, usual).Mended(said), null);
    }

    /// <summary>A step as at the end of summer time.</summary>
    internal static bool IsHourBack(double stepS, double usualS) => Math.Abs(stepS + 3600 - usualS) < Math.Max(120, 3 * usualS);

    /// <summary>A clock without a date that falls so far was read on another day.</summary>
    internal static bool IsNewDay(double stepS, double usualS) => stepS < -Math.Max(3600, 20 * usualS);

    private static int Falls(double[] seconds)
    {
        int falls = 0;
        for (int i = 1; i < seconds.Length; i++)
            falls += seconds[i] < seconds[i - 1] ? 1 : 0;
        return falls;
    }

    private static bool LeapsYears(double[] seconds)
    {
        for (int i = 1; i < seconds.Length; i++)
            if (seconds[i] - seconds[i - 1] > LeapS)
                return true;
        return false;
    }

    private static bool IsReset(double[] seconds, int i, TimeColumn time, double usual)
    {
        double step = seconds[i] - seconds[i - 1];
        if (time.IsClock)
            return IsNewDay(step, usual);
        if (time.IsStamp)
            return IsHourBack(step, usual) || step < -LeapS;
        return seconds[i] <= seconds[0] + (5 * usual) || Math.Abs(seconds[i]) < 5 * usual;
    }

    private static (double[] Seconds, int[] Order) Sort(double[] seconds, List<string> said, int falls)
    {
        double[] sorted = (double[])seconds.Clone();
        int[] order = [.. Enumerable.Range(0, seconds.Length)];
        // Rows with the same stamp keep their order, so the place in the file is the second key.
        Array.Sort(sorted, order);
        for (int from = 0; from < sorted.Length;)
        {
            int to = from + 1;
            while (to < sorted.Length && sorted[to] == sorted[from])
                to++;
            Array.Sort(order, from, to - from);
            from = to;
        }

        said.Add($"The rows were not in the order of time ({falls} steps backward); they were put in order.");
        return (sorted, order);
    }
}
