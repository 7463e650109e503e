using System.Text;

namespace PackPlanner.Formats.Words;

/// <summary>Words and drawings without anything beyond ASCII, for terminals and readers that cannot show it.</summary>
public static class AsciiText
{
    private static readonly Dictionary<int, string> StandIns = new()
    {
        ['±'] = "+/-",
        ['Ω'] = "ohm",
        [0x2126] = "ohm",
        ['°'] = "deg",
        ['…'] = "...",
        ['·'] = "-",
        ['×'] = "x",
        ['µ'] = "u",
        ['μ'] = "u",
        ['–'] = "-",
        ['—'] = "-",
        ['←'] = "<-",
        ['→'] = "->",
        ['▾'] = "v",
        ['▴'] = "^",
        ['≥'] = ">=",
        ['≤'] = "<=",
        ['─'] = "-",
        ['│'] = "|",
        ['├'] = "+",
        ['┤'] = "+",
        ['┌'] = "+",
        ['┐'] = "+",
        ['└'] = "+",
        ['┘'] = "+",
        ['┬'] = "+",
        ['┴'] = "+",
        ['┼'] = "+",
        ['‹'] = "<",
        ['›'] = ">",
        ['²'] = "2",
        ['³'] = "3",
        ['Δ'] = "d",
        ['τ'] = "tau",
        ['σ'] = "sigma",
    };

    /// <summary>Replaces what is beyond ASCII: known signs by words, block elements and dots by <c>.</c> <c>:</c> <c>|</c> <c>#</c>, the rest by <c>?</c>.</summary>
    /// <param name="text">Any text.</param>
    /// <returns>ASCII only.</returns>
    public static string Of(string text)
    {
        if (Ascii.IsValid(text))
            return text;
        StringBuilder plain = new();
        foreach (Rune rune in text.EnumerateRunes())
            plain.Append(rune.IsAscii ? rune.ToString() : StandIn(rune.Value));
        return plain.ToString();
    }

    private static string StandIn(int rune) => rune switch
    {
        _ when StandIns.TryGetValue(rune, out string? known) => known,
        >= 0x2581 and <= 0x2582 => ".",
        >= 0x2583 and <= 0x2585 => ":",
        >= 0x2586 and <= 0x2587 => "|",
        >= 0x2588 and <= 0x2593 => "#",
        0x2800 => " ",
        > 0x2800 and <= 0x28FF => int.PopCount(rune & 0xFF) > 3 ? ":" : ".",
        _ => "?",
    };
}
