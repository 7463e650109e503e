using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.LogScreen;

/// <summary>Words below a table, where its rows leave room for all of them.</summary>
internal static class LogFoot
{
    private const int SaysAt = 13;

    /// <param name="area">The table's own area.</param>
    /// <param name="rows">Rows of the table, which stand below its heading.</param>
    /// <param name="lines">A word and what it says.</param>
    internal static void Paint(Area area, int rows, IReadOnlyList<(string Word, string Says)> lines)
    {
        (string Word, string Says)[] shown = [.. lines.SelectMany(line =>
            TextWidth.Wrap(area.Look.Of(line.Says), area.Width - SaysAt - 1).Select((part, i) => (i == 0 ? line.Word : "", part)))];
        // A row for the heading, one left blank, and the last for the count.
        if (area.Height - 3 - rows < shown.Length)
            return;
        for (int i = 0; i < shown.Length; i++)
        {
            area.Write(3, rows + 2 + i, shown[i].Word, Ink.Bold);
            area.Write(SaysAt, rows + 2 + i, shown[i].Says);
        }
    }
}
