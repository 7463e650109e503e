using System.Net;
using System.Text;
using PackPlanner.Formats.Words;

namespace PackPlanner.Formats.Sheets;

/// <summary>Pieces of HTML. Every text that came from outside passes through <see cref="Text"/>.</summary>
internal static class Html
{
    /// <summary>An empty box to write a reading into, at least 25 x 10 mm.</summary>
    internal const string Box = "<span class=\"box\"></span>";

    /// <summary>A square to tick.</summary>
    internal const string Tick = "<span class=\"tick\"></span>";

    /// <summary>Text made harmless: no marks of HTML, no control characters, no marks that turn the reading direction.</summary>
    internal static string Text(string text) => WebUtility.HtmlEncode(OneLine.Of(text));

    internal static string Figure(double? figure, int places) => $"<span class=\"num\">{Figures.Fixed(figure, places)}</span>";

    /// <summary>A table; heads are plain text, cells are HTML already. Each cell also carries its head, for screens too narrow for columns.</summary>
    internal static string Table(IReadOnlyList<string> heads, IEnumerable<IReadOnlyList<string>> rows)
    {
        StringBuilder table = new("<table><thead><tr>");
        foreach (string head in heads)
            table.Append("<th>").Append(Text(head)).Append("</th>");
        table.Append("</tr></thead><tbody>\n");
        foreach (IReadOnlyList<string> row in rows)
        {
            table.Append("<tr>");
            foreach ((string cell, int i) in row.Select((cell, i) => (cell, i)))
                table.Append(heads[i].Length > 0 && cell.Length > 0 ? $"<td data-head=\"{Text(heads[i])}\">" : "<td>").Append(cell).Append("</td>");
            table.Append("</tr>\n");
        }

        return table.Append("</tbody></table>\n").ToString();
    }
}
