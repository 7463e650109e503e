namespace PackPlanner.Core.Fitting;

/// <summary>
/// Looks quickly at changed cases, by regular nests or quick slabs, to say what would help. All looks at boxes together are held to a budget
/// of work, so that a reason comes in time; those at nests cost far less and are not counted. What is not looked at is not claimed to help.
/// </summary>
internal sealed class QuickLooks(CancellationToken cancel)
{
    private const long Budget = 90_000_000;

    // One look takes no more than this of the budget: boxes in many poses under many slopes are then looked at more coarsely.
    private const long OneLook = Budget / 30;

    private long left = Budget;

    /// <summary>Whether the search was stopped: then nothing is known of what does not fit.</summary>
    internal bool IsStopped => cancel.IsCancellationRequested;

    /// <summary>Whether a quick look finds room for so many cells.</summary>
    internal bool Finds(FitCase fitCase, int need) => Count(fitCase, need) >= need;

    /// <summary>How many cells a quick look finds room for; null where it is known to be fewer than wanted, or no look is left.</summary>
    internal int? Count(FitCase fitCase, int least)
    {
        Scene scene = new(fitCase);
        if (fitCase.Cell is CellBody.Cylinder cylinder)
            return Nests(scene, cylinder);
        if (left <= 0 || BoxBound.Of(scene, Attitude.Of(fitCase)).Bound < least)
            return null;
        int count = BoxSearch.QuickCount(scene, OneLook, cancel, out long work);
        left -= work;
        return count;
    }

    private int Nests(Scene scene, CellBody.Cylinder cell)
    {
        int best = 0;
        foreach (Attitude attitude in Attitude.Of(scene.Case))
        {
            CylinderSearch search = new(scene, cell, attitude, cancel);
            search.Nests(thorough: false, linkable: false);
            best = Math.Max(best, search.RegularCount);
        }

        return best;
    }
}
