using System.Security.Cryptography;
using System.Text;
using PackPlanner.Formats.Logs;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats;

/// <summary>Looks at any table or log: finds its kind, reads it, and says how it was read.</summary>
public static class FileLooks
{
    /// <summary>What a file is, from its front alone.</summary>
    /// <param name="file">Path as typed; - is standard input, which can be looked at once only.</param>
    /// <param name="options">What the user said.</param>
    /// <returns>cells, tester-log or pack-log; or why the file cannot be read at all.</returns>
    public static Outcome<string> KindOf(string file, ReadOptions options)
    {
        if (!SourceFile.Open(file, options.StandardInput, options.StandardInputName).Is(out SourceFile? source, out Refusal? why))
            return why;
        using (source)
            return KindOf(source, options);
    }

    /// <summary>Reads a file as what it is.</summary>
    /// <param name="file">Path as typed; - is standard input.</param>
    /// <param name="options">What the user said.</param>
    /// <returns>How it was read and what became of every row; or why it cannot be read.</returns>
    /// <exception cref="OperationCanceledException">The user stopped.</exception>
    public static Outcome<FileLook> Look(string file, ReadOptions options)
    {
        if (!SourceFile.Open(file, options.StandardInput, options.StandardInputName).Is(out SourceFile? source, out Refusal? why))
            return why;
        using (source)
            return KindOf(source, options) switch
            {
                "pack-log" => PackLogs.Read(source, options).Is(out PackLogReading? pack, out why) ? new FileLook(pack.Shape, pack.Account, pack.Understood) : why,
                "tester-log" => TesterLogs.Read(source, options).Is(out TesterLogReading? tester, out why) ? new FileLook(tester.Shape, tester.Account, tester.Understood) : why,
                _ => CellTables.Read(source, options).Is(out CellTableReading? cells, out why) ? new FileLook(OfCells(cells.Shapes[0]), cells.Account, cells.Understood) : why,
            };
    }

    // Labels and remarks alone are in many a table that has nothing to do with cells.
    private static FileShape OfCells(FileShape shape) =>
        shape.Columns.Any(column => column.ReadAs is not null && !NoCells.Contains(column.ReadAs)) ? shape : shape with { Kind = "unknown" };

    private static readonly string[] NoCells = [RoleNames.Of(ColumnRole.Unknown)!, RoleNames.Of(ColumnRole.Label)!, RoleNames.Of(ColumnRole.Remark)!, RoleNames.Of(ColumnRole.Time)!, RoleNames.Of(ColumnRole.Date)!];

    /// <summary>A name for the shape of a file: two files with the same headings and separator share it.</summary>
    /// <param name="file">Path.</param>
    /// <returns>Null where the file cannot be read or has no columns.</returns>
    public static string? ShapeOf(string file)
    {
        (string kind, IReadOnlyList<ColumnReading> columns) = ColumnsOf(file, new ReadOptions());
        return columns.Count == 0 ? null : Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\n', columns.Select(column => column.Name).Append(kind)))))[..32];
    }

    /// <summary>The columns of a file from its front alone, also of one that is refused as a whole.</summary>
    /// <param name="file">Path.</param>
    /// <param name="options">What the user said.</param>
    /// <returns>Its kind, and its columns as they are understood by their headings; none where the file cannot be opened.</returns>
    public static (string Kind, IReadOnlyList<ColumnReading> Columns) ColumnsOf(string file, ReadOptions options)
    {
        if (!SourceFile.Open(file, options.StandardInput, options.StandardInputName).Is(out SourceFile? source, out _))
            return ("unknown", []);
        using (source)
        {
            string kind = KindOf(source, options);
            if (kind != "cells" && LogHead.Find(source, options.Decimal) is { } head)
            {
                LogColumns log = LogColumns.Of(head, options.Columns);
                return (kind, PackLogs.ReadAs(log, log.Groups, [.. Enumerable.Range(1, log.Groups.Length)], fromFront: true));
            }

            IEnumerable<CellColumn> columns = TextTable.Read(source, options.Stopped).Is(out TextTable? table, out _) ? CellTableLayout.Of(table, options.Columns).Columns : [];
            return (kind, [.. columns.Select(column => new ColumnReading(column.Name, RoleNames.Of(column.Role), column.Unit?.Name, column.SetBy))]);
        }
    }

