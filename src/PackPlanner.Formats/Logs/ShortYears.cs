namespace PackPlanner.Formats.Logs;

/// <summary>Stamps of three two-digit numbers such as 24-05-23: the day or the year can stand first, and a midnight in the log tells which.</summary>
internal static class ShortYears
{
    private const double DayS = 86400;
    private const double LongS = 27 * DayS;

    /// <summary>Reads the year first where the other order leaps by a month or more at midnight and this one does not.</summary>
    /// <param name="seconds">Seconds since 2000, the day taken first.</param>
    /// <param name="time">How the stamps are written.</param>
    /// <param name="usual">The usual step, seconds.</param>
    /// <param name="said">Gets a sentence.</param>
    internal static (double[] Seconds, double UsualS) Mend(double[] seconds, TimeColumn time, double usual, List<string> said)
    {
        if (!time.HasShortYears)
            return (seconds, usual);
        int leaps = Leaps(seconds);
        if (leaps == 0)
        {
            if (time.HasDashes)
                said.Add("The stamps have a year of two digits; the day is taken first and the year last.");
            return (seconds, usual);
        }

        double[] yearFirst = Array.ConvertAll(seconds, YearFirst);
        if (Array.Exists(yearFirst, double.IsNaN) || Leaps(yearFirst) >= leaps)
            return (seconds, usual);
        said.Add("The stamps have a year of two digits; it is taken first, because only so the days follow one another.");
        return (yearFirst, LogClock.Usual(yearFirst));
    }

    /// <summary>Steps of a month or more, forward or back.</summary>
    internal static int Leaps(double[] seconds)
    {
        int leaps = 0;
        for (int i = 1; i < seconds.Length; i++)
            leaps += Math.Abs(seconds[i] - seconds[i - 1]) > LongS ? 1 : 0;
        return leaps;
    }

    // 24-05-23 was read as the 24th of May 2023 and is the 23rd of May 2024.
    private static double YearFirst(double seconds)
    {
        DateTime read = StampText.MomentOf(seconds);
        (int year, int month, int day) = (2000 + read.Day, read.Month, read.Year - 2000);
        if (day < 1 || day > DateTime.DaysInMonth(year, month))
            return double.NaN;
        return StampText.SecondsOf(new DateTime(year, month, day, 0, 0, 0, DateTimeKind.Unspecified)) + read.TimeOfDay.TotalSeconds;
    }
}
