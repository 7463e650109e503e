namespace PackPlanner.Formats.Words;

/// <summary>Where the figures of the answers come from, in words, for --why: keyed by verb and by the name that the figure has in JSON.</summary>
public static class FigureRules
{
    /// <summary>All of them.</summary>
    public static IReadOnlyList<FigureRule> All { get; } = [.. CellFigureRules.All, .. PackFigureRules.All];

    /// <summary>The rule of one figure.</summary>
    /// <param name="key">Its name in JSON, such as usableWh.</param>
    /// <param name="verb">The verb whose answer it stands in.</param>
    /// <returns>The rule; null when there is none.</returns>
    public static FigureRule? Of(string key, string verb) =>
        All.FirstOrDefault(rule => rule.IsOf(verb) && rule.Key.Equals(key, StringComparison.OrdinalIgnoreCase));
}
