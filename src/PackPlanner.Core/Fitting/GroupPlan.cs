namespace PackPlanner.Core.Fitting;

/// <summary>Which cell belongs to which group.</summary>
/// <param name="GroupOf">1..series, 0 for spares; one for each cell.</param>
/// <param name="Parallel">Cells in each group.</param>
/// <param name="Pairs">Neighbouring pairs between each group and the next; 0 where a cable must do.</param>
/// <param name="BusbarRatio">Length of the plates over the least possible; null when there is nothing to join.</param>
internal sealed record GroupPlan(int[] GroupOf, int Parallel, int[] Pairs, double? BusbarRatio)
{
    /// <summary>Fewest neighbouring pairs between two groups that a plate joins; it carries the whole current.</summary>
    internal int Narrowest => Pairs.Where(p => p > 0).DefaultIfEmpty(0).Min();

    internal int Jumpers => Pairs.Count(p => p == 0);
}
