namespace PackPlanner.Formats.Tables;

/// <summary>Finds what stands between the fields of a text.</summary>
internal static class Separators
{
    /// <summary>How a separator is called in an answer.</summary>
    internal static string NameOf(char separator) => separator switch { '\t' => "tab", ' ' => "blanks", _ => separator.ToString() };

    /// <summary>The separator that most lines agree on.</summary>
    /// <param name="head">The first part of the text.</param>
    /// <returns>The separator, and whether the first line named it and is no row.</returns>
    internal static (char Separator, bool NamedByFirstLine) Of(string head)
    {
        if (head.StartsWith("sep=", StringComparison.OrdinalIgnoreCase) && head.Length > 4)
            return (head[4], true);
        string[] lines = [.. head.Split('\n').Select(line => line.TrimEnd('\r')).Where(line => !string.IsNullOrWhiteSpace(line)).Take(400)];
        // A cut line at the end of the head would count wrong.
        if (lines.Length > 3)
            lines = lines[..^1];
        // The comma comes last, because it may be the decimal mark inside fields that something else separates.
        (char Separator, double Share) best = (',', 0);
        foreach (char separator in (char[])[';', '\t', '|', ','])
        {
            double share = Agreement(lines, separator);
            if (share > best.Share + 0.2)
                best = (separator, share);
        }

        return (best.Share < 0.5 && AreApartByBlanks(lines) ? ' ' : best.Separator, false);
    }

    // Nine lines of ten have the same number of words, three at least, and most of all words are figures.
    private static bool AreApartByBlanks(string[] lines)
    {
        string[][] words = [.. lines.Select(line => line.Split(' ', StringSplitOptions.RemoveEmptyEntries))];
        int usual = words.GroupBy(line => line.Length).OrderByDescending(same => same.Count()).FirstOrDefault()?.Key ?? 0;
        int figures = words.Sum(line => line.Count(word => char.IsAsciiDigit(word[^1]) && Figures.Split(word) is { Figure.Length: > 0, Tail.Length: 0 }));
        return usual >= 3 && lines.Length > 2 && words.Count(line => line.Length == usual) * 10 >= lines.Length * 9 && figures * 2 > words.Sum(line => line.Length);
    }

    /// <summary>Fields of one line, quotes honoured.</summary>
    internal static List<string> Split(string line, char separator)
    {
        if (separator == ' ')
            return [.. line.Split(' ', StringSplitOptions.RemoveEmptyEntries)];
        List<string> fields = new(line.AsSpan().Count(separator) + 1);
        int from = 0;
        bool quoted = false;
        for (int i = 0; i <= line.Length; i++)
        {
            if (i < line.Length && line[i] == '"')
                quoted = !quoted;
            if (i < line.Length && (quoted || line[i] != separator))
                continue;
            fields.Add(Bare(Bare(line[from..i].Trim()).Trim('"').Replace("\"\"", "\"", StringComparison.Ordinal)));
            from = i + 1;
        }

        return fields;
    }

    /// <summary>An entry without the marks by which a spreadsheet is told that it is text: ="2850", '2850.</summary>
    internal static string Bare(string entry) =>
        entry is ['=', '"', _, .., '"'] ? entry[2..^1]
        : entry is ['\'', var first, .., '\''] && first != '\'' ? entry[1..^1]
        : entry is ['\'', var next, ..] && (char.IsLetterOrDigit(next) || next is '-' or '+' or '.') ? entry[1..]
        : entry;

    // The share of lines that have the most usual number of separators, at least one.
    private static double Agreement(string[] lines, char separator)
    {
        int[] counts = [.. lines.Select(line => Count(line, separator))];
        IGrouping<int, int>? usual = counts.Where(count => count > 0).GroupBy(count => count)
            .OrderByDescending(group => group.Count()).ThenByDescending(group => group.Key).FirstOrDefault();
        return usual is null ? 0 : (double)usual.Count() / lines.Length;
    }

    private static int Count(string line, char separator)
    {
        int count = 0;
        bool quoted = false;
        foreach (char letter in line)
        {
            if (letter == '"')
                quoted = !quoted;
            else if (letter == separator && !quoted)
                count++;
        }

        return count;
    }
}
