using PackPlanner.Core.Packs;

namespace PackPlanner.Core.Grouping;

/// <summary>Which spare goes in for a cell that must come out.</summary>
public static class SpareAdvice
{
    /// <summary>The best spares for one cell of a matched pack.</summary>
    /// <param name="pack">The groups as they are.</param>
    /// <param name="failed">Label of the cell that comes out; it must be in one of the groups.</param>
    /// <param name="most">How many to name.</param>
    /// <returns>
    /// By the pack's capacity after, then by the nearest to the other groups' level, then by the group resistance nearest to
    /// what it was. Empty when there is no spare.
    /// </returns>
    /// <exception cref="ArgumentException">The cell is in no group.</exception>
    public static IReadOnlyList<SpareOption> Best(MatchedPack pack, string failed, int most = 3)
    {
        MatchedGroup group = pack.Groups.FirstOrDefault(g => g.Cells.Any(cell => cell.Label == failed))
            ?? throw new ArgumentException("The cell is in no group.", nameof(failed));
        GroupingCell[] stay = [.. group.Cells.Where(cell => cell.Label != failed)];
        double[] others = [.. pack.Groups.Where(g => g.Number != group.Number).Select(g => g.CapacityAh)];
        double level = others.Length > 0 ? others.Average() : group.CapacityAh;
        double?[] volts = [.. stay.Select(cell => cell.RestV)];
        double? bringTo = volts.Length > 0 && Array.TrueForAll(volts, v => v is not null) ? volts.Average() : null;
        return
        [
            .. pack.LeftOut
                .Select(spare => Option(spare, group, stay, others, bringTo))
                .OrderByDescending(option => option.PackAh)
                .ThenBy(option => Math.Abs(option.GroupAh - level))
                .ThenBy(option => option.GroupResistanceMilliohm is { } after && group.ResistanceMilliohm is { } before ? Math.Abs(after - before) : double.PositiveInfinity)
                .ThenBy(option => option.Cell, StringComparer.Ordinal)
                .Take(most),
        ];
    }

    private static SpareOption Option(
        GroupingCell spare, MatchedGroup group, GroupingCell[] stay, double[] others, double? bringTo)
    {
        GroupingCell[] after = [.. stay, spare];
        double[] capacities = [.. after.Select(cell => cell.CapacityAh)];
        CapacitySteps steps = CapacitySteps.Of(capacities);
        double groupAh = steps.InAh(steps.Steps.Sum());
        double? resistance = ParallelResistance.Of(after, cell => cell.ResistanceMilliohm);
        return new SpareOption(
            spare.Label, group.Number, groupAh, others.Append(groupAh).Min(), resistance, bringTo);
    }
}
