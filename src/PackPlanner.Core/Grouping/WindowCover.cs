namespace PackPlanner.Core.Grouping;

/// <summary>
/// Complete search: can these cells fill these groups so that every group's sum lies in a window? An exact cover over the
/// groups whose sums lie in the window, branching on the cell with the fewest ways left.
/// </summary>
/// <remarks>
/// With the window at [smallest + 1, no limit] it proves the smallest group; at [smallest, largest - 1] the spread. Spares
/// are cells that may stay uncovered. Cells of equal capacity are interchangeable here (a pinned cell is never in the
/// pool), which the search uses: it tries only the first uncovered of equals.
/// </remarks>
internal sealed class WindowCover
{
    internal const int MostCandidates = 3_000_000;

    private readonly long[] _capacity;
    private readonly int _groups;
    private readonly int _spares;
    private readonly long[] _kindBase;
    private readonly int[] _kindPlaces;
    private readonly int[] _kindCount;
    private readonly int[] _kindOf;
    private readonly WindowGroups _listed;
    private readonly CoverTree _tree;

    /// <param name="capacity">Steps, at most 128 cells, sorted downwards.</param>
    /// <param name="baseSum">Steps already in each group.</param>
    /// <param name="places">Open places of each group; their total is at most the count of cells.</param>
    /// <param name="mostCandidates">Groups to look at; where there are more, "none" cannot be told.</param>
    internal WindowCover(
        long[] capacity, ReadOnlySpan<long> baseSum, ReadOnlySpan<int> places, int mostCandidates = MostCandidates)
    {
        if (capacity.Length > CellSet.Most)
            throw new ArgumentException($"At most {CellSet.Most} cells.", nameof(capacity));
        _capacity = capacity;
        _groups = baseSum.Length;
        _kindOf = new int[_groups];
        List<long> bases = [];
        List<int> kindPlaces = [], count = [];
        int needed = 0;
        for (int g = 0; g < _groups; g++)
        {
            needed += places[g];
            int kind = 0;
            while (kind < bases.Count && (bases[kind] != baseSum[g] || kindPlaces[kind] != places[g]))
                kind++;
            if (kind == bases.Count)
            {
                bases.Add(baseSum[g]);
                kindPlaces.Add(places[g]);
                count.Add(0);
            }

            count[kind]++;
            _kindOf[g] = kind;
        }

        _spares = capacity.Length - needed;
        (_kindBase, _kindPlaces, _kindCount) = ([.. bases], [.. kindPlaces], [.. count]);
        _listed = new WindowGroups(capacity, _kindBase, _kindPlaces, mostCandidates);
        _tree = new CoverTree(capacity, _kindBase, _listed);
    }

    /// <summary>Looks for an assignment with every group sum in [low, high].</summary>
    /// <param name="low">Steps.</param>
    /// <param name="high">Steps; as large as one likes for no limit.</param>
    /// <param name="budget">Steps to spend.</param>
    /// <param name="groupOfCell">Filled when found: the group of each cell, or -1 for a spare.</param>
    internal CoverVerdict Search(long low, long high, SearchBudget budget, int[] groupOfCell)
    {
        (long most, long least) = Totals();
        high = Math.Min(high, most - ((_groups - 1) * low));
        if (high < low || least > _groups * high)
            return CoverVerdict.None;
        low = Math.Max(low, least - ((_groups - 1) * high));
        bool all = _listed.List(low, high, budget);
        if (!all && (!_listed.IsFull || _listed.Count == MostCandidates))
            return CoverVerdict.GaveUp;

        int[] kindLeft = [.. _kindCount];
        for (int k = 0; k < kindLeft.Length; k++)
        {
            if (_kindPlaces[k] != 0)
                continue;
            if (_kindBase[k] < low || _kindBase[k] > high)
                return CoverVerdict.None;
            kindLeft[k] = 0;
        }

        List<WindowGroup> chosen = [];
        if (!_tree.Search(low, high, budget, _spares, kindLeft, chosen))
            return _tree.GaveUp || !all ? CoverVerdict.GaveUp : CoverVerdict.None;
        Assign(chosen, groupOfCell);
        return CoverVerdict.Found;
    }

    private (long Most, long Least) Totals()
    {
        long bases = 0;
        for (int k = 0; k < _kindBase.Length; k++)
            bases += _kindBase[k] * _kindCount[k];
        (long most, long least) = (bases, bases);
        int needed = _capacity.Length - _spares;
        for (int i = 0; i < needed; i++)
        {
            most += _capacity[i];
            least += _capacity[^(i + 1)];
        }

        return (most, least);
    }

    private void Assign(List<WindowGroup> chosen, int[] groupOfCell)
    {
        Array.Fill(groupOfCell, -1, 0, _capacity.Length);
        bool[] taken = new bool[_groups];
        foreach (WindowGroup candidate in chosen)
        {
            int group = 0;
            while (taken[group] || _kindOf[group] != candidate.Kind)
                group++;
            taken[group] = true;
            CellSet rest = candidate.Cells;
            while (!rest.IsEmpty)
                groupOfCell[CellSet.TakeFirst(ref rest)] = group;
        }
    }
}
