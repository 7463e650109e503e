using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>The door for logs of a tester: one cell, or a series string.</summary>
public static class TesterLogs
{
    /// <summary>Reads one log.</summary>
    /// <param name="file">Path as typed; - is standard input.</param>
    /// <param name="options">What the user said.</param>
    /// <returns>The curve in our own units with the account of every row; or where, why and what to do.</returns>
    /// <exception cref="OperationCanceledException">The user stopped.</exception>
    public static Outcome<TesterLogReading> Read(string file, ReadOptions options)
    {
        if (!SourceFile.Open(file, options.StandardInput, options.StandardInputName).Is(out SourceFile? source, out Refusal? why))
            return why;
        using (source)
            return Read(source, options);
    }

    /// <summary>Reads a log that is open already; whoever opened it closes it.</summary>
    internal static Outcome<TesterLogReading> Read(SourceFile source, ReadOptions options) => FileFaults.ToItsEnd<TesterLogReading>(source, () =>
    {
        if (LogHead.Find(source, options.Decimal) is not { } head)
            return PackLogs.NotALog(source);
        LogColumns columns = LogColumns.Of(head, options.Columns);
        // The last one says what is missing.
        LogFormat<TesterLogReading> format = LogFormats.OfTesters.FirstOrDefault(known => known.Suits(head, columns)) ?? LogFormats.OfTesters[^1];
        return format.Read(source, head, columns, options);
    });

    internal static FileShape Shape(SourceFile source, LogHead head, LogColumns columns, string layout, string? sign, int rows, IReadOnlyList<LogGap> gaps) => new()
    {
        File = source.Name,
        Kind = "tester-log",
        Layout = layout,
        Separator = Separators.NameOf(head.Separator),
        DecimalMark = Figures.NameOf(head.Mark),
        Encoding = source.EncodingName,
        HeadingLine = head.HeadingLine,
        CurrentSign = sign,
        Rows = rows,
        Gaps = gaps,
        Columns = PackLogs.ReadAs(columns, [], []),
    };
}
