using System.Runtime.CompilerServices;
using System.Text;
using System.Text.RegularExpressions;
using CsvHelper;
using PackPlanner.Core.Cells;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>Which column, or pair of columns, tells the moment of a row, and how it is written.</summary>
internal sealed partial class TimeColumn
{
    // Nanoseconds since 1970 are 1.8e18; a larger figure is a spoilt row.
    private const double LargestMoment = 1e19;

    private readonly int _index;
    private readonly int _clockIndex = -1;
    private bool _withUnit;
    private DecimalMark _mark;

    private TimeColumn(LogColumn column, StampKind kind, LogColumn? clock)
    {
        Column = column;
        Kind = kind;
        _index = column.Index;
        Clock = clock;
        _clockIndex = clock?.Index ?? -1;
    }

    internal LogColumn Column { get; }

    /// <summary>The clock beside a date column; null where one column says all.</summary>
    internal LogColumn? Clock { get; }

    internal StampKind Kind { get; }

    /// <summary>Day and month could stand in either order; day first is assumed.</summary>
    internal bool OrderAssumed { get; private init; }

    internal bool IsStamp => Kind != StampKind.Number;

    /// <summary>A clock without a date.</summary>
    internal bool IsClock => Kind is StampKind.Clock or StampKind.MinuteClock;

    /// <summary>All three numbers of the date have two digits, and the day is taken first.</summary>
    internal bool HasShortYears { get; private init; }

    /// <summary>Dashes stand between the numbers of the date, as they mostly do where the year comes first.</summary>
    internal bool HasDashes { get; private init; }

    /// <summary>Two numbers that count from nought can be hours and minutes or minutes and seconds.</summary>
    internal bool CanBeTwo { get; private init; }

    /// <summary>Notes at the columns that they tell the time.</summary>
    internal void Mark()
    {
        Column.Role = ColumnRole.Time;
        if (Clock is not null)
            Clock.Role = ColumnRole.Clock;
        Column.TellsTime = true;
        Clock?.TellsTime = true;
    }

    /// <summary>Finds the time of a log.</summary>
    /// <returns>Null when no column tells the time.</returns>
    internal static TimeColumn? Find(LogColumns columns, LogHead head)
    {
        LogColumn? date = columns[ColumnRole.Date];
        LogColumn? clock = columns[ColumnRole.Clock] ?? columns[ColumnRole.Time];
        bool chosen = Array.Exists(columns.All, column => column is { IsChosen: true, Role: ColumnRole.Time });
        if (!chosen && date is not null && clock is not null
            && StampText.KindOf(head.Column(clock.Index)).Kind == StampKind.Clock
            && StampText.KindOf(head.Column(date.Index)) is { Kind: not (null or StampKind.Clock) } dates)
            return new TimeColumn(date, dates.Kind.Value, clock)
            {
                OrderAssumed = dates.OrderAssumed,
                HasShortYears = IsShort(dates.Kind, head.Column(date.Index)),
                HasDashes = IsShort(dates.Kind, head.Column(date.Index)) && head.Column(date.Index)[0].Contains('-'),
            };
        IEnumerable<LogColumn> candidates = columns.All
            .Where(column => column.Role is ColumnRole.Time or ColumnRole.Date or ColumnRole.Clock)
            .OrderByDescending(column => column.Role == ColumnRole.Time ? 1 : 0).ThenByDescending(column => column.Fit).ThenBy(column => column.Index)
            .Concat(columns.All.Where(column => column.Role == ColumnRole.StepTime));
        TimeColumn[] found = [.. candidates.Select(column => Of(column, head)).OfType<TimeColumn>()];
        // A stamp that is the same in every row tells when the file was made.
        if ((Array.Find(found, time => time.Column.IsChosen || Moves(head.Column(time._index))) ?? (found.Length > 1 ? found[0] : null)) is { } best)
            return best;
        // A step or a stamp that is the same in all rows tells no moment.
        if (found.Length > 0)
            return null;
        // No name says time: the first column without a role whose figures only grow, or that holds stamps.
        LogColumn[] nameless = [.. columns.All.Where(column => column.Role is ColumnRole.Unknown or ColumnRole.Label)];
        LogColumn? behaves = Array.Find(nameless, column => StampText.KindOf(head.Column(column.Index)).Kind is not null)
            ?? (candidates.Any() ? null : Array.Find(nameless, column => Grows(column.Sample)));
        if (behaves is null)
            return null;
        behaves.SetBy = "values";
        return Of(behaves, head);
    }

    /// <summary>Two numbers such as 0:59 that can be read in two ways: both, and what settles it.</summary>
    /// <returns>Null where there is one reading.</returns>
    internal Refusal? InTwoWays(SourceFile source) => !CanBeTwo ? null : Refusal.Input("two-readings", $"{source.Name}, column {Column.Name}",
        "the times are two numbers from nought on, and can be hours and minutes or minutes and seconds",
        $"Say --column \"{Column.Name}=time:s\" if they are minutes and seconds, --column \"{Column.Name}=time:min\" if they are hours and minutes; or write h:mm or m:ss into the heading.");

    /// <summary>A stamp was met that can only have its month first, though the day was taken first.</summary>
    internal bool MetMonthFirst { get; private set; }

    /// <summary>Reads the moment of the current row: seconds since 2000 for stamps, else the plain figure.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal bool TryRead(CsvReader csv, out double moment)
    {
        if (Kind == StampKind.Number)
            return (csv.TryParse(_index, out moment) || (_withUnit && TryWithUnit(csv, out moment))) && Math.Abs(moment) < LargestMoment;
        if (!StampText.TryRead(csv.GetSpan(_index), Kind, out moment))
        {
            // The front of the file did not tell the order; 3/13 does, and turns all before it round.
            if (!OrderAssumed || Kind != StampKind.DayFirst || !StampText.TryRead(csv.GetSpan(_index), StampKind.MonthFirst, out moment))
                return false;
            MetMonthFirst = true;
        }

        if (_clockIndex < 0)
            return true;
        if (!StampText.TryRead(csv.GetSpan(_clockIndex), StampKind.Clock, out double clock))
            return false;
        moment += clock;
        return true;
    }

