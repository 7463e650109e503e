using System.Globalization;

namespace PackPlanner.Formats.Tables;

/// <summary>Reads dates and stamps of a table of cells; day before month unless a figure above twelve says otherwise.</summary>
internal sealed class StampReader(bool monthFirst)
{
    private static readonly string[] YearFirst =
    [
        "yyyy-M-d", "yyyy/M/d", "yyyy.M.d", "yyyyMMdd", "yyyy-M-d H:m", "yyyy-M-d H:m:s", "yyyy/M/d H:m", "yyyy/M/d H:m:s",
        "yyyy-M-dTH:m", "yyyy-M-dTH:m:s", "yyyy-M-dTH:m:sZ", "yyyy-M-d H:m:s.fff", "yyyy-M-dTH:m:s.fff", "yyyy.M.d H:m:s", "yyyy年M月d日",
    ];

    private static readonly string[] DayFirst =
    [
        "d.M.yyyy", "d/M/yyyy", "d-M-yyyy", "d.M.yy", "d/M/yy", "d.M.yyyy H:m", "d/M/yyyy H:m", "d-M-yyyy H:m", "d.M.yyyy H:m:s", "d/M/yyyy H:m:s", "d-M-yyyy H:m:s",
        "d.M.yy H:m", "d/M/yy H:m", "d MMM yyyy", "d-MMM-yyyy", "d-MMM-yy", "d. MMM yyyy", "d MMMM yyyy",
    ];

    private static readonly string[] MonthFirst =
    [
        "M/d/yyyy", "M-d-yyyy", "M/d/yy", "M/d/yyyy H:m", "M/d/yyyy H:m:s", "M/d/yyyy h:m tt", "M/d/yyyy h:m:s tt", "MMM d, yyyy", "MMM d yyyy",
    ];

    private readonly string[][] _orders = monthFirst ? [YearFirst, MonthFirst, DayFirst] : [YearFirst, DayFirst, MonthFirst];

    /// <summary>A reader for the dates of a table; month first where a date cannot be read the other way.</summary>
    internal static StampReader? ForDates(CellTableLayout layout, IReadOnlyList<TextRow> rows)
    {
        CellColumn[] columns = [.. layout.Columns.Where(column => column.Role is ColumnRole.Date or ColumnRole.LaterDate or ColumnRole.Time)];
        if (columns.Length == 0)
            return null;
        bool monthFirst = rows.Any(row => columns.Any(column => IsOf(row[column.Index], MonthFirst) && !IsOf(row[column.Index], DayFirst)));
        return new StampReader(monthFirst);
    }

    private static bool IsOf(string text, string[] formats) =>
        DateTime.TryParseExact(text, formats, CultureInfo.InvariantCulture, DateTimeStyles.AllowWhiteSpaces, out _);

    internal bool TryRead(string text, out DateTime stamp)
    {
        foreach (string[] formats in _orders)
            if (DateTime.TryParseExact(text, formats, CultureInfo.InvariantCulture, DateTimeStyles.AllowWhiteSpaces, out stamp))
                return true;
        stamp = default;
        return false;
    }
}
