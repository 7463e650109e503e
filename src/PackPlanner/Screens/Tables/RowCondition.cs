using System.Globalization;
using System.Text.RegularExpressions;
using PackPlanner.Formats.Words;

namespace PackPlanner.Screens.Tables;

/// <summary>A typed condition over the columns of a table, such as <c>Ah&lt;4.1 verdict=hold</c>.</summary>
internal static partial class RowCondition
{
    private static readonly string[] Signs = ["<=", ">=", "!=", "<", ">", "="];

    /// <summary>Reads a condition: parts separated by blanks, all of which must hold; a bare word is looked for in every column.</summary>
    /// <param name="typed">What was typed.</param>
    /// <param name="columns">The columns it may name.</param>
    /// <param name="holds">The test of one row; null when nothing was typed.</param>
    /// <param name="rows">How many rows there are, to see which values with blanks occur: <c>tray=Box 1</c> is one value where a row has it.</param>
    /// <returns>What is wrong with it; null when nothing is.</returns>
    internal static string? Read(string typed, IReadOnlyList<Column> columns, out Func<int, bool>? holds, int rows = 0)
    {
        holds = null;
        List<Func<int, bool>> parts = [];
        foreach (string part in Parts(WithoutBlanks(typed, columns), columns, rows))
        {
            string? sign = Signs.Where(s => part.Contains(s, StringComparison.Ordinal))
                .MinBy(s => (part.IndexOf(s, StringComparison.Ordinal), -s.Length));
            if (sign is null)
            {
                parts.Add(row => columns.Any(c => c.Text(row).Contains(part, StringComparison.OrdinalIgnoreCase)));
                continue;
            }

            int at = part.IndexOf(sign, StringComparison.Ordinal);
            string name = part[..at];
            string value = part[(at + sign.Length)..];
            Column? column = Named(name, columns);
            if (column is null)
                return $"no column is called \"{name}\"; nearest: {NearestName.Of(name, columns.Select(c => c.Heading))}";
            if (value.Length == 0)
                return $"\"{part}\" lacks what to compare with, such as {name}{sign}4.1";
            if (Test(column, sign, value, out Func<int, bool>? test) is { } wrong)
                return wrong;
            parts.Add(test!);
        }

        if (parts.Count > 0)
            holds = row => parts.TrueForAll(part => part(row));
        return null;
    }

    // At blanks, but for those within quotes and those of a value that stands so in a row.
    private static List<string> Parts(string text, IReadOnlyList<Column> columns, int rows)
    {
        string[] words = [.. Words().Matches(text).Select(word => word.Value.Replace("\"", "", StringComparison.Ordinal)).Where(word => word.Length > 0)];
        List<string> parts = [];
        for (int i = 0; i < words.Length; i++)
        {
            string part = words[i];
            if (Valued().Match(part) is { Success: true } valued && Named(valued.Groups["name"].Value, columns) is { Number: null } column)
            {
                string value = valued.Groups["value"].Value;
                for (int end = words.Length - 1; end > i; end--)
                {
                    string longer = string.Join(' ', words[(i + 1)..(end + 1)].Prepend(value));
                    if (words[(i + 1)..(end + 1)].Any(word => Signs.Any(sign => word.Contains(sign, StringComparison.Ordinal)))
                        || !Enumerable.Range(0, rows).Any(row => column.Text(row).StartsWith(longer, StringComparison.OrdinalIgnoreCase)))
                        continue;
                    (part, i) = (part[..^value.Length] + longer, end);
                    break;
                }
            }

            parts.Add(part);
        }

        return parts;
    }

    [GeneratedRegex("(?:[^ \"]|\"[^\"]*\"?)+", RegexOptions.CultureInvariant)]
    private static partial Regex Words();

    [GeneratedRegex(@"^(?<name>[^<>=!]+)!?=(?<value>.+)$", RegexOptions.CultureInvariant)]
    private static partial Regex Valued();

    // Names may be typed as they are shown, with their blanks, and blanks may stand round a sign.
    private static string WithoutBlanks(string typed, IReadOnlyList<Column> columns)
    {
        string text = Spaced().Replace(typed, "${sign}");
        foreach (string heading in columns.SelectMany(column => new[] { column.Heading, AsciiText.Of(column.Heading) }).Where(heading => heading.Contains(' ', StringComparison.Ordinal)).OrderByDescending(heading => heading.Length))
        {
            for (int at = text.IndexOf(heading, StringComparison.OrdinalIgnoreCase); at >= 0; at = text.IndexOf(heading, at + 1, StringComparison.OrdinalIgnoreCase))
            {
                int end = at + heading.Length;
                if (end < text.Length && "<>=!".Contains(text[end], StringComparison.Ordinal))
                    text = text[..at] + heading.Replace(" ", "", StringComparison.Ordinal) + text[end..];
            }
        }

        return text;
    }

    [GeneratedRegex(@" *(?<sign><=|>=|!=|<|>|=) *", RegexOptions.CultureInvariant)]
    private static partial Regex Spaced();

    private static Column? Named(string name, IReadOnlyList<Column> columns)
    {
        string wanted = Bare(name);
        return columns.FirstOrDefault(c => Bare(c.Heading) == wanted)
            ?? columns.FirstOrDefault(c => wanted.Length > 0 && Bare(c.Heading).StartsWith(wanted, StringComparison.Ordinal));
    }

    private static string Bare(string heading) =>
        AsciiText.Of(heading).Replace(" ", "", StringComparison.Ordinal).ToUpperInvariant();

    private static string? Test(Column column, string sign, string value, out Func<int, bool>? test)
    {
        test = null;
        bool isNumber = double.TryParse(value.Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out double limit);
        if (column.Number is { } number && isNumber)
        {
            test = sign switch
            {
                "<" => row => number(row) < limit,
                "<=" => row => number(row) <= limit,
                ">" => row => number(row) > limit,
                ">=" => row => number(row) >= limit,
                "=" => row => number(row) is { } known && Math.Abs(known - limit) < 1e-9,
                _ => row => number(row) is { } known && Math.Abs(known - limit) >= 1e-9,
            };
            return null;
        }

        if (column.Number is not null && value != "-")
            return $"{column.Heading} is a column of figures, \"{value}\" is not one";
        if (sign is not ("=" or "!="))
            return $"{column.Heading} is a column of words: only = and != can be used with it";
        bool wanted = sign == "=";
        test = row => column.Text(row).StartsWith(value, StringComparison.OrdinalIgnoreCase) == wanted;
        return null;
    }
}
