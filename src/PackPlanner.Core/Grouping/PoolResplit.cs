namespace PackPlanner.Core.Grouping;

/// <summary>Re-splits the cells of several groups at once, exactly, within limits: from the tightest window outwards.</summary>
internal static class PoolResplit
{
    // More ways than this make a split easy to find, and listing them dear.
    private const int MostCandidates = 30_000;

    /// <summary>How many groups of P cells can be searched completely in some milliseconds; a few groups more are far likelier to fit.</summary>
    internal static int MostGroupsAtOnce(int parallel) => parallel switch
    {
        <= 3 => 12,
        4 => 8,
        5 or 6 => 8,
        7 => 4,
        8 => 3,
        <= 10 => 2,
        _ => 0,
    };

    /// <summary>How many groups of P cells can be searched completely in well under a millisecond.</summary>
    internal static int GroupsAtOnce(int parallel) => parallel switch
    {
        <= 3 => 8,
        4 => 6,
        5 => 4,
        6 => 3,
        <= 9 => 2,
        _ => 0,
    };

    /// <summary>Looks for a split with every sum in [low, high] and as close to their average as the doubling finds it.</summary>
    /// <param name="problem">The cells and groups.</param>
    /// <param name="cells">Free cells of the pool, ascending; more than the places means spares.</param>
    /// <param name="groups">The groups to fill.</param>
    /// <param name="low">Steps: no group may be below.</param>
    /// <param name="high">Steps: none may be above.</param>
    /// <param name="budget">Steps to spend.</param>
    /// <param name="groupOf">Written for the cells of the pool when found.</param>
    internal static bool TrySplit(
        GroupingProblem problem, ReadOnlySpan<int> cells, ReadOnlySpan<int> groups, long low, long high, SearchBudget budget, int[] groupOf)
    {
        long[] capacity = new long[cells.Length];
        for (int i = 0; i < capacity.Length; i++)
            capacity[i] = problem.Capacity[cells[i]];
        long[] bases = new long[groups.Length];
        int[] places = new int[groups.Length];
        long total = 0;
        int needed = 0;
        for (int g = 0; g < bases.Length; g++)
        {
            (bases[g], places[g]) = (problem.BaseSum[groups[g]], problem.Places[groups[g]]);
            total += bases[g];
            needed += places[g];
        }

        for (int i = 0; i < needed; i++)
            total += capacity[i];
        long average = total / groups.Length;
        if (average < low || (capacity.Length == needed && average > high))
            return false;

        WindowCover cover = new(capacity, bases, places, MostCandidates);
        int[] local = new int[capacity.Length];
        for (long width = 0; ; width = (2 * width) + 1)
        {
            long from = Math.Max(low, average - width);
            long to = Math.Min(high, average + 1 + width);
            bool last = from == low && (to == high || width > 2 * (average - low) + 1);
            if (last)
                to = high;
            CoverVerdict verdict = to < from ? CoverVerdict.None : cover.Search(from, to, budget, local);
            if (verdict == CoverVerdict.Found)
                break;
            if (verdict == CoverVerdict.GaveUp || last || budget.Spent)
                return false;
        }

        for (int i = 0; i < local.Length; i++)
            groupOf[cells[i]] = local[i] < 0 ? -1 : groups[local[i]];
        return true;
    }
}
