namespace PackPlanner.Core.Sharing;

/// <summary>The cells of one parallel group side by side between a positive and a negative bar.</summary>
/// <param name="Number">Number of the group, from 1.</param>
/// <param name="Cells">In the order in which they stand, at least one.</param>
/// <param name="PositiveLinkMilliohm">Resistance of the positive bar between neighbours, shape [cells - 1]; 0 is allowed.</param>
/// <param name="NegativeLinkMilliohm">Resistance of the negative bar between neighbours, shape [cells - 1]; 0 is allowed.</param>
/// <param name="PositiveAt">The cell, from 1, at which the load leaves the positive bar.</param>
/// <param name="NegativeAt">The cell, from 1, at which the load leaves the negative bar.</param>
public sealed record ParallelCells(
    int Number,
    IReadOnlyList<CellBranch> Cells,
    IReadOnlyList<double> PositiveLinkMilliohm,
    IReadOnlyList<double> NegativeLinkMilliohm,
    int PositiveAt,
    int NegativeAt)
{
    /// <summary>A group whose links are all alike.</summary>
    /// <param name="number">Number of the group, from 1.</param>
    /// <param name="cells">In the order in which they stand.</param>
    /// <param name="linkMilliohm">Resistance of each piece of either bar, milliohm.</param>
    /// <param name="positiveAt">Cell, from 1, at the positive take-off.</param>
    /// <param name="negativeAt">Cell, from 1, at the negative take-off.</param>
    /// <returns>The group.</returns>
    public static ParallelCells Alike(
        int number, IReadOnlyList<CellBranch> cells, double linkMilliohm, int positiveAt, int negativeAt)
    {
        double[] links = new double[Math.Max(0, cells.Count - 1)];
        Array.Fill(links, linkMilliohm);
        return new ParallelCells(number, cells, links, links, positiveAt, negativeAt);
    }
}
