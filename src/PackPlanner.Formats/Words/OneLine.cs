using System.Globalization;
using System.Text;

namespace PackPlanner.Formats.Words;

/// <summary>Makes text that came from outside harmless on a terminal: one line, no escapes, no marks that turn the reading direction.</summary>
public static class OneLine
{
    /// <summary>Replaces control and format characters by a visible stand-in.</summary>
    /// <param name="text">Text from a file or a command line.</param>
    /// <returns>The same text where it was harmless already.</returns>
    public static string Of(string text)
    {
        if (!text.EnumerateRunes().Any(IsHarmful))
            return text;
        StringBuilder clean = new();
        foreach (Rune rune in text.EnumerateRunes())
            clean.Append(IsHarmful(rune) ? "\uFFFD" : rune.ToString());
        return clean.ToString();
    }

    private static bool IsHarmful(Rune rune) => Rune.GetUnicodeCategory(rune) is
        UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator;
}
