using PackPlanner.Core.Grouping;
using PackPlanner.Core.Jobs;
using PackPlanner.Screens.Overlays;

namespace PackPlanner.Screens.GroupsScreen;

/// <summary>Moving cells by hand; what it does to both groups is shown before it is done.</summary>
internal static class GroupMoves
{
    internal static void AskExchange(Desk desk, GroupsView view, MatchedGroup group) => desk.Show(new ListOverlay(
        desk, $"exchange which cell of group {group.Number}?", () => [.. group.Cells.Select(cell => Free(view, cell, new ListItem(Words(desk, view, cell), "", () => AskOther(desk, view, group, cell))))],
        narrows: true));

    internal static void AskSpare(Desk desk, GroupsView view, MatchedGroup group) => desk.Show(new ListOverlay(
        desk, $"which cell of group {group.Number} comes out?",
        () => [.. group.Cells.OrderByDescending(cell => view.ToReplace.Contains(cell.Label)).Select(cell => Out(desk, view, cell))],
        narrows: true));

    private static void AskOther(Desk desk, GroupsView view, MatchedGroup group, GroupingCell first) => desk.Show(new ListOverlay(
        desk, $"{first.Label} with", () =>
        [
            .. view.Pack.Groups.Where(other => other.Number != group.Number).SelectMany(other => other.Cells.Select(cell => Free(view, cell, new ListItem(
                $"group {other.Number,-3} {Words(desk, view, cell)}", After(desk, view, group, first, other, cell),
                () => Exchange(desk, view, first.Label, cell.Label)) { Tells = () => Whole(desk, view, group, first, other, cell) }))),
        ],
        narrows: true));

    // A cell that may not stay comes out whether it is locked or not.
    private static ListItem Out(Desk desk, GroupsView view, GroupingCell cell) => view.ToReplace.Contains(cell.Label)
        ? new ListItem($"{Words(desk, view, cell)}  ! {view.Word(cell.Label)}", "", () => AskWhichSpare(desk, view, cell))
        : Free(view, cell, new ListItem(Words(desk, view, cell), "", () => AskWhichSpare(desk, view, cell)));

    // What was locked stays where it is, whoever asks.
    private static ListItem Free(GroupsView view, GroupingCell cell, ListItem item) => view.Question.Locks.ContainsKey(cell.Label)
        ? new ListItem($"{item.Text}  locked; l frees it")
        : item;

    private static string After(Desk desk, GroupsView view, MatchedGroup group, GroupingCell first, MatchedGroup other, GroupingCell second)
    {
        double here = group.CapacityAh - first.CapacityAh + second.CapacityAh;
        double there = other.CapacityAh - second.CapacityAh + first.CapacityAh;
        return $"then {desk.Look.Figure(here, view.AhDecimals)} and {desk.Look.Figure(there, view.AhDecimals)} Ah";
    }

    // Both groups as they would be: Ah, milliohm, and who would work hardest.
    private static string Whole(Desk desk, GroupsView view, MatchedGroup group, GroupingCell first, MatchedGroup other, GroupingCell second)
    {
        return $"then {Then(group, first, second)}; {Then(other, second, first)}";

        string Then(MatchedGroup of, GroupingCell goes, GroupingCell comes)
        {
            MatchedGroup changed = of.Exchanged(goes, comes);
            string hardest = changed.LargestShare is { } share ? $" {share.Cell} {desk.Look.Figure(share.TimesEqual, 2)}x" : "";
            return $"{changed.Number}: {desk.Look.Figure(changed.CapacityAh, view.AhDecimals)} Ah {desk.Look.Figure(changed.ResistanceMilliohm, 2)} mΩ{hardest}";
        }
    }

    private static void AskWhichSpare(Desk desk, GroupsView view, GroupingCell failed) => desk.Show(new ListOverlay(
        desk, $"in the place of {failed.Label}", () =>
        [
            .. SpareAdvice.Best(view.Pack, failed.Label).Select(option => new ListItem(
                $"{option.Cell}: group {option.Group} then {desk.Look.Figure(option.GroupAh, view.AhDecimals)} Ah, {desk.Look.Figure(option.GroupResistanceMilliohm, 2)} mΩ; pack {desk.Look.Figure(option.PackAh, view.AhDecimals)} Ah",
                option.BringToV is { } volts ? $"bring to {desk.Look.Figure(volts, 2)} V" : "",
                () => Exchange(desk, view, failed.Label, option.Cell))
            {
                Tells = () => $"{option.Cell} holds {desk.Look.Figure(view.Cell(option.Cell).CapacityAh, view.AhDecimals)} Ah and rests at {desk.Look.Figure(view.Cell(option.Cell).RestV, 3)} V",
            }),
        ]));

    private static string Words(Desk desk, GroupsView view, GroupingCell cell) =>
        $"{cell.Label,-12} {desk.Look.Figure(cell.CapacityAh, view.AhDecimals)} Ah  {desk.Look.Figure(cell.ResistanceMilliohm, 1)} mΩ";

    private static void Exchange(Desk desk, GroupsView view, string one, string other)
    {
        string Changed(string label) => label == one ? other : label == other ? one : label;
        IReadOnlyList<IReadOnlyList<string>> groups = [.. view.Pack.Groups.Select(group => (IReadOnlyList<string>)[.. group.Cells.Select(cell => Changed(cell.Label))])];
        desk.CloseAll();
        desk.Do(JobChanges.SetGrouping($"exchange {one} and {other}", new JobGrouping(groups, Origin.You(desk.Today))));
        desk.Says ??= $"exchanged {one} and {other}; u takes it back";
    }
}
