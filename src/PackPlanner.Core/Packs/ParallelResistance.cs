namespace PackPlanner.Core.Packs;

/// <summary>The resistance of cells side by side. Source: [Kirchhoff].</summary>
public static class ParallelResistance
{
    /// <summary>One over the sum of the conductances.</summary>
    /// <param name="cells">The cells of a group.</param>
    /// <param name="resistance">Of one cell, in any unit; null when unknown.</param>
    /// <returns>In the same unit; null without cells, or when one is unknown or not above zero.</returns>
    public static double? Of<T>(IReadOnlyCollection<T> cells, Func<T, double?> resistance) =>
        cells.Count > 0 && cells.All(cell => resistance(cell) > 0) ? 1 / cells.Sum(cell => 1 / resistance(cell)!.Value) : null;
}
