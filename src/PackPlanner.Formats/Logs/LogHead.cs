using System.Text;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Logs;

/// <summary>The front of a log: separator, decimal mark, heading, and some rows of data as text.</summary>
internal sealed record LogHead
{
    private const int RowsInSample = 2000;

    // Of rows with thousands of fields twenty tell as much, and more would take the room of the log itself.
    private const int FieldsInSample = 200_000;
    private const int FewestRows = 21;

    internal required char Separator { get; init; }

    internal required DecimalMark Mark { get; init; }

    /// <summary>Names of the columns, units of a second row put behind them; empty strings without a heading.</summary>
    internal required string[] Names { get; init; }

    /// <summary>Line of the heading, from 1; null without one.</summary>
    internal required int? HeadingLine { get; init; }

    /// <summary>Line of the first row of data, from 1.</summary>
    internal required int FirstDataLine { get; init; }

    /// <summary>The heading's first line as text, to know it when it comes again.</summary>
    internal required string HeadingText { get; init; }

    /// <summary>Rows of data.</summary>
    internal required IReadOnlyList<List<string>> Rows { get; init; }

    /// <summary>Finds heading and data in the front of a text.</summary>
    /// <returns>Null where no run of figures is found.</returns>
    internal static LogHead? Find(SourceFile source, string decimalOption)
    {
        (char separator, bool named) = source.Separator;
        List<(int Line, string Text, List<string> Fields)> lines = [];
        int number = 0;
        int fields = 0;
        bool cut = !source.HeadIsWhole;
        foreach (string text in LinesOf(source.HeadText))
        {
            number++;
            if (number == 1 && named)
                continue;
            if (!string.IsNullOrWhiteSpace(text))
                lines.Add((number, text, Separators.Split(text, separator)));
            fields += lines.Count > 0 ? lines[^1].Fields.Count : 0;
            if (lines.Count <= RowsInSample && (fields <= FieldsInSample || lines.Count <= FewestRows))
                continue;
            cut = false;
            break;
        }

        // The last line of a head that is not the whole file may be cut.
        if (cut && lines.Count > 2)
            lines.RemoveAt(lines.Count - 1);
        int data = FirstData([.. lines.Select(line => line.Fields)]);
        if (data < 0)
            return null;
        (int heading, string[] names) = Heading(lines, data);
        List<List<string>> rows = [.. lines.Skip(data).Select(line => line.Fields)];
        return new LogHead
        {
            Separator = separator,
            Mark = MarkOf(rows, separator, decimalOption),
            Names = names,
            HeadingLine = heading < 0 ? null : lines[heading].Line,
            HeadingText = heading < 0 ? "" : separator == ' ' ? string.Join(' ', lines[heading].Fields) : lines[heading].Text.Trim(),
            FirstDataLine = FirstAfter(lines, heading, data),
            Rows = rows,
        };
    }

    // Feeds and returns end a line, as they do when the rows are read; a form feed or the line mark of some alphabets does not.
    private static IEnumerable<string> LinesOf(string text)
    {
        for (int from = 0; from < text.Length;)
        {
            int end = text.AsSpan(from).IndexOfAny('\r', '\n');
            end = end < 0 ? text.Length : from + end;
            yield return text[from..end];
            from = end + 1 < text.Length && text[end] == '\r' && text[end + 1] == '\n' ? end + 2 : end + 1;
        }
    }

    private static int FirstData(List<string>[] lines)
    {
        bool[] isData = [.. lines.Select(IsData)];
        // Most figures stand in rows of the table itself, not in what was written above it.
        int usual = lines.Where((_, i) => isData[i]).GroupBy(line => line.Count).OrderByDescending(same => same.Count() * same.Key).FirstOrDefault()?.Key ?? 0;
        int first = FirstRun(lines, isData, usual);
        // "1S;2S" look like figures with a unit, but beside names they are names.
        if (first >= 0 && first + 1 < lines.Length && isData[first + 1] && AreNames(lines[first]) && !AreNames(lines[first + 1]))
            first++;
        if (first < 0)
            return FirstRun(lines, isData, 0);
        // Rows just above that are a little shorter or longer belong to it too.
        while (first > 0 && isData[first - 1] && !AreNames(lines[first - 1]) && lines[first - 1].Count * 2 > usual)
            first--;
        return first;
    }

    // A name that is known, and not one figure without something behind it.
    private static bool AreNames(List<string> fields) =>
        fields.Exists(IsName) && !fields.Exists(entry => Figures.Split(entry) is { Figure.Length: > 0, Tail.Length: 0 });

    private static bool IsName(string entry) => entry.Length is > 1 and < 40 && char.IsLetter(entry[0])
        && ColumnNames.RolesOf(new HeadingWords(entry), null) is [{ Role: ColumnRole.Time or ColumnRole.Date or ColumnRole.Clock or ColumnRole.Current or ColumnRole.PackVoltage, Fit: >= 1000 }, ..];

