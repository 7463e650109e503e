using System.Globalization;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>From moments as written to seconds since the first row, whatever the clock did.</summary>
/// <param name="TimeS">Seconds since the first row, shape [rows], never falling.</param>
/// <param name="Order">Where each row stood in the file; null when the order was right already.</param>
/// <param name="Start">When the first row was written; null when the file counts seconds only.</param>
/// <param name="UsualStepS">The usual time between rows, seconds.</param>
/// <param name="Unit">Unit of a plain number.</param>
/// <param name="Understood">What was found, one sentence each.</param>
internal sealed record LogClock(double[] TimeS, int[]? Order, DateTime? Start, double UsualStepS, FileUnit? Unit, IReadOnlyList<string> Understood)
{
    private const double DayS = 86400;
    private const double YearS = 365 * DayS;

    /// <summary>Mends the clock of a log.</summary>
    /// <param name="moments">As written.</param>
    /// <param name="time">How they are written.</param>
    /// <param name="manyAMoment">Rows of one moment share its stamp, as in a long log, and are not to be spread.</param>
    internal static LogClock Of(double[] moments, TimeColumn time, bool manyAMoment = false)
    {
        List<string> said = [];
        FileUnit? unit = null;
        DateTime? start = null;
        double[] seconds = moments;
        double usual = Usual(moments);
        if (!time.IsStamp)
        {
            bool given = time.Column.Unit is { Of: Dimension.Time };
            (FileUnit likely, DateTime? zero) = UnitOf(moments, usual);
            (unit, zero) = given && !IsEpoch(moments) ? (time.Column.Unit!, null) : (likely, zero);
            if (!given)
            {
                time.Column.SetBy = "heading and values";
                said.Add(zero is null
                    ? $"The time has no unit; its steps are read as {unit.Name}."
                    : $"The time counts {unit.Name} since 1970.");
            }
            else if (zero is null && likely != unit && usual > 0)
            {
                said.Add(string.Create(CultureInfo.InvariantCulture,
                    $"The heading of the time says {unit.Name}, though its steps of {usual:0.#####} look like {likely.Name}; it is read as the heading says. Mend the heading if the unit is wrong."));
            }

            time.Column.Unit = unit;
            if (unit.Scale != 1)
            {
                seconds = Array.ConvertAll(moments, unit.Convert);
                usual = Usual(seconds);
            }

            start = zero?.AddSeconds(seconds.Length > 0 ? seconds[0] : 0);
        }
        else if (time.Kind != StampKind.Clock && seconds.Length > 0)
        {
            start = StampText.MomentOf(seconds[0]);
            if (time.OrderAssumed)
                said.Add("Day and month could stand in either order in the stamps; the day is taken first.");
        }

        int[]? order = null;
        if (Falls(seconds) > 0 || LeapsYears(seconds))
        {
            (seconds, order) = Mend(seconds, time, usual, said);
            usual = Usual(seconds);
            if (order is not null && time.IsStamp && time.Kind != StampKind.Clock)
                start = StampText.MomentOf(seconds[0]);
        }

        seconds = SummerTime(seconds, time, usual, said);
        if (!manyAMoment)
            seconds = SpreadRepeats(seconds, ref usual);
        return new LogClock(FromZero(seconds), order, start, usual, unit, said);
    }

    private static bool IsEpoch(double[] moments) => moments.Length > 0 && moments[0] is (> 9e8 and < 5e9) or (> 9e11 and < 5e12) or (> 9e14 and < 5e15) or (> 9e17 and < 5e18);

    private static (FileUnit Unit, DateTime? Zero) UnitOf(double[] moments, double step)
    {
        DateTime epoch = new(1970, 1, 1, 0, 0, 0, DateTimeKind.Unspecified);
        double first = moments.Length > 0 ? moments[0] : 0;
        if (first is > 9e8 and < 5e9)
            return (FileUnit.Second, epoch);
        if (first is > 9e11 and < 5e12)
            return (FileUnit.Millisecond, epoch);
        if (first is > 9e14 and < 5e15)
            return (FileUnit.Microsecond, epoch);
        if (first is > 9e17 and < 5e18)
            return (FileUnit.Nanosecond, epoch);
        // Spreadsheet days since 1900.
        if (first is > 30000 and < 70000 && step < 0.1)
            return (FileUnit.Day, new DateTime(1899, 12, 30, 0, 0, 0, DateTimeKind.Unspecified));
        bool whole = moments.Take(1000).All(moment => moment == Math.Floor(moment));
        // Loggers write a row each 0.1 to 60 s, or each whole minutes; steps of hundreds that are no whole minute are milliseconds.
        if (step >= 90 && whole && (step >= 7200 || step % 60 != 0))
            return (FileUnit.Millisecond, null);
        if (step < 0.03 && !whole && step > 0)
            return (step < 0.0006 ? FileUnit.Hour : FileUnit.Minute, null);
        return (FileUnit.Second, null);
    }

