using System.Globalization;
using System.Text;
using PackPlanner.Core.Screening;
using PackPlanner.Formats.Words;

namespace PackPlanner.Formats.Sheets;

/// <summary>Labels for the cells, 24 to a page.</summary>
internal static class LabelSheet
{
    private const int OnAPage = 24;

    internal static IReadOnlyList<SheetPage> Pages(SheetInput input)
    {
        Dictionary<string, int> groupOf = input.Groups
            .SelectMany((group, i) => group.Cells.Select(cell => (cell.Label, Group: i + 1)))
            .ToDictionary(pair => pair.Label, pair => pair.Group, StringComparer.Ordinal);
        return
        [
            .. Cells(input).Chunk(OnAPage).Select(cells =>
            {
                StringBuilder body = new("<div class=\"labels\">\n");
                foreach (ScreenedCell cell in cells)
                    body.Append(Label(input, cell, groupOf));
                return new SheetPage($"Labels {cells[0].Label} to {cells[^1].Label}", body.Append("</div>\n").ToString(), []);
            }),
        ];
    }

    internal static MainTable Csv(SheetInput input)
    {
        Dictionary<string, int> groupOf = input.Groups
            .SelectMany((group, i) => group.Cells.Select(cell => (cell.Label, Group: i + 1)))
            .ToDictionary(pair => pair.Label, pair => pair.Group, StringComparer.Ordinal);
        return new MainTable(
            ["cell", "group", "verdict", "capacityAh", "resistanceMilliohm", "tray", "job", "revision"],
            [.. Cells(input).Select(cell => new object?[]
            {
                cell.Label, groupOf.TryGetValue(cell.Label, out int group) ? group : null, VerdictWords.Name(cell.Verdict),
                cell.CapacityAh, cell.ResistanceMilliohm, cell.Tray, input.Job.Title, input.Revision,
            })]);
    }

    private static IEnumerable<ScreenedCell> Cells(SheetInput input) => input.Lot!.Cells.OrderBy(cell => cell.Label, StringComparer.Ordinal);

    private static string Label(SheetInput input, ScreenedCell cell, Dictionary<string, int> groupOf)
    {
        string where = groupOf.TryGetValue(cell.Label, out int group)
            ? string.Create(CultureInfo.InvariantCulture, $"group {group}")
            : cell.Verdict == Verdict.Use ? "spare" : VerdictWords.Name(cell.Verdict).ToUpperInvariant();
        return $"<div class=\"label\"><span class=\"big\">{Html.Text(cell.Label)}</span> <b class=\"num\">{where}</b><br>{Html.Figure(cell.CapacityAh, 3)} Ah {Html.Figure(cell.ResistanceMilliohm, 1)} mΩ<br>{Html.Text(cell.Tray ?? "")} rev {input.Revision}</div>\n";
    }
}
