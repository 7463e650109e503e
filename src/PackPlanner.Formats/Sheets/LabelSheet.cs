using System.Globalization;
using System.Text;
using PackPlanner.Core.Screening;
using PackPlanner.Formats.Words;

namespace PackPlanner.Formats.Sheets;

/// <summary>Labels for the cells, 24 to a page. Each says whose it is, because it is cut off from the others.</summary>
internal static class LabelSheet
{
    private const int OnAPage = 24;
    private const int InABlock = 12;

    // Longer ones would not fit in the large type beside the group.
    private const int LongLabel = 8;

    // Longer ones take three lines with their group, and the lines under them would be cut.
    private const int LongestInTwoLines = 16;

    internal static IReadOnlyList<SheetPage> Pages(SheetInput input)
    {
        Dictionary<string, int> groupOf = GroupOf(input);
        return
        [
            .. Cells(input).Chunk(OnAPage).Select(cells => new SheetPage(
                $"Labels {cells[0].Label} to {cells[^1].Label}", "", [.. cells.Chunk(InABlock).Select(some => Block(input, some, groupOf))], [])),
        ];
    }

    internal static MainTable Csv(SheetInput input)
    {
        Dictionary<string, int> groupOf = GroupOf(input);
        return new MainTable(
            ["cell", "group", "verdict", "capacityAh", "resistanceMilliohm", "tray", "job", "revision"],
            [.. Cells(input).Select(cell => new object?[]
            {
                cell.Label, groupOf.TryGetValue(cell.Label, out int group) ? group : null, VerdictWords.Name(cell.Verdict),
                cell.CapacityAh, cell.ResistanceMilliohm, cell.Tray, input.Job.Title, input.Revision,
            })]);
    }

    private static Dictionary<string, int> GroupOf(SheetInput input) => input.Groups
        .SelectMany((group, i) => group.Cells.Select(cell => (cell.Label, Group: i + 1)))
        .ToDictionary(pair => pair.Label, pair => pair.Group, StringComparer.Ordinal);

    private static IEnumerable<ScreenedCell> Cells(SheetInput input) => input.Lot!.Cells.OrderBy(cell => cell.Label, StringComparer.Ordinal);

    private static SheetBlock Block(SheetInput input, IEnumerable<ScreenedCell> cells, Dictionary<string, int> groupOf)
    {
        StringBuilder body = new("<div class=\"labels\">\n");
        foreach (ScreenedCell cell in cells)
            body.Append(Label(input, cell, groupOf));
        return new SheetBlock(body.Append("</div>\n").ToString());
    }

    private static string Label(SheetInput input, ScreenedCell cell, Dictionary<string, int> groupOf)
    {
        string where = groupOf.TryGetValue(cell.Label, out int group)
            ? string.Create(CultureInfo.InvariantCulture, $"group {group}")
            : cell.Verdict == Verdict.Use ? "spare" : VerdictWords.Name(cell.Verdict).ToUpperInvariant();
        string tray = cell.Tray is { } known ? $"<span class=\"whose\">tray {Html.Text(known)}</span>" : "";
        string size = OneLine.Of(cell.Label).Length switch { > LongestInTwoLines => "longest", > LongLabel => "long", _ => "big" };
        return $"<div class=\"label\"><span class=\"cell\"><span class=\"{size}\">{Html.Text(cell.Label)}</span> <b class=\"num\">{where}</b><br>{Html.Figure(cell.CapacityAh, 3)} Ah {Html.Figure(cell.ResistanceMilliohm, 1)} mΩ</span>"
            + $"{tray}<span class=\"whose\">rev {input.Revision}, {Html.Text(input.Job.Title)}</span></div>\n";
    }
}
