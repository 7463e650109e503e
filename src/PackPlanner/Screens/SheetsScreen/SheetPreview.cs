using System.Net;
using System.Text.RegularExpressions;
using PackPlanner.Formats.Sheets;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.SheetsScreen;

/// <summary>What a sheet will say, as lines of text: titles, words and tables; drawings are named only.</summary>
internal static partial class SheetPreview
{
    private const int WidestColumn = 40;

    /// <summary>All pages of a sheet.</summary>
    internal static IReadOnlyList<string> Lines(Sheet sheet, SheetInput input)
    {
        IReadOnlyList<SheetPage> pages = sheet.Pages(input);
        List<string> lines = [];
        for (int i = 0; i < pages.Count; i++)
        {
            if (i > 0)
                lines.Add("");
            lines.Add($"{pages[i].Title}   {(pages.Count > 1 ? $"block {i + 1} of {pages.Count}" : "")}".TrimEnd());
            lines.AddRange(Body(pages[i].Body));
        }

        return lines;
    }

    private static IEnumerable<string> Body(string html)
    {
        string text = Svg().Replace(html, "<p>(drawing)</p>");
        text = Image().Replace(text, "<p>(picture)</p>");
        text = Box().Replace(text, "________");
        text = Tick().Replace(text, "[ ]");
        int at = 0;
        foreach (Match table in Tables().Matches(text))
        {
            foreach (string line in Words(text[at..table.Index]))
                yield return line;
            foreach (string line in Rows(table.Value))
                yield return line;
            at = table.Index + table.Length;
        }

        foreach (string line in Words(text[at..]))
            yield return line;
    }

    private static IEnumerable<string> Words(string html) =>
        Blocks().Split(html).Select(Plain).Where(line => line.Length > 0);

    private static IEnumerable<string> Rows(string table)
    {
        string[][] rows = [.. RowTag().Matches(table).Select(row => Cell().Matches(row.Value).Select(cell => Plain(cell.Value)).ToArray())];
        int columns = rows.Length == 0 ? 0 : rows.Max(row => row.Length);
        int[] widths = [.. Enumerable.Range(0, columns).Select(c => Math.Min(WidestColumn, rows.Max(row => c < row.Length ? TextWidth.Of(row[c]) : 0)))];
        return rows.SelectMany(row => Row(row, widths));
    }

    // A cell that is wider than its column goes on below itself; what to settle by which reading is no use in part.
    private static IEnumerable<string> Row(string[] cells, int[] widths)
    {
        IReadOnlyList<string>[] parts = [.. cells.Select((cell, c) => c == cells.Length - 1 ? [cell] : TextWidth.Wrap(cell, Math.Max(1, widths[c])))];
        int height = parts.Length == 0 ? 0 : parts.Max(part => part.Count);
        return Enumerable.Range(0, height).Select(y =>
            string.Join("  ", parts.Select((part, c) => y >= part.Count ? new string(' ', c == parts.Length - 1 ? 0 : widths[c]) : c == parts.Length - 1 ? part[y] : TextWidth.Fit(part[y], widths[c]))).TrimEnd());
    }

    private static string Plain(string html) => Spaces().Replace(WebUtility.HtmlDecode(Tag().Replace(html, " ")), " ").Trim();

    [GeneratedRegex("<svg.*?</svg>", RegexOptions.Singleline)]
    private static partial Regex Svg();

    [GeneratedRegex("<img[^>]*>")]
    private static partial Regex Image();

    [GeneratedRegex("<span class=\"box\"></span>")]
    private static partial Regex Box();

    [GeneratedRegex("<span class=\"tick\"></span>")]
    private static partial Regex Tick();

    [GeneratedRegex("<table.*?</table>", RegexOptions.Singleline)]
    private static partial Regex Tables();

    [GeneratedRegex("<tr.*?</tr>", RegexOptions.Singleline)]
    private static partial Regex RowTag();

    [GeneratedRegex("<t[hd].*?</t[hd]>", RegexOptions.Singleline)]
    private static partial Regex Cell();

    [GeneratedRegex("</?(?:p|div|h[0-9]|ul|ol|li|br|section)[^>]*>")]
    private static partial Regex Blocks();

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tag();

    [GeneratedRegex("\\s+")]
    private static partial Regex Spaces();
}
