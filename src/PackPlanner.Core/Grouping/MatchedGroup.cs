using PackPlanner.Core.Packs;

namespace PackPlanner.Core.Grouping;

/// <summary>One parallel group of the answer.</summary>
/// <param name="Number">From 1.</param>
/// <param name="Cells">Its cells, largest first.</param>
/// <param name="CapacityAh">Sum of the capacities as typed, exact.</param>
/// <param name="ResistanceMilliohm">Of the cells in parallel; null when one is unknown.</param>
/// <param name="LargestShare">Who carries most of the first current; null when a resistance is unknown.</param>
public sealed record MatchedGroup(
    int Number,
    IReadOnlyList<GroupingCell> Cells,
    double CapacityAh,
    double? ResistanceMilliohm,
    CurrentShare? LargestShare)
{
    /// <summary>Part of the group's first current that one of its cells carries, above 0 and at most 1; null when a resistance is unknown.</summary>
    /// <param name="cell">A cell of the group.</param>
    public double? PartOf(GroupingCell cell) => ResistanceMilliohm / cell.ResistanceMilliohm;

    /// <summary>The same group with one cell in the place of another.</summary>
    /// <param name="goes">A cell of the group.</param>
    /// <param name="comes">A cell of another group, or a spare.</param>
    public MatchedGroup Exchanged(GroupingCell goes, GroupingCell comes)
    {
        GroupingCell[] cells = [.. Cells.Where(cell => cell.Label != goes.Label), comes];
        return new MatchedGroup(
            Number, cells, CapacityAh - goes.CapacityAh + comes.CapacityAh, ParallelResistance.Of(cells, cell => cell.ResistanceMilliohm), PackAssembly.ShareOf(Number, cells));
    }
}

/// <summary>The cell that carries most of the first current of its group.</summary>
/// <param name="Group">Number of the group, from 1.</param>
/// <param name="Cell">Its label.</param>
/// <param name="TimesEqual">Its current over the equal share of all cells of the group.</param>
public sealed record CurrentShare(int Group, string Cell, double TimesEqual);
