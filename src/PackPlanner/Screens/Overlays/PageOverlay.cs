using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.Overlays;

/// <summary>Lines that keep their columns, scrolled by the arrows; what is wider than the screen is cut.</summary>
/// <param name="title">What it is.</param>
/// <param name="lines">The lines.</param>
internal sealed class PageOverlay(string title, IReadOnlyList<string> lines) : IOverlay
{
    private int top;
    private int pageRows = 1;

    public string Hint => "arrows scroll";

    public bool TakesText => false;

    public int Rows(int most) => most;

    public void Paint(Area area)
    {
        pageRows = Math.Max(1, area.Height - 1);
        top = Math.Clamp(top, 0, Math.Max(0, lines.Count - pageRows));
        area.Write(1, 0, TextWidth.Cut(area.Look.Of(title), area.Width - 18), Ink.Bold);
        area.WriteRight(0, $"{top + 1}-{Math.Min(lines.Count, top + pageRows)} of {lines.Count} ");
        for (int row = 0; row < pageRows && top + row < lines.Count; row++)
            area.Write(2, row + 1, TextWidth.Cut(area.Look.Of(lines[top + row]), area.Width - 3));
        area.Cursor(1, 0);
    }

    public void Press(string key) => top += key switch
    {
        "Up" => -1,
        "Down" => 1,
        "PgUp" => -pageRows,
        "PgDn" => pageRows,
        "Home" => -lines.Count,
        "End" => lines.Count,
        _ => 0,
    };

    public void Paste(string text)
    {
    }
}
