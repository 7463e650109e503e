namespace PackPlanner.Formats.Words;

/// <summary>How one figure of an answer is made.</summary>
/// <param name="Key">Its name in JSON.</param>
/// <param name="Inputs">What it is made from.</param>
/// <param name="Rule">The rule in words.</param>
/// <param name="Page">The page of docs/methods that says more.</param>
/// <param name="Source">Key of the source register, or what kind of fact it is.</param>
public sealed record FigureRule(string Key, string Inputs, string Rule, string Page, string Source);
