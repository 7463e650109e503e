using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.Overlays;

/// <summary>Something to read: a word in front and what it says, wrapped.</summary>
/// <param name="title">What it is about.</param>
/// <param name="lines">A word (may be empty) and what it says; long ones are wrapped.</param>
internal sealed class TextOverlay(string title, IReadOnlyList<(string Word, string Says)> lines) : ScrolledOverlay(title)
{
    protected override IReadOnlyList<Action<Area, int>> Lines(Area area)
    {
        int indent = Math.Min(24, lines.Max(line => TextWidth.Of(area.Look.Of(line.Word))) + 2);
        List<Action<Area, int>> wrapped = [];
        foreach ((string word, string says) in lines)
        {
            IReadOnlyList<string> parts = TextWidth.Wrap(area.Look.Prose(says), Math.Min(100, area.Width - indent - 4));
            wrapped.AddRange(parts.Select((part, i) => (Action<Area, int>)((at, row) =>
            {
                at.Write(3, row, TextWidth.Cut(at.Look.Of(i == 0 ? word : ""), indent - 1), Ink.Accent);
                at.Write(3 + indent, row, part);
            })));
        }

        return wrapped;
    }
}
