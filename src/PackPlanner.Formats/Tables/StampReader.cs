using System.Globalization;

namespace PackPlanner.Formats.Tables;

/// <summary>Reads dates and stamps of a table of cells in the order that the dates themselves tell.</summary>
internal sealed class StampReader
{
    private static readonly string[] YearFirst =
    [
        "yyyy-M-d", "yyyy/M/d", "yyyy.M.d", "yyyyMMdd", "yyyy-M-d H:m", "yyyy-M-d H:m:s", "yyyy/M/d H:m", "yyyy/M/d H:m:s",
        "yyyy-M-dTH:m", "yyyy-M-dTH:m:s", "yyyy-M-dTH:m:sZ", "yyyy-M-d H:m:s.fff", "yyyy-M-dTH:m:s.fff", "yyyy.M.d H:m:s", "yyyy年M月d日",
    ];

    private static readonly string[] InWordsOrPoints =
    [
        "d.M.yyyy", "d.M.yy", "d.M.yyyy H:m", "d.M.yyyy H:m:s", "d.M.yy H:m", "d.M.yy H:m:s", "d MMM yyyy", "d-MMM-yyyy", "d-MMM-yy", "d. MMM yyyy", "d MMMM yyyy", "MMM d, yyyy", "MMM d yyyy",
    ];

    private static readonly string[] Hours = ["", " H:m", " H:m:s", " h:m tt", " h:m:s tt"];
    private static readonly string[] DayFirst = [.. Hours.SelectMany(hour => new[] { "d/M/yyyy" + hour, "d-M-yyyy" + hour, "d/M/yy" + hour })];
    private static readonly string[] MonthFirst = [.. Hours.SelectMany(hour => new[] { "M/d/yyyy" + hour, "M-d-yyyy" + hour, "M/d/yy" + hour })];

    private readonly string[][] _orders;

    private StampReader(bool dayFirst, bool monthFirst) =>
        _orders = [YearFirst, InWordsOrPoints, .. dayFirst ? [DayFirst] : Array.Empty<string[]>(), .. monthFirst ? [MonthFirst] : Array.Empty<string[]>()];

    /// <summary>What was assumed of the order; null where the dates tell it themselves.</summary>
    internal string? Understood { get; private init; }

    /// <summary>A reader for the dates of a table; a date whose day is above twelve settles the order of all.</summary>
    internal static StampReader? ForDates(CellTableLayout layout, IReadOnlyList<TextRow> rows)
    {
        CellColumn[] columns = [.. layout.Columns.Where(column => column.Role is ColumnRole.Date or ColumnRole.LaterDate or ColumnRole.Time)];
        if (columns.Length == 0)
            return null;
        string? day = null, month = null, either = null;
        foreach (string text in rows.SelectMany(row => columns.Select(column => row[column.Index])).Where(text => text.AsSpan().ContainsAny('/', '-')))
        {
            bool asDay = IsOf(text, DayFirst, out DateTime first);
            bool asMonth = IsOf(text, MonthFirst, out DateTime second);
            day ??= asDay && !asMonth ? text : null;
            month ??= asMonth && !asDay ? text : null;
            either ??= asDay && asMonth && first != second ? text : null;
        }

        return day is not null && month is not null ? Mixed(day, month, either)
            : day is not null || month is not null ? new StampReader(day is not null, month is not null)
            : ByHabit(either);
    }

    private static StampReader Mixed(string day, string month, string? either) => new(dayFirst: true, monthFirst: true)
    {
        Understood = $"\"{day}\" has the day first, \"{month}\" the month{(either is null ? "." : $": \"{either}\" and the like are read with the day first. Write the dates as 2026-03-31.")}",
    };

    // Noon and midnight in letters are written where the month stands first, mostly (common practice, no source).
    private static StampReader ByHabit(string? either)
    {
        if (either is null)
            return new StampReader(dayFirst: true, monthFirst: false);
        bool monthFirst = char.ToUpperInvariant(either[^1]) == 'M';
        _ = IsOf(either, monthFirst ? MonthFirst : DayFirst, out DateTime read);
        return new StampReader(!monthFirst, monthFirst)
        {
            Understood = FormattableString.Invariant($"No date tells whether day or month stands first: \"{either}\" is read as {read:yyyy-MM-dd}, the {(monthFirst ? "month" : "day")} first. If that is wrong, write the dates with the year in front."),
        };
    }

    private static bool IsOf(string text, string[] formats, out DateTime stamp) =>
        DateTime.TryParseExact(text, formats, CultureInfo.InvariantCulture, DateTimeStyles.AllowWhiteSpaces, out stamp);

    internal bool TryRead(string text, out DateTime stamp)
    {
        foreach (string[] formats in _orders)
            if (IsOf(text, formats, out stamp))
                return true;
        stamp = default;
        return false;
    }
}
