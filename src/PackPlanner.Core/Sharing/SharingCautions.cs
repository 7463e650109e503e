using PackPlanner.Core.Cautions;
using PackPlanner.Core.Packs;

namespace PackPlanner.Core.Sharing;

/// <summary>Cautions that the division of a load raises.</summary>
public static class SharingCautions
{
    /// <summary>Cautions 22 and 24.</summary>
    /// <param name="groups">The networks.</param>
    /// <param name="shares">Their shares, in the same order.</param>
    /// <param name="ratingA">Highest continuous current of one cell; null when unknown.</param>
    /// <param name="ratedAh">Capacity of one cell when new; null: the rating is not lowered by age.</param>
    /// <param name="cellFuses">Each cell has a fuse of its own.</param>
    /// <returns>The cautions raised.</returns>
    public static IEnumerable<Caution> Of(
        IReadOnlyList<ParallelCells> groups, IReadOnlyList<GroupShare> shares, double? ratingA, double? ratedAh, bool cellFuses)
    {
        for (int g = 0; g < groups.Count; g++)
        {
            ParallelCells group = groups[g];
            string where = $"group {group.Number}";
            if (!cellFuses && ShortCircuit.NoCellFuses(
                where,
                group.Cells.Count,
                group.Cells.Max(cell => cell.OpenCircuitV),
                group.Cells.Min(cell => cell.ResistanceMilliohm),
                group.Cells.Max(cell => cell.CapacityAh)) is { } noFuses)
                yield return noFuses;
            if (ratingA is { } rating && AboveRating(group, shares[g], rating, ratedAh) is { } above)
                yield return above;
        }
    }

    private static Caution? AboveRating(ParallelCells group, GroupShare share, double ratingA, double? ratedAh)
    {
        double AgedA(int i) => ratingA * Math.Min(1, group.Cells[i].CapacityAh / ratedAh ?? 1);
        int worst = Enumerable.Range(0, group.Cells.Count).MaxBy(i => Math.Abs(share.CurrentA[i]) / AgedA(i));
        return Math.Abs(share.CurrentA[worst]) > AgedA(worst)
            ? new Caution("caution-24", SignalWord.Warning, $"group {group.Number}, cell {group.Cells[worst].Label}",
                $"it carries {Math.Abs(share.CurrentA[worst]):0.0#} A; its rating is {AgedA(worst):0.0#} A")
            : null;
    }
}
