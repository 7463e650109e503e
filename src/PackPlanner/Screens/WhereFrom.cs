namespace PackPlanner.Screens;

/// <summary>Where one figure comes from: its inputs, the rule in words, the source, the spread.</summary>
/// <param name="Title">The figure and what it is, such as "3.999 Ah of T091".</param>
/// <param name="Lines">A word (read, spread, limit, rule, so) and what it says.</param>
internal sealed record WhereFrom(string Title, IReadOnlyList<(string Word, string Says)> Lines);
