namespace PackPlanner.Formats.Words;

/// <summary>How one figure of an answer is made.</summary>
/// <param name="Key">Its name in JSON.</param>
/// <param name="Inputs">What it is made from.</param>
/// <param name="Rule">The rule in words.</param>
/// <param name="Page">The page of docs/methods that says more.</param>
/// <param name="Source">Key of the source register, or what kind of fact it is.</param>
/// <param name="Verbs">The verbs whose figure this is, blanks between: one name may be made by one rule in one answer and by another in the next.</param>
public sealed record FigureRule(string Key, string Inputs, string Rule, string Page, string Source, string Verbs)
{
    /// <summary>Whether the figure of that verb's answer is made so.</summary>
    /// <param name="verb">A verb.</param>
    /// <returns>Whether it is.</returns>
    public bool IsOf(string verb) => Verbs.Split(' ').Contains(verb, StringComparer.Ordinal);
}
