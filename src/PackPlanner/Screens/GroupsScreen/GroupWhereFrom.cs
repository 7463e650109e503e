using PackPlanner.Core.Grouping;
using PackPlanner.Core.Jobs;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.GroupsScreen;

/// <summary>Where a group's figures come from.</summary>
internal static class GroupWhereFrom
{
    internal static WhereFrom Of(GroupsView view, MatchedGroup group, Look look)
    {
        int decimals = view.AhDecimals;
        List<(string, string)> lines =
        [
            ("sum", string.Join(" + ", group.Cells.Select(cell => look.Figure(cell.CapacityAh, decimals))) + $" = {look.Figure(group.CapacityAh, decimals)} Ah"),
            ("±", $"{look.Figure(view.RangeAh(group), 2)} Ah nine times in ten: each test's spread, added as squares, times 1.645"),
        ];
        lines.Add(("mΩ", group.ResistanceMilliohm is null
            ? "unknown: a cell of this group has no resistance"
            : $"1 / (sum of 1 / mΩ of the cells) = {look.Figure(group.ResistanceMilliohm, 2)}"));
        if (group.LargestShare is { } share)
            lines.Add(("hardest", $"{share.Cell} takes {look.Figure(share.TimesEqual, 2)} times an equal share of the first current: the lowest mΩ of the group takes most"));
        lines.Add(("limit", $"no grouping of these cells has a smallest group above {look.Figure(view.Pack.SmallestBoundAh, decimals)} Ah (proven limit)"));
        lines.Add(("rule", $"{Rule(view.Question)}; docs/methods/grouping.md"));
        return new WhereFrom($"{look.Figure(group.CapacityAh, decimals)} Ah of group {group.Number}", lines);
    }

    private static string Rule(GroupsQuestion asked) => asked switch
    {
        { Followed: { } arranged } => $"as arranged ({arranged.From.From}): followed as it stands",
        { Favour: GroupsFavour.EvenCurrents } => "even currents first: cells of like milliohm within each group; then the smallest group as large as can be",
        { Favour: GroupsFavour.FewestMoves, Arranged: not null } => "the fewest cells moved from what was arranged; b chooses what is favoured",
        _ => "the smallest group as large as can be, then the largest as near it as can be",
    };
}
