namespace PackPlanner.Formats.Logs;

/// <summary>Mends single steps of a clock that goes forward: summer time, and stamps cut to whole seconds.</summary>
internal static class ClockSteps
{
    /// <summary>Takes out the hour by which summer time begins.</summary>
    // Local stamps jump forward by an hour in a night of March or so; the log went on, so the hour is taken out.
    internal static double[] SummerTime(double[] seconds, TimeColumn time, double usual, List<string> said)
    {
        if (!time.IsStamp || time.IsClock || usual > 600)
            return seconds;
        for (int i = 1; i < seconds.Length; i++)
        {
            double step = seconds[i] - seconds[i - 1];
            if (Math.Abs(step - 3600 - usual) > Math.Max(2, 0.5 * usual))
                continue;
            DateTime after = StampText.MomentOf(seconds[i]);
            if (after.DayOfWeek != DayOfWeek.Sunday || after.Month is not (3 or 4 or 9 or 10) || after.Hour is not (2 or 3) || after.Minute > 5 + (usual / 60))
                continue;
            double[] mended = (double[])seconds.Clone();
            for (int j = i; j < mended.Length; j++)
                mended[j] -= 3600;
            said.Add($"The stamps jump forward by one hour on {after:yyyy-MM-dd}, as at the start of summer time; no gap is counted there.");
            return mended;
        }

        return seconds;
    }

    /// <summary>Spreads rows that share a stamp.</summary>
    // Stamps cut to whole seconds repeat; rows that share one are spread evenly to the next.
    internal static double[] SpreadRepeats(double[] seconds, ref double usual)
    {
        int repeats = 0;
        for (int i = 1; i < seconds.Length; i++)
            repeats += seconds[i] == seconds[i - 1] ? 1 : 0;
        if (repeats * 10 < seconds.Length || usual <= 0)
            return seconds;
        double[] spread = (double[])seconds.Clone();
        for (int from = 0; from < seconds.Length;)
        {
            int to = from + 1;
            while (to < seconds.Length && seconds[to] == seconds[from])
                to++;
            double until = to < seconds.Length && seconds[to] - seconds[from] <= 1.5 * usual ? seconds[to] - seconds[from] : usual;
            for (int j = from; j < to; j++)
                spread[j] = seconds[from] + (until * (j - from) / (to - from));
            from = to;
        }

        usual = LogClock.Usual(spread);
        return spread;
    }
}
