using System.Globalization;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.Overlays;

/// <summary>A line of text being typed: letters, arrows, deleting, pasting, and the control keys that lines in a shell have.</summary>
internal sealed class TypedLine
{
    private readonly List<string> signs = [];

    internal TypedLine(string text)
    {
        Insert(text);
    }

    internal string Text => string.Concat(signs);

    internal int At { get; private set; }

    /// <summary>Takes an editing key.</summary>
    /// <returns>False when it is not one.</returns>
    internal bool Press(string key)
    {
        switch (key)
        {
            case "Left" or "Ctrl+B": At = Math.Max(0, At - 1); return true;
            case "Right" or "Ctrl+F": At = Math.Min(signs.Count, At + 1); return true;
            case "Home" or "Ctrl+A": At = 0; return true;
            case "End" or "Ctrl+E": At = signs.Count; return true;
            case "Backspace" or "Ctrl+H": return CutBack(Math.Max(0, At - 1));
            case "Delete" or "Ctrl+D": signs.RemoveRange(At, Math.Min(1, signs.Count - At)); return true;
            case "Ctrl+U": return CutBack(0);
            case "Ctrl+K": signs.RemoveRange(At, signs.Count - At); return true;
            case "Ctrl+W": return CutBack(WordBefore());
            default: return IsTyped(key) && Insert(key);
        }
    }

    /// <summary>Puts text in at the cursor; line ends become blanks.</summary>
    internal bool Insert(string text)
    {
        TextElementEnumerator elements = StringInfo.GetTextElementEnumerator(text.Replace("\r\n", " ").Replace('\n', ' ').Replace('\t', ' '));
        while (elements.MoveNext())
        {
            string element = elements.GetTextElement();
            if (!char.IsControl(element[0]))
                signs.Insert(At++, element);
        }

        return true;
    }

    /// <summary>Draws it with the terminal's cursor in it; a long line is shown around the cursor.</summary>
    internal void Paint(Area area, int x, int y, int width)
    {
        int first = 0;
        while (first < At && Before(first) > width - 2)
            first++;
        // What lies left of the field is told by its mark, which takes the place of one sign more.
        string mark = first == 0 ? "" : area.Look.Of("…");
        while (mark.Length > 0 && first < At && mark.Length + Before(first) > width - 1)
            first++;
        string shown = mark + string.Concat(signs.Skip(first));
        area.Write(x, y, TextWidth.Fit(TextWidth.Cut(shown, width), width), Ink.Reverse);
        area.Cursor(x + Math.Min(width - 1, mark.Length + Before(first)), y);

        int Before(int from) => TextWidth.Of(string.Concat(signs.Take(At).Skip(from)));
    }

    private bool CutBack(int from)
    {
        signs.RemoveRange(from, At - from);
        At = from;
        return true;
    }

    // Where the word before the cursor begins, with the blanks behind it.
    private int WordBefore()
    {
        int at = At;
        while (at > 0 && signs[at - 1] == " ")
            at--;
        while (at > 0 && signs[at - 1] != " ")
            at--;
        return at;
    }

    // Named keys have two letters or more, so one text element is something typed.
    private static bool IsTyped(string key) => new StringInfo(key).LengthInTextElements == 1 && !char.IsControl(key[0]);
}
