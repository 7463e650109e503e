using PackPlanner.Core.Diagnosis;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>The door for logs of packs, wide or long, whatever their spelling.</summary>
public static class PackLogs
{
    /// <summary>Reads one log.</summary>
    /// <param name="file">Path as typed; - is standard input.</param>
    /// <param name="options">What the user said.</param>
    /// <returns>The log in our own units with the account of every row; or where, why and what to do.</returns>
    /// <exception cref="OperationCanceledException">The user stopped.</exception>
    public static Outcome<PackLogReading> Read(string file, ReadOptions options)
    {
        if (!SourceFile.Open(file, options.StandardInput, options.StandardInputName).Is(out SourceFile? source, out Refusal? why))
            return why;
        using (source)
            return Read(source, options);
    }

    /// <summary>Reads a log that is open already; whoever opened it closes it.</summary>
    internal static Outcome<PackLogReading> Read(SourceFile source, ReadOptions options) => FileFaults.ToItsEnd<PackLogReading>(source, () =>
    {
        if (LogHead.Find(source, options.Decimal) is not { } head)
            return NotALog(source);
        LogColumns columns = LogColumns.Of(head, options.Columns);
        if (LogFormats.OfPacks.FirstOrDefault(known => known.Suits(head, columns)) is { } format)
            return format.Read(source, head, columns, options);
        return Refusal.Input("no-cell-volts", source.Name,
            $"there are not two columns that are known as the volts of series groups; the headings are: {Headings(head)}",
            "Name them cell 1 (V), cell 2 (V) and so on, or say --column \"NAME=group 1\" for each; the log of a single cell goes to capacity.");
    });

    internal static Refusal NotALog(SourceFile source) => Refusal.Input("not-a-log", source.Name,
        "no rows of figures were found in it", "Give a log with one row a moment: time, current, and the volts of each cell.");

    internal static Refusal NoTime(SourceFile source, LogHead head) => Refusal.Input("no-time", source.Name,
        $"no column tells the time in a way that is known; the headings are: {Headings(head)}{FirstTime(head)}",
        "Name the column time (s), or write stamps such as 2024-05-23 10:00:00.");

    private static string FirstTime(LogHead head) => head.Rows is [[{ Length: > 0 and < 40 } first, ..], ..] ? $"; the first row begins with \"{first}\"" : "";

    internal static Refusal NoRows(SourceFile source) => Refusal.Input("no-rows", source.Name,
        "fewer than two rows with a time were found", "Export the log again with its rows.");

    internal static string Headings(LogHead head)
    {
        string all = string.Join(", ", head.Names.Where(name => name.Length > 0).Take(12));
        return all.Length == 0 ? "(none)" : all.Length > 200 ? all[..200] + "…" : all;
    }

    internal static FileShape Shape(SourceFile source, LogHead head, LogColumns columns, PackAssembly assembly, string layout, RideLog log) => new()
    {
        File = source.Name,
        Kind = "pack-log",
        Layout = layout,
        Separator = Separators.NameOf(head.Separator),
        DecimalMark = Figures.NameOf(head.Mark),
        Encoding = source.EncodingName,
        HeadingLine = head.HeadingLine,
        CurrentSign = assembly.SignName,
        Groups = log.Groups,
        Rows = log.Rows,
        Gaps = assembly.Gaps,
        Columns = ReadAs(columns, assembly.Groups, assembly.Seats.Of),
    };

    internal static IReadOnlyList<ColumnReading> ReadAs(LogColumns columns, LogColumn[] groups, int[] seats, bool fromFront = false)
    {
        Dictionary<LogColumn, int> numbers = groups.Zip(seats).ToDictionary(group => group.First, group => group.Second);
        return
        [
            .. columns.All.Select(column =>
            {
                bool used = fromFront || column.Values.Length > 0 || column.TellsTime;
                string role = numbers.TryGetValue(column, out int group) ? $"group {group} voltage" : used ? RoleNames.Of(column.Role) : "not used";
                return new ColumnReading(column.Name, role, used ? column.Unit?.Name : null, role == "not used" && column.SetBy == "heading" ? "nothing" : column.SetBy);
            }),
        ];
    }
}
