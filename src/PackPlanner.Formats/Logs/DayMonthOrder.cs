namespace PackPlanner.Formats.Logs;

/// <summary>Stamps such as 3/4/2026, whose front part does not tell whether day or month stands first: the rest of the file may.</summary>
internal static class DayMonthOrder
{
    /// <summary>Turns day and month round where a later stamp has no other reading, or where only so the days follow one another.</summary>
    /// <param name="seconds">Seconds since 2000, the day taken first where both can be.</param>
    /// <param name="time">How the stamps are written.</param>
    /// <param name="usual">The usual step, seconds.</param>
    /// <param name="said">Gets a sentence.</param>
    internal static (double[] Seconds, double UsualS) Mend(double[] seconds, TimeColumn time, double usual, List<string> said)
    {
        if (!time.OrderAssumed)
            return (seconds, usual);
        double[] monthFirst = Array.ConvertAll(seconds, MonthFirst);
        if (time.MetMonthFirst)
            said.Add("The stamps have the month first: one of them has no other reading.");
        else if (ShortYears.Leaps(monthFirst) < ShortYears.Leaps(seconds))
            said.Add("The stamps have the month first, because only so the days follow one another.");
        else
        {
            said.Add("Day and month could stand in either order in the stamps; the day is taken first.");
            return (seconds, usual);
        }

        return (monthFirst, LogClock.Usual(monthFirst));
    }

    // 3/4 was read as the 3rd of April and is the 4th of March; a day above 12 was read rightly.
    private static double MonthFirst(double seconds)
    {
        DateTime read = StampText.MomentOf(seconds);
        return read.Day > 12 ? seconds
            : StampText.SecondsOf(new DateTime(read.Year, read.Day, read.Month, 0, 0, 0, DateTimeKind.Unspecified)) + read.TimeOfDay.TotalSeconds;
    }
}
