using CsvHelper;

namespace PackPlanner.Formats.Tables;

/// <summary>A whole small table as text: rows of fields with the line each began in. Lots of cells are read so; logs are not.</summary>
/// <param name="Rows">All rows that hold anything but blanks.</param>
/// <param name="Separator">What stood between the fields.</param>
internal sealed record TextTable(IReadOnlyList<TextRow> Rows, char Separator)
{
    // A row that would need more is no row of a table; an unclosed quote is met by reading again without line breaks in quotes.
    internal const int LongestRowBytes = 8 * 1024 * 1024;
    private const int MostLinesOfOneRow = 12;
    private const long MostFields = 20_000_000;

    /// <summary>Reads all rows.</summary>
    internal static Outcome<TextTable> Read(SourceFile source, CancellationToken stopped)
    {
        (char separator, bool named) = source.Separator;
        try
        {
            return ReadOnce(source, separator, named, lineBreaksInQuotes: true, stopped)
                ?? ReadOnce(source, separator, named, lineBreaksInQuotes: false, stopped)!;
        }
        catch (CsvFormatException)
        {
            return Refusal.Input("line-too-long", source.Name, "a line is longer than eight million characters, so this is no table",
                "Export it again with one row a line.");
        }
    }

    // Null when a quoted field runs over many lines: then a quote was left open, and line breaks must end rows.
    private static Outcome<TextTable>? ReadOnce(SourceFile source, char separator, bool named, bool lineBreaksInQuotes, CancellationToken stopped)
    {
        using CsvReader csv = CsvReader.Create(source.OpenUtf8(), new CsvReaderOptions
        {
            HasHeader = false,
            Separator = separator,
            DetectSeparatorHint = false,
            TrackLineNumbers = true,
            AllowLineBreaksInQuotes = lineBreaksInQuotes,
            FieldCountMismatch = CsvFieldCountHandling.Allow,
            TrimWhitespace = separator != '\t',
            MaxRecordSize = LongestRowBytes,
        });
        List<TextRow> rows = [];
        long fields = 0;
        int before = 0;
        while (csv.Read())
        {
            stopped.ThrowIfCancellationRequested();
            if (lineBreaksInQuotes && csv.RawRecord.Count((byte)'\n') > MostLinesOfOneRow)
                return null;
            before = csv.LineNumber > int.MaxValue ? int.MaxValue : (int)csv.LineNumber;
            string[] row = new string[csv.FieldCount];
            for (int i = 0; i < row.Length; i++)
                row[i] = Separators.Bare(csv.GetString(i).Trim(' ', '\t', '\u00A0', '\uFEFF', '\u001A'));
            fields += row.Length;
            if (fields > MostFields)
                return Refusal.Input("table-too-large", source.Name, "this has more than twenty million fields, more than any table of cells",
                    "If it is a log of a tester or a pack, give it to capacity or diagnose; else cut it into parts.");
            if (named && rows.Count == 0 && before == 1)
                continue;
            rows.Add(new TextRow(before, row));
        }

        return new TextTable(rows, separator);
    }
}

/// <summary>One row.</summary>
/// <param name="Line">Line of the file, from 1.</param>
/// <param name="Fields">Without quotes and outer blanks.</param>
internal sealed record TextRow(int Line, string[] Fields)
{
    /// <summary>Line of each field, where a row was put together from several lines.</summary>
    internal IReadOnlyList<int>? Lines { get; init; }

    /// <summary>Line of one field, from 1.</summary>
    internal int LineOf(int index) => Lines is null || index >= Lines.Count ? Line : Lines[index];

    /// <summary>The field, or nothing where the row is short.</summary>
    internal string this[int index] => index >= 0 && index < Fields.Length ? Fields[index] : "";

    /// <summary>Every field is blank.</summary>
    internal bool IsBlank => Array.TrueForAll(Fields, entry => entry.Length == 0);
}
