using PackPlanner.Core.Jobs;
using PackPlanner.Screens.Overlays;

namespace PackPlanner.Screens.PlaceScreen;

/// <summary>What can be changed of how the groups stand: turned over, exchanged, counted from the other end.</summary>
internal static class GroupsInPlace
{
    internal static void Turn(Desk desk, int seat)
    {
        JobPlacement before = desk.Job!.Placement;
        Change(desk, $"turn group {seat} over", before with { Turned = before.Turned.SymmetricExcept([seat]) });
    }

    internal static void SwapEnds(Desk desk)
    {
        JobPlacement before = desk.Job!.Placement;
        Change(desk, "swap the ends", before with { EndsSwapped = !before.EndsSwapped });
    }

    private static void Change(Desk desk, string name, JobPlacement after)
    {
        int readings = desk.Job!.TapReadings.Count;
        desk.Do(JobChanges.SetPlacement(name, after));
        if (readings > 0)
            desk.Says = $"{name}: {readings} tap reading{(readings == 1 ? "" : "s")} taken out, measure again; u brings all back.";
    }

    /// <summary>Asks with which other group the one at a place changes places; the sums of both are in the list.</summary>
    internal static void AskExchange(Desk desk, PlacedPack pack, int? under)
    {
        if (under is not { } seat)
        {
            desk.Says = "The cursor stands on a spare place; choose a cell of the group first.";
            return;
        }

        desk.Show(new ListOverlay(desk, $"exchange the group at {seat} with the one at", () =>
        [
            .. Enumerable.Range(1, pack.Series).Where(other => other != seat).Select(other => new ListItem(
                $"{other}: {Words(pack.GroupOf(other), desk)}", "", () => Exchange(desk, pack, seat, other)) { Tells = () => $"now at {seat}: {Words(pack.GroupOf(seat), desk)}" }),
        ]));
    }

    private static string Words(JobGroup? group, Desk desk) =>
        $"{desk.Look.Figure(group?.CapacityAh, 3)} Ah  {desk.Look.Figure(group?.ResistanceMilliohm, 2)} mΩ  {desk.Look.Figure(group?.RestV, 3)} V";

    private static void Exchange(Desk desk, PlacedPack pack, int seat, int other)
    {
        JobPlacement before = desk.Job!.Placement.Within(pack.Series);
        int here = pack.GroupOf(seat)!.Number;
        int there = pack.GroupOf(other)!.Number;
        Change(desk, $"exchange the groups at {seat} and {other}", before with { Exchanged = before.Exchanged.SetItem(seat, there).SetItem(other, here) });
    }
}
