namespace PackPlanner.Core.Grouping;

/// <summary>One way to fill a group: its free cells, its sum with the pinned ones, and which kind of group it fills.</summary>
internal readonly record struct WindowGroup(CellSet Cells, long Sum, int Kind);

/// <summary>All ways to fill a group from a pool of cells so that its sum lies in a window.</summary>
/// <param name="capacity">Steps of the pool's cells, sorted downwards.</param>
/// <param name="kindBase">Steps already in a group of each kind.</param>
/// <param name="kindPlaces">Open places of each kind.</param>
/// <param name="most">How many to list at most.</param>
internal sealed class WindowGroups(long[] capacity, long[] kindBase, int[] kindPlaces, int most)
{
    // Beyond this many choices of half a group the lists themselves cost more than they save.
    private const double MostParts = 250_000;

    private readonly Dictionary<int, PartSums> _parts = [];
    private WindowGroup[] _groups = new WindowGroup[256];
    private long _low;
    private long _high;
    private SearchBudget _budget = new(0);

    internal int Count { get; private set; }

    /// <summary>True when as many are listed as may be: a search over them can find, but not refuse.</summary>
    internal bool IsFull => Count == most;

    internal ref readonly WindowGroup At(int index) => ref _groups[index];

    /// <summary>Lists them anew; false when there are too many or the budget ran out, so that some are missing.</summary>
    internal bool List(long low, long high, SearchBudget budget)
    {
        (_low, _high, _budget, Count) = (low, high, budget, 0);
        int n = capacity.Length;
        long[] before = new long[n + 1];
        for (int i = 0; i < n; i++)
            before[i + 1] = before[i] + capacity[i];
        for (int k = 0; k < kindBase.Length; k++)
        {
            int places = kindPlaces[k];
            if (places == 0)
                continue;
            bool all = places >= 4 && JoiningIsQuicker(places)
                ? JoinParts(k, places)
                : Extend(k, 0, places, kindBase[k], default, before);
            if (!all)
                return false;
        }

        return true;
    }

    private bool JoiningIsQuicker(int places)
    {
        int n = capacity.Length;
        double parts = PartSums.Count(n, places / 2) + PartSums.Count(n, places - (places / 2));
        return parts < MostParts && parts * 12 < PartSums.Count(n, places - 1);
    }

    /// <summary>Groups as a first and a last half, joined where the sum lies in the window: two pointers over sorted sums.</summary>
    private bool JoinParts(int kind, int places)
    {
        PartSums firsts = PartsOf(places / 2);
        PartSums lasts = PartsOf(places - (places / 2));
        int from = lasts.Sum.Length;
        for (int a = 0; a < firsts.Sum.Length; a++)
        {
            long low = _low - kindBase[kind] - firsts.Sum[a];
            long high = _high - kindBase[kind] - firsts.Sum[a];
            while (from > 0 && lasts.Sum[from - 1] >= low)
                from--;
            CellSet first = firsts.Cells[a];
            int b = from;
            for (; b < lasts.Sum.Length && lasts.Sum[b] <= high; b++)
            {
                CellSet last = lasts.Cells[b];
                if (first.IsBefore(last) && !Keep(new WindowGroup(first.Or(last), kindBase[kind] + firsts.Sum[a] + lasts.Sum[b], kind)))
                    return false;
            }

            if (!_budget.Spend(4 + ((b - from) * 2L)))
                return false;
        }

        return true;
    }

    private PartSums PartsOf(int size)
    {
        if (_parts.TryGetValue(size, out PartSums? known))
            return known;
        PartSums parts = new(capacity, size);
        _budget.Spend(parts.Sum.Length * 24L);
        return _parts[size] = parts;
    }

    private bool Keep(WindowGroup group)
    {
        if (IsFull)
            return false;
        if (Count == _groups.Length)
            Array.Resize(ref _groups, _groups.Length * 2);
        _groups[Count++] = group;
        return true;
    }

    /// <summary>Adds places more cells, all ranked at or after next, so that the sum ends in the window.</summary>
    private bool Extend(int kind, int next, int places, long sum, CellSet cells, long[] before)
    {
        int n = capacity.Length;
        if (places == 1)
            return ExtendByLast(kind, next, sum, cells);

        // The least the other places can add is the same for every choice here.
        long leastOfOthers = before[n] - before[n - (places - 1)];
        if (!_budget.Spend(n - next))
            return false;
        for (int i = next; i <= n - places; i++)
        {
            if (sum + capacity[i] + leastOfOthers > _high)
                continue;
            if (sum + before[i + places] - before[i] < _low)
                break;
            if (!Extend(kind, i + 1, places - 1, sum + capacity[i], cells.With(i), before))
                return false;
        }

        return true;
    }

    private bool ExtendByLast(int kind, int next, long sum, CellSet cells)
    {
        int first = next, end = capacity.Length;
        while (first < end)
        {
            int middle = (first + end) >>> 1;
            if (sum + capacity[middle] > _high)
                first = middle + 1;
            else
                end = middle;
        }

        int start = first;
        for (; first < capacity.Length && sum + capacity[first] >= _low; first++)
        {
            if (!Keep(new WindowGroup(cells.With(first), sum + capacity[first], kind)))
                return false;
        }

        return _budget.Spend(8 + ((first - start) * 4L));
    }
}
