using PackPlanner.Core.Cautions;
using PackPlanner.Core.Fitting;
using PackPlanner.Core.Jobs;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.PlaceScreen;

/// <summary>The place under the cursor and the links, in words.</summary>
internal static class PlaceWords
{
    internal static string Of(PlacedPack pack, PlacedCell cell, Look look)
    {
        string seat = pack.SeatOf(cell) is { } number ? $"group {number}" : "spare place";
        string which = pack.CellAt(cell) is { } known ? $"{known.Label}  {look.Figure(known.CapacityAh, 3)} Ah  {look.Figure(known.ResistanceMilliohm, 1)} mΩ" : "no cell yet";
        string up = pack.IsPlusUp(cell) switch { true => "  + up", false => "  - up", null => pack.PlusToward(cell) is { } end ? $"  plus at {end}" : "" };
        return $"{which}  {seat}{up}  at {look.Bare(cell.Centre.X, 0)}, {look.Length(cell.Centre.Y, 0)}";
    }

    /// <summary>The layout raises most of them itself; before taps are plugged in that one stands whatever the figures are, and each reading that is wrong.</summary>
    /// <param name="pack">The pack.</param>
    /// <param name="job">The job, which holds what was read at the taps.</param>
    internal static IReadOnlyList<Caution> Cautions(PlacedPack pack, Job job) => [.. LayoutOfJob.Cautions(pack.Answer, job.Givens), .. JobTaps.CautionsAgainst(job, pack.InSeries, pack.Spans)];

    /// <summary>Links between groups on the side that is looked at; all of them where poles do not tell a side.</summary>
    /// <param name="pack">The pack.</param>
    /// <param name="fromBelow">Which side.</param>
    internal static string Links(PlacedPack pack, bool fromBelow)
    {
        int[] links = [.. Enumerable.Range(1, Math.Max(0, pack.Series - 1))];
        ILookup<int, bool?> up = pack.Layers.SelectMany(layer => layer).Where(cell => pack.SeatOf(cell) is not null)
            .ToLookup(cell => pack.SeatOf(cell)!.Value, pack.IsPlusUp);
        if (links.Any(link => up[link].FirstOrDefault() is null))
            return "links: " + string.Join(" ", links.Select(Name));
        // The plus of a group is joined to the minus of the next: on top where its plus looks up. Where one of two groups was turned over, that
        // minus lies on the other side, and a link that were built on one side would join plus to plus.
        string across = pack.Across.Count == 0 ? "" : $"; side to side: {string.Join(" ", pack.Across.Select(Name))}";
        return $"links {(fromBelow ? "below" : "above")}: " + string.Join(" ", links.Except(pack.Across).Where(link => up[link].First() == !fromBelow).Select(Name)) + across;

        static string Name(int link) => $"{link:00}={link + 1:00}";
    }
}