    // "12 s": the figure carries its unit, the same in every row.
    private bool TryWithUnit(CsvReader csv, out double moment)
    {
        moment = 0;
        return !csv.IsEmpty(_index) && Figures.TryRead(csv.GetString(_index), _mark, out moment, out string tail) && FileUnit.Find(tail) == Column.Unit;
    }

    private static bool Moves(string[] entries) => entries.Length < 3 || entries.Any(entry => entry != entries[0]);

    private static TimeColumn? Of(LogColumn column, LogHead head)
    {
        string[] entries = head.Column(column.Index);
        if (column.Unit is null && AreClockDigits(entries))
            return new TimeColumn(column, StampKind.Clock, null);
        if (StampText.AreCompact(entries))
            return new TimeColumn(column, StampKind.YearFirst, null);
        int figures = column.Sample.Count(double.IsFinite);
        if (figures * 2 > column.Sample.Length)
        {
            FileUnit? beside = entries.Select(entry => FileUnit.Find(Figures.Split(entry).Tail)).FirstOrDefault(unit => unit is { Of: Dimension.Time });
            if (beside is not null && column.Unit is null)
                (column.Unit, column.SetBy) = (beside, "cells");
            return new TimeColumn(column, StampKind.Number, null) { _withUnit = beside is not null, _mark = head.Mark };
        }

        if (entries.Count(entry => entry.Length > 0) * 2 < entries.Length)
            return null;
        (StampKind? kind, bool assumed) = StampText.KindOf(entries);
        if (kind == StampKind.Clock && entries.All(entry => entry.Length == 0 || StampText.IsTwoNumbers(Encoding.UTF8.GetBytes(entry))))
            return OfTwoNumbers(column, [.. entries.Where(entry => entry.Length > 0)]);
        bool isShort = IsShort(kind, entries);
        return kind is null ? null : new TimeColumn(column, kind.Value, null) { OrderAssumed = assumed, HasShortYears = isShort, HasDashes = isShort && entries[0].Contains('-') };
    }

    private static bool IsShort(StampKind? kind, string[] entries) => kind == StampKind.DayFirst && entries.All(entry => entry.Length == 0 || ShortDate().IsMatch(entry));

    // 095959 and then 100000: six digits whose steps are even as hours, minutes and seconds, and are not as a number.
    private static bool AreClockDigits(string[] entries)
    {
        string[] filled = [.. entries.Where(entry => entry.Length > 0)];
        if (filled.Length < 3 || !filled.All(entry => entry.Length == 6 && entry.All(char.IsAsciiDigit)))
            return false;
        int[] numbers = [.. filled.Select(entry => int.Parse(entry, System.Globalization.CultureInfo.InvariantCulture))];
        if (numbers.Any(number => number / 10000 > 23 || number / 100 % 100 > 59 || number % 100 > 59))
            return false;
        int[] seconds = [.. numbers.Select(number => (number / 10000 * 3600) + (number / 100 % 100 * 60) + (number % 100))];
        int widest = seconds.Zip(seconds.Skip(1), (one, next) => next - one).Max();
        return widest > 0 && numbers.Zip(numbers.Skip(1), (one, next) => next - one).Max() > widest;
    }

    // Minutes and seconds where the heading says so or the first number is no hour; hours and minutes where rows share them or begin later than nought.
    private static TimeColumn OfTwoNumbers(LogColumn column, string[] entries)
    {
        bool minutes = column.UnitIsChosen ? column.Unit == FileUnit.Second : MinutesHeading().IsMatch(column.Name);
        bool hours = column.UnitIsChosen ? column.Unit == FileUnit.Minute : HoursHeading().IsMatch(column.Name);
        int[] first = [.. entries.Select(entry => int.TryParse(entry.AsSpan(0, entry.IndexOf(':')), out int number) ? number : 0)];
        bool apart = entries.Distinct().Count() == entries.Length;
        column.Unit = null;
        return new TimeColumn(column, minutes || (!hours && first.Max() > 23) ? StampKind.MinuteClock : StampKind.Clock, null)
        {
            CanBeTwo = !minutes && !hours && first.Max() <= 23 && first[0] == 0 && apart,
        };
    }

    [GeneratedRegex(@"^[^0-9]{0,5}[0-9][0-9]([-/.])[0-9][0-9]\1[0-9][0-9](?![0-9])")]
    private static partial Regex ShortDate();

    [GeneratedRegex(@"\bm{1,2}:s{1,2}\b", RegexOptions.IgnoreCase)]
    private static partial Regex MinutesHeading();

    [GeneratedRegex(@"\bh{1,2}:m{1,2}\b", RegexOptions.IgnoreCase)]
    private static partial Regex HoursHeading();

    // Mostly up from row to row, and mostly by like steps: a temperature grows too, but by fits and starts.
    private static bool Grows(double[] sample)
    {
        double[] steps = [.. sample.Zip(sample.Skip(1), (one, next) => next - one).Where(double.IsFinite)];
        int up = steps.Count(step => step > 0);
        int down = steps.Count(step => step < 0);
        double usual = Robust.UpperMedian(steps.Where(step => step > 0));
        return up > 2 && down * 50 < up && up * 2 > steps.Length && steps.Count(step => Math.Abs(step - usual) < 0.3 * usual) * 2 > up;
    }
}
