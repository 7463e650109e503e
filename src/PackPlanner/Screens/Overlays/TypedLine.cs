using System.Globalization;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.Overlays;

/// <summary>A line of text being typed: letters, arrows, deleting, pasting.</summary>
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
            case "Left": At = Math.Max(0, At - 1); return true;
            case "Right": At = Math.Min(signs.Count, At + 1); return true;
            case "Home": At = 0; return true;
            case "End": At = signs.Count; return true;
            case "Backspace" when At > 0: signs.RemoveAt(--At); return true;
            case "Delete" when At < signs.Count: signs.RemoveAt(At); return true;
            case "Backspace" or "Delete": return true;
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

    internal void Clear()
    {
        signs.Clear();
        At = 0;
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

    // Named keys have two letters or more, so one text element is something typed.
    private static bool IsTyped(string key) => new StringInfo(key).LengthInTextElements == 1 && !char.IsControl(key[0]);
}
