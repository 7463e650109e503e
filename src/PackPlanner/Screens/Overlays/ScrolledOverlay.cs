using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.Overlays;

/// <summary>Lines under a title, scrolled by the arrows.</summary>
/// <param name="title">What they are about.</param>
internal abstract class ScrolledOverlay(string title) : IOverlay
{
    private int top;
    private int pageRows = 1;
    private int count;

    public string Hint => "arrows scroll";

    public bool OnlyTells => true;

    public int Rows(int most) => most;

    public void Paint(Area area)
    {
        IReadOnlyList<Action<Area, int>> lines = Lines(area);
        count = lines.Count;
        pageRows = Math.Max(1, area.Height - 1);
        Scroll(0);
        string place = count > pageRows ? $"{top + 1}-{top + pageRows} of {count} " : "";
        area.Write(1, 0, TextWidth.Cut(area.Look.Of(title), area.Width - 2 - place.Length), Ink.Bold);
        area.WriteRight(0, place);
        for (int row = 0; row < pageRows && top + row < count; row++)
            lines[top + row](area, row + 1);
        area.Cursor(1, 0);
    }

    public bool Press(string key)
    {
        int? rows = key switch
        {
            "Up" => -1,
            "Down" => 1,
            "PgUp" => -pageRows,
            "PgDn" or " " => pageRows,
            "Home" => -count,
            "End" => count,
            _ => null,
        };
        Scroll(rows ?? 0);
        return rows is not null;
    }

    public void Paste(string text)
    {
    }

    /// <summary>Each line as what writes it at a row of the area.</summary>
    protected abstract IReadOnlyList<Action<Area, int>> Lines(Area area);

    private void Scroll(int rows) => top = Math.Clamp(top + rows, 0, Math.Max(0, count - pageRows));
}
