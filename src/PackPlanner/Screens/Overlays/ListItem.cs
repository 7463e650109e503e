namespace PackPlanner.Screens.Overlays;

/// <summary>One line of a list that can be chosen.</summary>
/// <param name="Text">What it is.</param>
/// <param name="Aside">What stands at the right: its key, or a state.</param>
/// <param name="Run">Does it; null for a line that only tells.</param>
internal sealed record ListItem(string Text, string Aside = "", Action? Run = null)
{
    /// <summary>What the line is the same by while its tick comes and goes.</summary>
    internal string Name => Text is ['[', _, ']', ' ', ..] ? Text[4..] : Text;

    /// <summary>Whether it is what holds now: the cursor begins there, so that Enter changes nothing unasked.</summary>
    internal bool IsNow { get; init; }

    /// <summary>More about it, shown below the list while the cursor stands on it; null where there is no more.</summary>
    internal Func<string>? Tells { get; init; }
}
