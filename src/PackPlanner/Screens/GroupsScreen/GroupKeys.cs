using PackPlanner.Core.Grouping;
using PackPlanner.Core.Jobs;
using PackPlanner.Screens.Keys;
using PackPlanner.Screens.Overlays;
using PackPlanner.Screens.Tables;

namespace PackPlanner.Screens.GroupsScreen;

/// <summary>What can be done on the Groups step.</summary>
internal static class GroupKeys
{
    private static readonly string[] Loads = ["steadyA", "peakA"];

    internal static IReadOnlyList<KeyAction> WithoutGroups(Desk desk) =>
        [Numbers(desk), .. desk.Job?.Grouping is null ? [] : new[] { Better(desk) }, .. Free(desk)];

    internal static IReadOnlyList<KeyAction> Of(Desk desk, ListTable table, GroupsView view, MatchedGroup? group) =>
    [
        Better(desk),
        new(KeyBook.Exchange, "exchange", "exchanges a cell of this group with one of another; both groups are shown first",
            () => group is null || view.Pack.Groups.Count < 2 ? "there is no other group" : null, () => GroupMoves.AskExchange(desk, view, group!)),
        new(KeyBook.Swap, "swap in a spare", "takes a cell of this group out and puts a spare in; the best three are shown with what they give",
            () => view.Pack.LeftOut.Count == 0 ? "there is no spare" : group is null ? "no group is shown" : null, () => GroupMoves.AskSpare(desk, view, group!)),
        new(KeyBook.Join, "join check", "says what current flows if the cells of this group are joined now, and in which order",
            () => group is null ? "no group is shown" : null, () => desk.Show(JoinOverlay.Of(view.JoinPlanOf(group!, desk.Job!.Givens), desk.Look))),
        new(KeyBook.Lock, "lock", "locks cells of this group where they are, or frees them", () => group is null ? "no group is shown" : null, () => AskLock(desk, group!)),
        new(KeyBook.Open, "open", "shows every cell of the group", () => group is null ? "no group is shown" : null, () => Show(desk, view, group!)),
        Numbers(desk),
        .. Free(desk),
        .. TableKeys.Of(desk, table),
    ];

    private static KeyAction Better(Desk desk) =>
        new(KeyBook.Better, "better", "chooses what the grouping favours: equal Ah, even currents, fewest moves", () => AskBetter(desk));

    private static KeyAction Numbers(Desk desk) => new(KeyBook.Numbers, "series, parallel", "changes series, parallel and repeatability",
        () => desk.Job is null ? "no job is open; 1 Job opens one" : null,
        () => GivenField.Choose(desk, "numbers of this screen", ["series", "parallel", "repeatability"]));

    // What was arranged by hand can always be given back to the search, also when it has become impossible.
    private static IEnumerable<KeyAction> Free(Desk desk) => desk.Job?.Grouping is null && desk.Job?.Locks.IsEmpty != false
        ? []
        : [new(KeyBook.Delete, "free all", "forgets the arrangement and the locks, and lets the search decide again",
            () => desk.Do(new JobChange("let the search group again", job => JobChanges.SetGrouping("", null).Apply(job) with { Locks = job.Locks.Clear() })))];

    private static void AskBetter(Desk desk) => desk.Show(new ListOverlay(desk, "what should the grouping favour?", () =>
    [
        new("equal Ah, then like milliohm of the groups", "", () => desk.Do(JobChanges.Prefer(GroupsFavour.EqualAh))) { IsNow = desk.Job?.Favour == GroupsFavour.EqualAh },
        new("even currents: like milliohm within each group, then Ah", "", () => desk.Do(JobChanges.Prefer(GroupsFavour.EvenCurrents))) { IsNow = desk.Job?.Favour == GroupsFavour.EvenCurrents },
        desk.Job?.Grouping is null
            ? new ListItem("fewest moves: only where something was arranged by hand or read from a file", "", () => desk.Says = "Nothing is arranged yet: m or x moves a cell, 2 Cells i reads groups from a file; the grouping was left as it is.")
            : new ListItem("fewest moves from what is arranged now", "", () => desk.Do(JobChanges.Prefer(GroupsFavour.FewestMoves))) { IsNow = desk.Job.Favour == GroupsFavour.FewestMoves },
    ]));

    private static void AskLock(Desk desk, MatchedGroup group) => desk.Show(new ListOverlay(desk, $"locked in group {group.Number}", () =>
    [
        .. group.Cells.Select(cell =>
        {
            bool locked = desk.Job!.Locks.ContainsKey(cell.Label);
            return new ListItem($"[{(locked ? "x" : " ")}] {cell.Label}", "", () => desk.Do(JobChanges.Lock(cell.Label, locked ? null : group.Number)));
        }),
    ], staysOpen: true));

    // How many times an equal share of the first current, and what that is at the loads that are known.
    private static string Share(Desk desk, MatchedGroup group, GroupingCell cell)
    {
        if (group.PartOf(cell) is not { } part)
            return "";
        string amperes = string.Concat(Loads.Select(key => desk.Job!.Givens.NumberOf(key)).OfType<double>()
            .Select(load => $", {desk.Look.Figure(load * part, 1)} of {desk.Look.Figure(load, 0)} A"));
        return $"   {desk.Look.Figure(part * group.Cells.Count, 2)}x{amperes}";
    }

    private static void Show(Desk desk, GroupsView view, MatchedGroup group) => desk.Show(new TextOverlay(
        $"group {group.Number}: {desk.Look.Figure(group.CapacityAh, view.AhDecimals)} Ah, {desk.Look.Figure(group.ResistanceMilliohm, 2)} mΩ",
        [.. group.Cells.Select(cell => (cell.Label,
            $"{desk.Look.Figure(cell.CapacityAh, view.AhDecimals)} Ah   {desk.Look.Figure(cell.ResistanceMilliohm, 1)} mΩ   {desk.Look.Figure(cell.RestV, 3)} V"
            + Share(desk, group, cell)
            + (view.ToReplace.Contains(cell.Label) ? $"   ! {view.Word(cell.Label)}: x replaces it" : "")
            + (view.Question.Locks.ContainsKey(cell.Label) ? "   locked" : "")
            + (view.Cell(cell.Label).Tray is { } tray ? $"   tray {tray}" : "")))]));
}
