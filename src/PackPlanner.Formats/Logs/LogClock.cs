using System.Globalization;
using PackPlanner.Core.Cells;
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
    /// <summary>Mends the clock of a log.</summary>
    /// <param name="moments">As written.</param>
    /// <param name="time">How they are written.</param>
    /// <param name="manyAMoment">Rows of one moment share its stamp, as in a long log, and are not to be spread.</param>
    /// <param name="alwaysSort">The rows are known to stand in another order than that of time: no fall back is a clock that was reset.</param>
    /// <param name="charge">What charge tells of the unit; null where it is not asked.</param>
    internal static LogClock Of(double[] moments, TimeColumn time, bool manyAMoment = false, bool alwaysSort = false, ChargeAgainstClock? charge = null)
    {
        List<string> said = [];
        FileUnit? unit = null;
        DateTime? start = null;
        double[] seconds = moments;
        double usual = Usual(moments);
        if (!time.IsStamp)
        {
            (unit, DateTime? zero) = UnitOf(moments, time, usual, charge, said);
            if (unit.Scale != 1)
            {
                seconds = Array.ConvertAll(moments, unit.Convert);
                usual = Usual(seconds);
            }

            start = zero?.AddSeconds(seconds.Length > 0 ? seconds[0] : 0);
        }
        else if (!time.IsClock && seconds.Length > 0)
        {
            (seconds, usual) = ShortYears.Mend(seconds, time, usual, said);
            (seconds, usual) = DayMonthOrder.Mend(seconds, time, usual, said);
            start = StampText.MomentOf(seconds[0]);
        }

        int[]? order = null;
        if (ClockMending.IsNeeded(seconds))
        {
            (seconds, order) = ClockMending.Mend(seconds, time, usual, alwaysSort, said);
            usual = Usual(seconds);
            if (order is not null && time.IsStamp && !time.IsClock)
                start = StampText.MomentOf(seconds[0]);
        }

        seconds = ClockSteps.SummerTime(seconds, time, usual, said);
        if (!manyAMoment)
            seconds = ClockSteps.SpreadRepeats(seconds, ref usual);
        return new LogClock(FromZero(seconds), order, start, usual, unit, said);
    }

    // The unit of plain numbers, and the moment that they count from where they are counted since 1970.
    private static (FileUnit Unit, DateTime? Zero) UnitOf(double[] moments, TimeColumn time, double usual, ChargeAgainstClock? charge, List<string> said)
    {
        bool given = time.Column.Unit is { Of: Dimension.Time };
        (FileUnit likely, DateTime? zero) = ClockUnits.Of(moments, usual);
        (FileUnit unit, zero) = given && !ClockUnits.AreEpoch(moments) ? (time.Column.Unit!, null) : (likely, zero);
        if (!given)
        {
            time.Column.SetBy = "heading and values";
            string? why = null;
            if (zero is null && charge?.Told(moments, usual, unit) is { } told)
                (unit, why) = told;
            said.Add(zero is not null ? $"The time counts {unit.Name} since 1970."
                : $"The time has no unit; its steps are read as {unit.Name}{(why is null ? "" : $": {why}")}. Another unit is said by --column \"{time.Column.Name}=time:{(unit == FileUnit.Minute ? "s" : "min")}\".");
        }
        else if (zero is null && likely != unit && usual > 0)
        {
            said.Add(string.Create(CultureInfo.InvariantCulture,
                $"The heading of the time says {unit.Name}, though its steps of {usual:0.#####} look like {likely.Name}; it is read as the heading says. Mend the heading if the unit is wrong."));
        }

        time.Column.Unit = unit;
        return (unit, zero);
    }

    /// <summary>The middle of the steps that go forward; nought where none does.</summary>
    internal static double Usual(double[] seconds)
    {
        int every = Math.Max(1, seconds.Length / 200_000);
        List<double> steps = [];
        for (int i = 1; i < seconds.Length; i += every)
            if (seconds[i] > seconds[i - 1])
                steps.Add(seconds[i] - seconds[i - 1]);
        return steps.Count == 0 ? 0 : Robust.UpperMedian(steps);
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
