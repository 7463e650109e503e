using CsvHelper;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>Which column, or pair of columns, tells the moment of a row, and how it is written.</summary>
internal sealed class TimeColumn
{
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
            return new TimeColumn(date, dates.Kind.Value, clock) { OrderAssumed = dates.OrderAssumed };
        IEnumerable<LogColumn> candidates = columns.All
            .Where(column => column.Role is ColumnRole.Time or ColumnRole.Date or ColumnRole.Clock)
            .OrderByDescending(column => column.Role == ColumnRole.Time ? 1 : 0).ThenByDescending(column => column.Fit).ThenBy(column => column.Index)
            .Concat(columns.All.Where(column => column.Role == ColumnRole.StepTime));
        TimeColumn[] found = [.. candidates.Select(column => Of(column, head)).OfType<TimeColumn>()];
        // A stamp that is the same in every row tells when the file was made.
        if ((Array.Find(found, time => time.Column.IsChosen || Moves(head.Column(time._index))) ?? found.FirstOrDefault()) is { } best)
            return best;
        // No name says time: the first column without a role whose figures only grow, or that holds stamps.
        foreach (LogColumn column in columns.All.Where(column => column.Role is ColumnRole.Unknown or ColumnRole.Label))
            if (Grows(column.Sample) || StampText.KindOf(head.Column(column.Index)).Kind is not null)
            {
                column.SetBy = "values";
                return Of(column, head);
            }

        return null;
    }

    /// <summary>Reads the moment of the current row: seconds since 2000 for stamps, else the plain figure.</summary>
    internal bool TryRead(CsvReader csv, out double moment)
    {
        if (Kind == StampKind.Number)
            return (csv.TryParse(_index, out moment) || (_withUnit && TryWithUnit(csv, out moment))) && double.IsFinite(moment);
        if (!StampText.TryRead(csv.GetSpan(_index), Kind, out moment))
            return false;
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
        return kind is null ? null : new TimeColumn(column, kind.Value, null) { OrderAssumed = assumed };
    }

    private static bool Grows(double[] sample)
    {
        int up = 0;
        int down = 0;
        for (int i = 1; i < sample.Length; i++)
        {
            up += sample[i] > sample[i - 1] ? 1 : 0;
            down += sample[i] < sample[i - 1] ? 1 : 0;
        }

        return up > 2 && down * 50 < up;
    }
}
