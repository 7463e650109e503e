namespace PackPlanner.Core.Grouping;

/// <summary>
/// Which cells to leave out so that the total of the used ones is exactly S times the sum bound: only then can all groups
/// be equal.
/// </summary>
internal static class SpareChoice
{
    private const int MostExchanges = 8;
    private const int MostItems = 128;

    /// <summary>The free cells to use, ascending, or null when no choice has that total or none was found.</summary>
    /// <param name="problem">The cells and groups.</param>
    /// <param name="less">Steps by which the total must fall below that of the largest cells; 0 or more.</param>
    /// <param name="noneExists">True when it is proven that no choice has that total.</param>
    internal static int[]? Using(GroupingProblem problem, long less, out bool noneExists)
    {
        noneExists = false;
        int needed = problem.Needed;
        if (less == 0)
            return Largest(problem);
        if (problem.Spares == 0)
        {
            noneExists = true;
            return null;
        }

        return ByOneExchange(problem, less, needed) ?? BySeveral(problem, less, needed, out noneExists);
    }

    /// <summary>The largest cells, as many as there are open places.</summary>
    internal static int[] Largest(GroupingProblem problem)
    {
        int[] used = new int[problem.Needed];
        for (int i = 0; i < used.Length; i++)
            used[i] = i;
        return used;
    }

    private static int[]? ByOneExchange(GroupingProblem problem, long less, int needed)
    {
        long[] cells = problem.Capacity;
        (int leave, int take) = (needed - 1, needed);
        while (leave >= 0 && take < cells.Length)
        {
            long difference = cells[leave] - cells[take];
            if (difference == less)
                return Exchanged(problem, [leave], [take]);
            if (difference < less)
                leave--;
            else
                // Still smaller spares are further off yet; a larger used cell too: this used cell is the end for this spare.
                break;
            if (leave < 0 || cells[leave] - cells[take] > less)
            {
                take++;
                leave = needed - 1;
            }
        }

        return null;
    }

    /// <summary>
    /// Reachable totals with k cells left out and k spares taken, counted from the smallest used cell: both kinds then only
    /// lower the total, and only cells near the border matter.
    /// </summary>
    private static int[]? BySeveral(GroupingProblem problem, long less, int needed, out bool noneExists)
    {
        long[] cells = problem.Capacity;
        long border = cells[needed - 1];
        List<int> leavable = Near(cells, needed - 1, -1, less, problem.Spares), takable = Near(cells, needed, 1, less, needed);
        int most = Math.Min(MostExchanges, Math.Min(leavable.Count, takable.Count));
        noneExists = leavable.Count < MostItems && takable.Count < MostItems
            && most == Math.Min(leavable.Count, takable.Count);
        if (less > 4_000)
        {
            noneExists = false;
            return null;
        }

        Reach left = new(leavable, i => (int)(cells[i] - border), most, (int)less);
        Reach taken = new(takable, i => (int)(border - cells[i]), most, (int)less);
        for (int k = 1; k <= most; k++)
        {
            for (int cost = 0; cost <= less; cost++)
            {
                if (!left.Has(k, cost) || !taken.Has(k, (int)less - cost))
                    continue;
                noneExists = false;
                return Exchanged(problem, left.Choice(k, cost), taken.Choice(k, (int)less - cost));
            }
        }

        return null;
    }

    // Of cells that are alike no more can be exchanged than there are partners, nor than MostExchanges; one more is listed, so that a list cut short is
    // never taken for a whole one.
    private static List<int> Near(long[] cells, int from, int by, long less, int partners)
    {
        List<int> near = [];
        int most = Math.Min(partners, MostExchanges) + 1;
        long border = cells[by < 0 ? from : from - 1];
        for (int i = from, alike = 0; i >= 0 && i < cells.Length && Math.Abs(cells[i] - border) <= less && near.Count < MostItems; i += by)
        {
            alike = i != from && cells[i] == cells[i - by] ? alike + 1 : 1;
            if (alike <= most)
                near.Add(i);
        }

        return near;
    }

    private static int[] Exchanged(GroupingProblem problem, IReadOnlyCollection<int> leave, IReadOnlyCollection<int> take)
    {
        // The spares come after all used cells, so the order stays ascending without a sort.
        int[] used = new int[problem.Needed];
        int at = 0;
        for (int i = 0; i < problem.Needed; i++)
            if (!leave.Contains(i))
                used[at++] = i;
        foreach (int spare in take.Order())
            used[at++] = spare;
        return used;
    }

    /// <summary>Which total costs k of the items can have, and with which items.</summary>
    private sealed class Reach
    {
        private readonly List<int> _items;
        private readonly Func<int, int> _cost;

        // For each count and cost, the last item (from 1) of one way, or 0; kept per item so that a way can be walked back.
        private readonly bool[,,] _reached;

        internal Reach(List<int> items, Func<int, int> cost, int most, int limit)
        {
            (_items, _cost) = (items, cost);
            _reached = new bool[items.Count + 1, most + 1, limit + 1];
            _reached[0, 0, 0] = true;
            for (int t = 1; t <= items.Count; t++)
            {
                int own = cost(items[t - 1]);
                for (int k = 0; k <= most; k++)
                    for (int c = 0; c <= limit; c++)
                        _reached[t, k, c] = _reached[t - 1, k, c] || (k > 0 && c >= own && _reached[t - 1, k - 1, c - own]);
            }
        }

        internal bool Has(int count, int cost) => _reached[_items.Count, count, cost];

        internal List<int> Choice(int count, int cost)
        {
            List<int> chosen = [];
            for (int t = _items.Count; t > 0; t--)
            {
                if (_reached[t - 1, count, cost])
                    continue;
                chosen.Add(_items[t - 1]);
                cost -= _cost(_items[t - 1]);
                count--;
            }

            return chosen;
        }
    }
}
