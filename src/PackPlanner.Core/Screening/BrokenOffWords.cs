namespace PackPlanner.Core.Screening;

/// <summary>Reads from a remark that a test was broken off: its ampere-hours are then no capacity, whatever the figure.</summary>
internal static class BrokenOffWords
{
    // Beginnings of words, without accents, lower case: English, German, French, Spanish, Portuguese, Italian, Dutch, Polish.
    private static readonly string[] Stems =
        ["abort", "interrupt", "abbruch", "abgebroch", "interromp", "interrump", "interrot", "interrup", "afgebrok", "przerwan"];

    private static readonly (string First, string Second)[] Pairs =
        [("broken", "off"), ("broke", "off"), ("cut", "short"), ("stopped", "early"), ("ended", "early"), ("test", "stopped")];

    /// <summary>Whether the words say so.</summary>
    /// <param name="noted">What was written; null when nothing was.</param>
    internal static bool Say(string? noted)
    {
        if (noted is null)
            return false;
        string[] words = ConditionWords.PlainWords(noted);
        for (int i = 0; i < words.Length; i++)
        {
            bool said = Stems.Any(stem => words[i].StartsWith(stem, StringComparison.Ordinal))
                || (i + 1 < words.Length && Pairs.Contains((words[i], words[i + 1])));
            if (said && !words[Math.Max(0, i - 2)..i].Any(ConditionWords.Denies))
                return true;
        }

        return false;
    }
}