    internal static string KindOf(SourceFile source, ReadOptions options)
    {
        if (LogHead.Find(source, options.Decimal) is not { } head)
            return "cells";
        LogColumns columns = LogColumns.Of(head, options.Columns);
        if (LogFormats.OfTesters.Any(known => !known.NeedsTime && known.Suits(head, columns)))
            return "tester-log";
        if (TimeColumn.Find(columns, head) is not { } time || !GoesOn(time, head))
            return IsLogByNames(head, columns) ? "pack-log" : "cells";
        // A column that merely counts up is a time only beside a current.
        if (time.Column.Role is not (ColumnRole.Time or ColumnRole.Date or ColumnRole.Clock or ColumnRole.StepTime) && columns[ColumnRole.Current] is null)
            return "cells";
        if (LogFormats.OfPacks.Any(known => known.Suits(head, columns)))
            return "pack-log";
        if (LogFormats.OfTesters.Any(known => known.Suits(head, columns)))
            return "tester-log";
        // Moments and a current without any volts are a log that lacks something, and no lot of cells.
        return time.Column.Role == ColumnRole.Time && columns[ColumnRole.Current] is not null && (columns[ColumnRole.Label] is null || columns[ColumnRole.Label]!.Sample.Any(HasDecimals)) && columns[ColumnRole.Capacity] is null && head.Rows.Count >= 20
            ? "pack-log" : "cells";
    }

    // A log whose time cannot be read, or whose rows stand in any order, is still no table of cells: it is sorted, or refused as the log that it is.
    private static bool IsLogByNames(LogHead head, LogColumns columns)
    {
        if (head.Rows.Count < 20 || columns[ColumnRole.Capacity] is not null || columns[ColumnRole.DischargeCapacity] is not null)
            return false;
        LogColumn[] groups = [.. columns.Groups.Where(group => group.Sample.Count(double.IsFinite) * 2 > group.Sample.Length)];
        bool current = columns[ColumnRole.Current] is not null;
        bool time = Named(columns, ColumnRole.Time);
        bool wide = (groups.Length >= 2 && (current || time)) || (columns.Groups.Length >= 2 && current && time);
        return wide || (time && Named(columns, ColumnRole.Signal) && Named(columns, ColumnRole.Value));
    }

    private static bool Named(LogColumns columns, ColumnRole role) => columns[role] is { Fit: >= 1000 };

    private static bool HasDecimals(double figure) => double.IsFinite(figure) && figure != Math.Floor(figure);

    // The time of a log mostly goes on from row to row; dates and durations of a table of cells do not.
    private static bool GoesOn(TimeColumn time, LogHead head)
    {
        double last = double.NaN;
        int up = 0;
        int down = 0;
        foreach (List<string> row in head.Rows)
        {
            double now = Moment(time, row, head.Mark);
            up += now > last ? 1 : 0;
            down += now < last ? 1 : 0;
            last = double.IsNaN(now) ? last : now;
        }

        bool label = head.Rows.Count < 3;
        return !label && up > 1 && down * 3 < up;
    }

    private static double Moment(TimeColumn time, List<string> row, DecimalMark mark)
    {
        if (!time.IsStamp)
            return Figures.TryRead(At(row, time.Column), mark, out double figure, out _) ? figure : double.NaN;
        double day = StampText.TryRead(Encoding.UTF8.GetBytes(At(row, time.Column)), time.Kind, out double seconds) ? seconds : double.NaN;
        // The clock stands in a column of its own.
        return time.Clock is null ? day
            : StampText.TryRead(Encoding.UTF8.GetBytes(At(row, time.Clock)), StampKind.Clock, out double clock) ? day + clock : double.NaN;
    }

    private static string At(List<string> row, LogColumn column) => column.Index < row.Count ? row[column.Index] : "";
}

/// <summary>What looking at a file told.</summary>
/// <param name="Shape">How it was read.</param>
/// <param name="Account">What became of every row.</param>
/// <param name="Understood">What was understood and assumed, one sentence each.</param>
public sealed record FileLook(FileShape Shape, RowAccount Account, IReadOnlyList<string> Understood);
