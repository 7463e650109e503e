using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens;

/// <summary>The body of a screen that has nothing yet: what it is for, what it wants, where to try it.</summary>
internal static class Teach
{
    internal static void Paint(Area body, IReadOnlyList<(string Word, string Says)> lines)
    {
        int indent = lines.Count == 0 ? 0 : lines.Max(line => TextWidth.Of(body.Look.Of(line.Word))) + 2;
        int y = 0;
        foreach ((string word, string says) in lines)
        {
            body.Write(3, y, word, Ink.Bold);
            foreach (string part in TextWidth.Wrap(body.Look.Of(says), Math.Clamp(body.Width - indent - 4, 10, 100)))
                body.Write(3 + indent, y++, part);
        }

        body.Cursor(1, 0);
    }
}
