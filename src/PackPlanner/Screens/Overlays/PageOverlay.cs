using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.Overlays;

/// <summary>Lines that keep their columns, which two blanks part; what is wider than the screen goes on below, under its last column.</summary>
/// <param name="title">What it is.</param>
/// <param name="lines">The lines.</param>
internal sealed class PageOverlay(string title, IReadOnlyList<string> lines) : ScrolledOverlay(title)
{
    protected override IReadOnlyList<Action<Area, int>> Lines(Area area) =>
        [.. lines.SelectMany(line => Within(area.Look.Of(line), area.Width - 3)).Select(line => (Action<Area, int>)((at, row) => at.Write(2, row, line)))];

    /// <summary>A line as rows that are no wider than this.</summary>
    internal static IReadOnlyList<string> Within(string line, int width)
    {
        if (TextWidth.Of(line) <= width)
            return [line];
        int last = line.LastIndexOf("  ", StringComparison.Ordinal) + 2, column = last == 1 ? 0 : TextWidth.Of(line[..last]);
        // A last column that has no room to speak of would become a column of single words.
        if (column > width / 2)
            return [TextWidth.Cut(line, width)];
        string before = column == 0 ? "" : line[..last];
        return [.. TextWidth.Wrap(line[before.Length..], width - column).Select((text, i) => (i == 0 ? before : new string(' ', column)) + text)];
    }
}
