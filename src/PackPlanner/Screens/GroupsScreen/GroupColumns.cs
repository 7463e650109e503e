using System.Globalization;
using PackPlanner.Core.Grouping;
using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.Tables;

namespace PackPlanner.Screens.GroupsScreen;

/// <summary>The columns of the groups table.</summary>
internal static class GroupColumns
{
    internal static IReadOnlyList<Column> Of(GroupsView view, Look look)
    {
        IReadOnlyList<MatchedGroup> groups = view.Pack.Groups;
        int decimals = view.AhDecimals;
        return
        [
            new("group", row => Mark(view, groups[row]) + groups[row].Number.ToString(CultureInfo.InvariantCulture), row => groups[row].Number, Rank: 0),
            new("Ah", row => look.Figure(groups[row].CapacityAh, decimals), row => groups[row].CapacityAh, Rank: 0),
            new("± Ah", row => look.Figure(view.RangeAh(groups[row]), 2), row => view.RangeAh(groups[row]), Rank: 3),
            new("mΩ", row => look.Figure(groups[row].ResistanceMilliohm, 2), row => groups[row].ResistanceMilliohm, Rank: 1),
            new("hardest-worked", row => Hardest(groups[row], look), row => groups[row].LargestShare?.TimesEqual, Rank: 2) { IsRight = false },
            new("cells", row => string.Join(" ", groups[row].Cells.Select(cell => view.Named(cell.Label))), Least: 12, Rank: 1)
            {
                Stretches = true,
                CutsAtWords = true,
                // What tells long labels apart is often at their end.
                Drawn = row => string.Join(" ", groups[row].Cells.Select(cell => TextWidth.CutMiddle(view.Named(cell.Label), MostOfALabel))),
            },
        ];
    }

    private const int MostOfALabel = 12;

    private static string Mark(GroupsView view, MatchedGroup group) => group.Cells.Any(cell => view.ToReplace.Contains(cell.Label)) ? "! " : "";

    internal static string Hardest(MatchedGroup group, Look look) =>
        group.LargestShare is { } share ? $"{look.Figure(share.TimesEqual, 2)}x  {share.Cell}" : "-";
}
