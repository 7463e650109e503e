using CsvHelper;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>What all parts of a log have in common while they are read side by side.</summary>
internal sealed class LogReading
{
    /// <summary>The most figures that are kept of one log: a season of rows each second with forty columns.</summary>
    internal const long MostFigures = 600_000_000;

    private readonly Lock _telling = new();
    private readonly ReadOptions _options;
    private readonly long _lines;
    private long _looked;

    internal LogReading(SourceFile source, LogHead head, TimeColumn time, LogColumn[] columns, TextPart[] parts, ReadOptions options)
    {
        (Source, Head, Time, Columns, _options) = (source, head, time, columns, options);
        Fields = [.. columns.Select(column => column.Index)];
        Heading = head.HeadingBytes;
        FewestFields = Fewest(head, columns);
        RowsBetweenLooks = Math.Clamp(0x40000 / Math.Max(1, head.Names.Length), 16, 0x4000);
        _lines = parts.Sum(part => (long)part.Lines);
    }

    /// <summary>Rows after which a part looks whether the user stopped: the fewer, the wider they are.</summary>
    internal int RowsBetweenLooks { get; }

    internal SourceFile Source { get; }

    internal LogHead Head { get; }

    internal TimeColumn Time { get; }

    internal LogColumn[] Columns { get; }

    /// <summary>Place of each column in a row.</summary>
    internal int[] Fields { get; }

    /// <summary>The heading's line, to know it when it comes again.</summary>
    internal byte[] Heading { get; }

    /// <summary>A row with fewer fields was cut short.</summary>
    internal int FewestFields { get; }

    /// <summary>How every log is opened: line breaks end a row, so that one open quote cannot swallow the file.</summary>
    internal CsvReader Open(TextPart part) => CsvReader.Create(Source.OpenUtf8(part), new CsvReaderOptions
    {
        HasHeader = false,
        Separator = Head.Separator,
        DetectSeparatorHint = false,
        TrackLineNumbers = true,
        AllowLineBreaksInQuotes = false,
        FieldCountMismatch = CsvFieldCountHandling.Allow,
        FormatProvider = Figures.FormatOf(Head.Mark),
        MaxRecordSize = TextTable.LongestRowBytes,
        BufferSize = 1 << 18,
    });

    /// <summary>Why a row is none; null when it may be one.</summary>
    internal string? NoRow(CsvReader csv)
    {
        ReadOnlySpan<byte> raw = csv.RawRecord.Trim(" \t\r"u8);
        return raw.Trim(",;\t| "u8).IsEmpty ? "a blank row"
            : Heading.Length > 0 && raw.SequenceEqual(Heading) ? "the heading again"
            : null;
    }

    /// <summary>What is no plain figure: nothing, thousands marks, a figure with its unit, or a word.</summary>
    /// <param name="csv">At the row.</param>
    /// <param name="field">Place in the row.</param>
    /// <param name="tail">What stands behind the figure; empty where nothing does.</param>
    /// <param name="word">What was written instead of a figure, cut short; null where there is a figure or nothing.</param>
    /// <returns>The figure, NaN where there is none.</returns>
    internal double Figure(CsvReader csv, int field, out string tail, out string? word)
    {
        (tail, word) = ("", null);
        string text = csv.IsEmpty(field) ? "" : csv.GetString(field).Trim();
        if (text.Length == 0)
            return double.NaN;
        if (Figures.TryReadSigned(text, Head.Mark, out double value, out tail))
            return value;
        word = NotAFigure(text);
        return double.NaN;
    }

    internal static string NotAFigure(string text) => $"\"{(text.Length > 30 ? text[..30] + "…" : text)}\" instead of a figure";

    /// <summary>Tells how far the reading is, and stops it when the user wants that.</summary>
    /// <param name="rows">Rows that a part looked at since it told last.</param>
    /// <exception cref="OperationCanceledException">The user stopped.</exception>
    internal void Looked(int rows)
    {
        _options.Stopped.ThrowIfCancellationRequested();
        lock (_telling)
        {
            _looked += rows;
            _options.Progress?.Report(new ReadProgress(Source.Name, _looked, Math.Min(1, (double)_looked / Math.Max(1, _lines))));
        }
    }

    /// <summary>Where each part puts its rows, and how many rows there can be in all.</summary>
    internal static (int[] From, int[] Room, int Rows) Places(TextPart[] parts, LogHead head)
    {
        int[] from = new int[parts.Length];
        int[] room = new int[parts.Length];
        int rows = 0;
        for (int i = 0; i < parts.Length; i++)
        {
            (from[i], room[i]) = (rows, Math.Max(0, parts[i].Lines - Math.Max(0, head.FirstDataLine - parts[i].FirstLine)));
            rows += room[i];
        }

        return (from, room, rows);
    }

    internal static Refusal TooManyFigures(SourceFile source, long fields) => Refusal.Input("too-many-figures", source.Name,
        $"its lines hold up to {fields} figures, more than the {MostFigures} that are kept at once",
        "Cut the log into parts, such as one for each month, and give one of them.");

    // A row must reach the last column of cell volts, unless rows in this file end early as a habit.
    private static int Fewest(LogHead head, LogColumn[] columns)
    {
        int last = columns.Length == 0 ? 0 : columns.Max(column => column.Index) + 1;
        int usual = head.Rows.Count(row => row.Count >= last);
        return usual * 10 >= head.Rows.Count * 9 ? last : 1;
    }
}
