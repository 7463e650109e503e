using PackPlanner.Core.Cells;
using PackPlanner.Core.Screening;
using PackPlanner.Formats.Words;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.CellsScreen;

/// <summary>The pane beside the table: the lot as a plot, then the cell under the cursor with its reasons and repeats.</summary>
internal static class CellPane
{
    internal static void Paint(Area area, ScreenedLot lot, ScreenedCell? cell)
    {
        int plot = Math.Clamp(area.Height / 2, 6, 12);
        LotPlot.Paint(area.Part(0, 0, area.Width, plot), lot);
        if (cell is null)
            return;
        int y = plot + 1;
        area.Write(0, y++, TextWidth.Cut($"{cell.Label}: {CellColumns.Word(cell.Verdict)}", area.Width), Ink.Bold);
        foreach (VerdictReason reason in cell.Reasons)
        {
            string from = ReasonWords.From(reason.LimitFrom);
            string words = ReasonWords.Of(reason, area.Look) + (from.Length > 0 ? $" ({from})" : "");
            foreach (string line in TextWidth.Wrap(area.Look.Of(words), area.Width - 1))
                area.Write(0, y++, line);
        }

        if (cell.Reasons.Count == 0)
            area.Write(0, y++, "inside every limit that could be checked");
        foreach (string remark in cell.Rows.Select(row => row.Remark).OfType<string>().Distinct(StringComparer.Ordinal))
            area.Write(0, y++, TextWidth.Cut(area.Look.Of($"remark: {OneLine.Of(remark)}"), area.Width));
        y++;
        area.Write(0, y++, "tests", Ink.Bold);
        foreach (CellRow row in cell.Rows)
        {
            string where = row.Line is { } line ? $"line {line}" : "by hand";
            string words = $"{area.Look.Figure(row.CapacityAh, 3)} Ah  {area.Look.Figure(row.ResistanceMilliohm, 1)} mΩ  {area.Look.Figure(row.RestV, 3)} V  {where}{(row.Slot is { } slot ? $"  slot {slot}" : "")}";
            area.Write(0, y++, TextWidth.Cut(area.Look.Of(words), area.Width));
        }
    }
}
