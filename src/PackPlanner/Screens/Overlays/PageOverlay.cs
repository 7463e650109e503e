using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.Overlays;

/// <summary>Lines that keep their columns; what is wider than the screen is cut.</summary>
/// <param name="title">What it is.</param>
/// <param name="lines">The lines.</param>
internal sealed class PageOverlay(string title, IReadOnlyList<string> lines) : ScrolledOverlay(title)
{
    protected override IReadOnlyList<Action<Area, int>> Lines(Area area) =>
        [.. lines.Select(line => (Action<Area, int>)((at, row) => at.Write(2, row, TextWidth.Cut(at.Look.Of(line), at.Width - 3))))];
}
