using System.Globalization;
using System.Text;

namespace PackPlanner.Screens.Drawing;

/// <summary>Text measured in terminal columns: most signs take one, wide ones two, combining ones none.</summary>
internal static class TextWidth
{
    internal static int Of(string text)
    {
        if (IsPlain(text))
            return text.Length;
        int width = 0;
        foreach (Rune rune in text.EnumerateRunes())
            width += Of(rune);
        return width;
    }

    internal static int Of(Rune rune)
    {
        if (rune.Value < 0x300)
            return 1;
        if (Rune.GetUnicodeCategory(rune) is UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark or UnicodeCategory.Format)
            return 0;
        return IsWide(rune.Value) ? 2 : 1;
    }

    /// <summary>The text in exactly <paramref name="width"/> columns, cut with an ellipsis or filled with blanks.</summary>
    internal static string Fit(string text, int width, bool right = false)
    {
        int own = Of(text);
        if (own > width)
            return Cut(text, width);
        string blanks = new(' ', width - own);
        return right ? blanks + text : text + blanks;
    }

    /// <summary>The text in at most <paramref name="width"/> columns, its end replaced by an ellipsis.</summary>
    internal static string Cut(string text, int width)
    {
        if (Of(text) <= width)
            return text;
        if (width <= 0)
            return "";
        return Head(text, width - 1) + "…";
    }

    /// <summary>The text in at most <paramref name="width"/> columns, cut after a whole word where one has room.</summary>
    internal static string CutAtWord(string text, int width)
    {
        string cut = Cut(text, width);
        int lastBlank = cut.LastIndexOf(' ');
        // The blank before the sign of the cut tells that the word before it is whole.
        return cut == text || lastBlank <= 0 ? cut : cut[..lastBlank] + " …";
    }

    /// <summary>The text in at most <paramref name="width"/> columns, cut in the middle so that both ends stay.</summary>
    internal static string CutMiddle(string text, int width)
    {
        if (Of(text) <= width)
            return text;
        if (width < 3)
            return Cut(text, width);
        int front = width / 2;
        string reversed = new([.. text.Reverse()]);
        int tail = width - front - 1;
        return IsPlain(text) ? text[..front] + "…" + text[^tail..] : Head(text, front) + "…" + new string([.. Head(reversed, tail).Reverse()]);
    }

    /// <summary>Breaks words into lines of at most <paramref name="width"/> columns.</summary>
    internal static IReadOnlyList<string> Wrap(string text, int width)
    {
        List<string> lines = [];
        StringBuilder line = new();
        int used = 0;
        foreach (string word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            int needs = Of(word);
            if (used > 0 && used + 1 + needs > width)
            {
                lines.Add(line.ToString());
                line.Clear();
                used = 0;
            }

            if (used > 0)
            {
                line.Append(' ');
                used++;
            }

            line.Append(needs > width ? Cut(word, width) : word);
            used += Math.Min(needs, width);
        }

        if (used > 0 || lines.Count == 0)
            lines.Add(line.ToString());
        return lines;
    }

    /// <summary>Breaks words into at most <paramref name="most"/> lines; what does not fit ends in an ellipsis.</summary>
    internal static IReadOnlyList<string> Wrap(string text, int width, int most)
    {
        IReadOnlyList<string> lines = Wrap(text, width);
        if (lines.Count <= most)
            return lines;
        string last = Cut(string.Join(' ', lines.Skip(most - 1)), width);
        return [.. lines.Take(most - 1), last];
    }

    private static string Head(string text, int width)
    {
        StringBuilder head = new();
        int used = 0;
        foreach (Rune rune in text.EnumerateRunes())
        {
            used += Of(rune);
            if (used > width)
                break;
            head.Append(rune.ToString());
        }

        return head.ToString();
    }

    private static bool IsPlain(string text) => !text.AsSpan().ContainsAnyExceptInRange('\u0020', '\u02FF');

    private static bool IsWide(int rune) => rune is
        (>= 0x1100 and <= 0x115F) or (>= 0x2E80 and <= 0xA4CF) or (>= 0xAC00 and <= 0xD7A3) or (>= 0xF900 and <= 0xFAFF)
        or (>= 0xFE30 and <= 0xFE6F) or (>= 0xFF00 and <= 0xFF60) or (>= 0xFFE0 and <= 0xFFE6)
        or (>= 0x1F300 and <= 0x1F64F) or (>= 0x1F900 and <= 0x1F9FF) or (>= 0x20000 and <= 0x3FFFD);
}
