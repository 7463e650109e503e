namespace PackPlanner.Screens.Keys;

/// <summary>What a key does here and now. The hints, the list of keys and the list of commands are made from these.</summary>
/// <param name="Entry">The key with its meaning.</param>
/// <param name="Label">A word or three for the hint line.</param>
/// <param name="Does">One line on what will happen.</param>
/// <param name="WhyNot">Why it cannot be done now; null when it can.</param>
/// <param name="Run">Does it.</param>
internal sealed record KeyAction(KeyEntry Entry, string Label, string Does, Func<string?> WhyNot, Action Run)
{
    internal KeyAction(KeyEntry entry, string label, string does, Action run)
        : this(entry, label, does, () => null, run)
    {
    }
}
