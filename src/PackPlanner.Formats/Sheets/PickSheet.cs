using System.Globalization;
using PackPlanner.Core.Screening;

namespace PackPlanner.Formats.Sheets;

/// <summary>The cells of the pack in the order of their trays, so that each tray is opened once.</summary>
internal static class PickSheet
{
    private const int RowsInAColumn = 12;

    // Longer ones would push group and tick box of the second column off the paper.
    private const int LongLabel = 14;

    internal static IReadOnlyList<SheetPage> Pages(SheetInput input)
    {
        (ScreenedCell Cell, int Group)[] cells =
        [
            .. input.Groups.SelectMany((group, i) => group.Cells.Select(cell => (cell, i + 1)))
                .OrderBy(pair => pair.cell.Tray ?? "~", StringComparer.Ordinal).ThenBy(pair => pair.cell.Label, StringComparer.Ordinal),
        ];
        int trays = cells.Select(pair => pair.Cell.Tray).Distinct().Count();
        int columns = cells.Any(pair => (pair.Cell.Tray ?? "").Length + pair.Cell.Label.Length > LongLabel) ? 1 : 2;
        string sum = $"<p>{cells.Length} cells for {input.Groups.Count} groups, from {trays} {(trays == 1 ? "tray" : "trays")}. Tick each as you take it; put it into the box of its group.</p>\n";
        return
        [
            .. cells.Chunk(2 * columns * RowsInAColumn).Select(page => new SheetPage(
                "Pick list by tray", sum, [.. page.Chunk(columns * RowsInAColumn).Select(some => Block(some, columns))], [])),
        ];
    }

    private static SheetBlock Block((ScreenedCell Cell, int Group)[] cells, int columns) =>
        columns == 1 ? new(Column(cells)) : new("<div class=\"columns\">" + string.Concat(SheetPage.Evenly(cells, Math.Max(1, (cells.Length + 1) / 2)).Select(Column)) + "</div>\n");

    private static string Column((ScreenedCell Cell, int Group)[] cells) => Html.Table(
        ["tray", "cell", "group", ""],
        cells.Select(pair => (IReadOnlyList<string>)
        [
            Html.Text(pair.Cell.Tray ?? "-"), $"<b class=\"num\">{Html.Text(pair.Cell.Label)}</b>",
            $"<span class=\"num\">{pair.Group.ToString(CultureInfo.InvariantCulture)}</span>", Html.Tick,
        ]));
}