    private static int FirstRun(List<string>[] lines, bool[] isData, int width)
    {
        for (int i = 0; i < lines.Length; i++)
        {
            if (!isData[i] || (width > 0 && lines[i].Count != width))
                continue;
            int next = Math.Min(3, lines.Length - i - 1);
            int alike = Enumerable.Range(i + 1, next).Count(at => isData[at] && lines[at].Count == lines[i].Count);
            if (next == 0 || alike * 2 >= next)
                return i;
        }

        return -1;
    }

    // Half of what is filled are figures or stamps.
    private static bool IsData(List<string> fields)
    {
        int filled = 0;
        int figures = 0;
        foreach (string entry in fields)
        {
            if (entry.Length == 0)
                continue;
            filled++;
            if (Figures.IsPlain(entry))
            {
                figures++;
                continue;
            }

            (string figure, string tail) = Figures.Split(entry);
            if (figure.Length > 0 && (tail.Length == 0 || FileUnit.Find(tail) is not null))
                figures++;
            else if (entry.Length < 60 && LooksLikeStamp(entry) && StampText.KindOf([entry]).Kind is not null)
                figures++;
        }

        // "10 mA" and "0.1 mV" begin like figures, and in a row of units they are units.
        return filled > 1 && figures > 0 && figures * 2 >= filled && !fields.TrueForAll(entry => entry.Length == 0 || FileUnit.FindInBrackets(entry) is not null);
    }

    private static bool LooksLikeStamp(string entry) =>
        (char.IsAsciiDigit(entry[0]) && entry.AsSpan().IndexOfAny(":-/.") > 0) || entry.Count(char.IsAsciiDigit) >= 5 || (char.IsAsciiDigit(entry[0]) && char.IsLetter(entry[^1]));

    // Spoilt rows between heading and data are rows: they are counted and told.
    private static int FirstAfter(List<(int Line, string Text, List<string> Fields)> lines, int heading, int data) =>
        heading < 0 || heading >= data ? lines[data].Line : lines[IsUnits(lines[heading + 1].Fields) && heading + 1 < data ? heading + 2 : heading + 1].Line;

    private static (int Heading, string[] Names) Heading(List<(int Line, string Text, List<string> Fields)> lines, int data)
    {
        int width = lines[data].Fields.Count;
        int heading = NamesAbove(lines, data, width);
        if (heading < 0 || lines[heading].Fields.Count(entry => entry.Length > 0) < Math.Min(2, width))
            return (-1, Enumerable.Repeat("", width).ToArray());
        if (heading > 0 && IsUnits(lines[heading].Fields) && lines[heading - 1].Fields.Count(entry => entry.Length > 0) > 1)
        {
            List<string> units = lines[heading].Fields;
            List<string> top = lines[heading - 1].Fields;
            string[] joined = [.. Enumerable.Range(0, Math.Max(top.Count, units.Count)).Select(i => Join(At(top, i), At(units, i)))];
            return (heading - 1, joined);
        }

        return (heading, [.. lines[heading].Fields]);
    }

    // Mostly the line above the data; where rows were spoilt before the first good one, the nearest line of names that are known.
    private static int NamesAbove(List<(int Line, string Text, List<string> Fields)> lines, int data, int width)
    {
        int above = data - 1;
        if (above < 0 || AreNames(lines[above].Fields) || IsUnits(lines[above].Fields))
            return above;
        for (int i = above; i >= 0; i--)
            if (lines[i].Fields.Count == width && AreNames(lines[i].Fields))
                return i;
        return above;
    }

    private static string Join(string name, string unit)
    {
        string bare = FileUnit.WithoutBrackets(unit);
        return FileUnit.Find(bare) is null ? name : $"{name} [{bare}]";
    }

    private static string At(List<string> fields, int index) => index < fields.Count ? fields[index] : "";

    private static bool IsUnits(List<string> fields)
    {
        string[] filled = [.. fields.Where(entry => entry.Length > 0)];
        int units = filled.Count(entry => FileUnit.FindInBrackets(entry) is not null);
        return filled.Length > 1 && units * 10 >= filled.Length * 6;
    }

    private static DecimalMark MarkOf(List<List<string>> rows, char separator, string option)
    {
        if (option != "auto")
            return option == "comma" ? DecimalMark.Comma : DecimalMark.Point;
        DecimalVote vote = new();
        // Some from the front and some from all over: a long log that is written name by name begins with one name alone.
        int every = Math.Max(1, rows.Count / 150);
        foreach (List<string> row in rows.Where((_, i) => i < 150 || i % every == 0))
            for (int i = 0; i < row.Count; i++)
                vote.Look(i, row[i]);
        if (vote.Points != vote.Commas)
            return vote.Commas > vote.Points ? DecimalMark.Comma : DecimalMark.Point;
        // Volts with three decimals alone, such as 3,281: a comma between other separators is the decimal one.
        return separator != ',' && vote.Ambiguous.Count(figure => figure.Comma) * 2 > vote.Ambiguous.Count ? DecimalMark.Comma : DecimalMark.Point;
    }

    /// <summary>Some fields of one column.</summary>
    internal string[] Column(int index) => [.. Rows.Take(400).Select(row => At(row, index))];

    /// <summary>The first line of the file as UTF-8, to know a heading that comes again.</summary>
    internal byte[] HeadingBytes => Encoding.UTF8.GetBytes(HeadingText);
}