    /// <summary>The middle of the steps that go forward; nought where none does.</summary>
    internal static double Usual(double[] seconds)
    {
        int every = Math.Max(1, seconds.Length / 200_000);
        List<double> steps = [];
        for (int i = 1; i < seconds.Length; i += every)
            if (seconds[i] > seconds[i - 1])
                steps.Add(seconds[i] - seconds[i - 1]);
        steps.Sort();
        return steps.Count == 0 ? 0 : steps[steps.Count / 2];
    }

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
            if (seconds[i] - seconds[i - 1] > 5 * YearS)
                return true;
        return false;
    }

    // Few falls back to the start, or to 1970 or 2000, are a clock that was reset: the log goes on by the usual step.
    // A clock without date that falls by half a day passed midnight. An hour back is the end of summer time. All else is disorder: sorted.
    private static (double[] Seconds, int[]? Order) Mend(double[] seconds, TimeColumn time, double usual, List<string> said)
    {
        int falls = Falls(seconds);
        if (falls > Math.Max(3, seconds.Length / 200))
            return Sort(seconds, said, falls);
        bool reset = LeapsYears(seconds);
        for (int i = 1; i < seconds.Length && !reset; i++)
            reset = seconds[i] < seconds[i - 1] && IsReset(seconds, i, time, usual);
        if (!reset)
            return Sort(seconds, said, falls);
        double[] mended = (double[])seconds.Clone();
        double shift = 0;
        int resets = 0;
        int midnights = 0;
        int hours = 0;
        for (int i = 1; i < seconds.Length; i++)
        {
            double step = seconds[i] - seconds[i - 1];
            if (step < 0 && time.Kind == StampKind.Clock && step < -DayS / 2)
            {
                shift += DayS;
                midnights++;
            }
            else if (step < 0 && time.IsStamp && Math.Abs(step + 3600 - usual) < Math.Max(120, 3 * usual))
            {
                shift += 3600;
                hours++;
            }
            else if (step < 0 || step > 5 * YearS)
            {
                // Back to the right clock after a spell of the wrong one: the true stamp holds again, if it lies ahead.
                double goesOn = mended[i - 1] + usual;
                if (step > 5 * YearS && resets == 0)
                {
                    // The clock was wrong from the first row: those rows stand just before the first right one.
                    for (int j = 0; j < i; j++)
                        mended[j] += seconds[i] - goesOn;
                    goesOn = seconds[i];
                }

                shift = step > 0 && seconds[i] >= goesOn ? 0 : goesOn - seconds[i];
                resets++;
            }

            mended[i] = seconds[i] + shift;
        }

        if (midnights > 0)
            said.Add($"The clock has no date and passed midnight {midnights} times.");
        if (hours > 0)
            said.Add("The stamps fall back by one hour, as at the end of summer time; the log goes on without a gap.");
        if (resets > 0)
            said.Add($"The clock was reset {resets} times; from there the rows go on by the usual step of {usual:0.###} s, and the real time between is not known.");
        return (mended, null);
    }

    private static bool IsReset(double[] seconds, int i, TimeColumn time, double usual)
    {
        double step = seconds[i] - seconds[i - 1];
        if (time.Kind == StampKind.Clock)
            return step < -DayS / 2;
        if (time.IsStamp)
            return Math.Abs(step + 3600 - usual) < Math.Max(120, 3 * usual) || step < -5 * YearS;
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

    // Local stamps jump forward by an hour in a night of March or so; the log went on, so the hour is taken out.
    private static double[] SummerTime(double[] seconds, TimeColumn time, double usual, List<string> said)
    {
        if (!time.IsStamp || time.Kind == StampKind.Clock || usual > 600)
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

    // Stamps cut to whole seconds repeat; rows that share one are spread evenly to the next.
    private static double[] SpreadRepeats(double[] seconds, ref double usual)
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

        usual = Usual(spread);
        return spread;
    }

    private static double[] FromZero(double[] seconds)
    {
        if (seconds.Length == 0 || seconds[0] == 0)
            return seconds;
        double first = seconds[0];
        double[] fromZero = LargeArray.Of<double>(seconds.Length);
        for (int i = 0; i < seconds.Length; i++)
            // Stamps count from the year 2000; a tenth of a microsecond is what a double keeps there.
            fromZero[i] = Math.Round(seconds[i] - first, 6);
        return fromZero;
    }
}
