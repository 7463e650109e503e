using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.Overlays;

/// <summary>Something to read: a word in front and what it says, scrolled by the arrows.</summary>
/// <param name="title">What it is about.</param>
/// <param name="lines">A word (may be empty) and what it says; long ones are wrapped.</param>
internal sealed class TextOverlay(string title, IReadOnlyList<(string Word, string Says)> lines) : IOverlay
{
    private int top;
    private int pageRows = 1;

    public string Hint => "arrows scroll";

    public bool TakesText => false;

    public int Rows(int most) => most;

    public void Paint(Area area)
    {
        int indent = Math.Min(24, lines.Max(line => TextWidth.Of(area.Look.Of(line.Word))) + 2);
        List<(string Word, string Says)> wrapped = [];
        foreach ((string word, string says) in lines)
        {
            IReadOnlyList<string> parts = TextWidth.Wrap(area.Look.Of(says), Math.Min(100, area.Width - indent - 4));
            wrapped.AddRange(parts.Select((part, i) => (i == 0 ? word : "", part)));
        }

        pageRows = Math.Max(1, area.Height - 1);
        top = Math.Clamp(top, 0, Math.Max(0, wrapped.Count - pageRows));
        area.Write(1, 0, TextWidth.Cut(area.Look.Of(title), area.Width - 12), Ink.Bold);
        if (wrapped.Count > pageRows)
            area.WriteRight(0, $"{top + 1}-{Math.Min(wrapped.Count, top + pageRows)} of {wrapped.Count} ");
        for (int row = 0; row < pageRows && top + row < wrapped.Count; row++)
        {
            area.Write(3, row + 1, TextWidth.Cut(area.Look.Of(wrapped[top + row].Word), indent - 1), Ink.Accent);
            area.Write(3 + indent, row + 1, wrapped[top + row].Says);
        }

        area.Cursor(1, 0);
    }

    public void Press(string key) => top = key switch
    {
        "Up" => Math.Max(0, top - 1),
        "Down" => top + 1,
        "PgUp" => Math.Max(0, top - pageRows),
        "PgDn" or " " => top + pageRows,
        "Home" => 0,
        "End" => int.MaxValue / 2,
        _ => top,
    };

    public void Paste(string text)
    {
    }
}
