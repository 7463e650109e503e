namespace PackPlanner.Core.Grouping;

/// <summary>What a complete search can say.</summary>
internal enum CoverVerdict
{
    /// <summary>An assignment was found.</summary>
    Found,

    /// <summary>The whole tree was seen: there is none.</summary>
    None,

    /// <summary>The budget ran out first; nothing is known.</summary>
    GaveUp,
}

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
    private readonly CellSet _likeTheOneBefore;
    private readonly List<int> _active = [];
    private readonly WindowGroups _listed;
    private long _low;
    private long _high;
    private SearchBudget _budget = new(0);
    private bool _gaveUp;

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
        CellSet like = default;
        for (int i = 1; i < capacity.Length; i++)
            if (capacity[i] == capacity[i - 1])
                like = like.With(i);
        _likeTheOneBefore = like;
    }

    /// <summary>Looks for an assignment with every group sum in [low, high].</summary>
    /// <param name="low">Steps.</param>
    /// <param name="high">Steps; as large as one likes for no limit.</param>
    /// <param name="budget">Steps to spend.</param>
    /// <param name="groupOfCell">Filled when found: the group of each cell, or -1 for a spare.</param>
    internal CoverVerdict Search(long low, long high, SearchBudget budget, int[] groupOfCell)
    {
        (_low, _high, _budget, _gaveUp) = (low, high, budget, false);
        (long most, long least) = Totals();
        _high = Math.Min(_high, most - ((_groups - 1) * _low));
        if (_high < _low || least > _groups * _high)
            return CoverVerdict.None;
        _low = Math.Max(_low, least - ((_groups - 1) * _high));
        bool all = _listed.List(_low, _high, budget);
        if (!all && (!_listed.IsFull || _listed.Count == MostCandidates))
            return CoverVerdict.GaveUp;

        CollectActive();
        List<WindowGroup> chosen = [];
        int[] kindLeft = [.. _kindCount];
        int groupsLeft = _groups;
        for (int k = 0; k < kindLeft.Length; k++)
        {
            if (_kindPlaces[k] != 0)
                continue;
            if (_kindBase[k] < _low || _kindBase[k] > _high)
                return CoverVerdict.None;
            groupsLeft -= kindLeft[k];
            kindLeft[k] = 0;
        }

        bool found = Descend(0, CellSet.First(_capacity.Length), groupsLeft, _spares, kindLeft, chosen);
        if (!found)
            return _gaveUp || !all ? CoverVerdict.GaveUp : CoverVerdict.None;
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

    private void CollectActive()
    {
        _active.Clear();
        for (int c = 0; c < _listed.Count; c++)
            _active.Add(c);
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

    /// <summary>One node: the candidates still possible are the tail of the active list from start on.</summary>
    private bool Descend(
        int start, CellSet open, int groupsLeft, int sparesLeft, int[] kindLeft, List<WindowGroup> chosen)
    {
        if (groupsLeft == 0)
            return true;
        int end = _active.Count;
        if (!_budget.Spend(32 + ((end - start) * 8L)))
        {
            _gaveUp = true;
            return false;
        }

        Span<int> ways = stackalloc int[CellSet.Most];
        Span<int> kindWays = stackalloc int[_kindBase.Length];
        CountWays(start, ways, kindWays);
        if (!LeaveOutTheImpossible(ways, ref open, ref sparesLeft))
            return false;
        Branch branch = ChooseBranch(open, groupsLeft, sparesLeft, kindLeft, ways, kindWays);
        return branch.Possible && Follow(branch, start, end, open, groupsLeft, sparesLeft, kindLeft, chosen);
    }

    private void CountWays(int start, Span<int> ways, Span<int> kindWays)
    {
        ways.Clear();
        kindWays.Clear();
        for (int a = start; a < _active.Count; a++)
        {
            WindowGroup candidate = _listed.At(_active[a]);
            kindWays[candidate.Kind]++;
            CellSet rest = candidate.Cells;
            while (!rest.IsEmpty)
                ways[CellSet.TakeFirst(ref rest)]++;
        }
    }

    private static bool LeaveOutTheImpossible(ReadOnlySpan<int> ways, ref CellSet open, ref int sparesLeft)
    {
        CellSet rest = open;
        while (!rest.IsEmpty)
        {
            int cell = CellSet.TakeFirst(ref rest);
            if (ways[cell] > 0)
                continue;
            if (--sparesLeft < 0)
                return false;
            open = open.Without(default(CellSet).With(cell));
        }

        return true;
    }

    /// <param name="Possible">False when this node has no solution.</param>
    /// <param name="Cell">The cell to branch on, or -1 to branch on a kind of group.</param>
    /// <param name="Kind">The kind of group to branch on when there is no cell.</param>
    /// <param name="MaySkip">Whether leaving the cell out is also a way.</param>
    /// <param name="MostUse">Steps that the open groups can hold together at most.</param>
    /// <param name="LeastUse">Steps that they must hold together.</param>
    private readonly record struct Branch(bool Possible, int Cell, int Kind, bool MaySkip, long MostUse, long LeastUse);

    private Branch ChooseBranch(
        CellSet open, int groupsLeft, int sparesLeft, int[] kindLeft, ReadOnlySpan<int> ways, ReadOnlySpan<int> kindWays)
    {
        long bases = 0;
        (int fewest, int kind) = (int.MaxValue, -1);
        for (int k = 0; k < kindLeft.Length; k++)
        {
            bases += kindLeft[k] * _kindBase[k];
            if (kindWays[k] < kindLeft[k])
                return default;
            if (kindLeft[k] == 1 && kindWays[k] < fewest)
                (fewest, kind) = (kindWays[k], k);
        }

        (long most, long least, long dearestFreeSkip) = Uses(open, sparesLeft, bases);
        long slack = most - (groupsLeft * _low);
        if (slack < 0 || least > groupsLeft * _high)
            return default;

        (int chosen, bool skip) = (-1, false);
        CellSet rest = open;
        while (!rest.IsEmpty)
        {
            int cell = CellSet.TakeFirst(ref rest);
            bool maySkip = sparesLeft > 0 && _capacity[cell] - dearestFreeSkip <= slack;
            int count = ways[cell] + (maySkip ? 1 : 0);
            if (count < fewest)
                (fewest, chosen, skip) = (count, cell, maySkip);
        }

        return new Branch(true, chosen, kind, skip, most, least);
    }

    /// <summary>
    /// The most and the least that the open cells can bring with that many left out, and the largest of the cells that the
    /// most leaves out: skipping a larger one instead costs the difference.
    /// </summary>
    private (long Most, long Least, long DearestFreeSkip) Uses(CellSet open, int sparesLeft, long bases)
    {
        int count = open.Count;
        (long most, long least, long dearest) = (bases, bases, 0);
        int rank = 0;
        CellSet rest = open;
        while (!rest.IsEmpty)
        {
            int cell = CellSet.TakeFirst(ref rest);
            if (rank < count - sparesLeft)
                most += _capacity[cell];
            else if (rank == count - sparesLeft)
                dearest = _capacity[cell];
            if (rank >= sparesLeft)
                least += _capacity[cell];
            rank++;
        }

        return (most, least, dearest);
    }

    private bool Follow(
        Branch branch, int start, int end, CellSet open, int groupsLeft, int sparesLeft, int[] kindLeft, List<WindowGroup> chosen)
    {
        for (int a = start; a < end; a++)
        {
            WindowGroup candidate = _listed.At(_active[a]);
            if (branch.Cell >= 0 ? !candidate.Cells.Has(branch.Cell) : candidate.Kind != branch.Kind)
                continue;
            CellSet openAfter = open.Without(candidate.Cells);
            if (candidate.Cells.And(_likeTheOneBefore).OneDown.Touches(openAfter) || !candidate.Cells.IsWithin(open))
                continue;
            long lowest = Math.Max(_low, branch.LeastUse - candidate.Sum - ((groupsLeft - 2) * _high));
            long highest = Math.Min(_high, branch.MostUse - candidate.Sum - ((groupsLeft - 2) * _low));
            if (groupsLeft > 1 && highest < lowest)
                continue;
            chosen.Add(candidate);
            kindLeft[candidate.Kind]--;
            KeepDisjoint(start, end, openAfter, kindLeft, lowest, highest);
            if (Descend(end, openAfter, groupsLeft - 1, sparesLeft, kindLeft, chosen))
                return true;
            _active.RemoveRange(end, _active.Count - end);
            kindLeft[candidate.Kind]++;
            chosen.RemoveAt(chosen.Count - 1);
            if (_gaveUp)
                return false;
        }

        if (!branch.MaySkip || branch.Cell < 0)
            return false;
        CellSet without = open.Without(default(CellSet).With(branch.Cell));
        KeepDisjoint(start, end, without, kindLeft, _low, _high);
        bool found = Descend(end, without, groupsLeft, sparesLeft - 1, kindLeft, chosen);
        if (!found)
            _active.RemoveRange(end, _active.Count - end);
        return found;
    }

    /// <summary>Appends to the active list those candidates that lie in what is open and in the narrowed window.</summary>
    private void KeepDisjoint(int start, int end, CellSet open, int[] kindLeft, long lowest, long highest)
    {
        _budget.Spend((end - start) * 2L);
        for (int a = start; a < end; a++)
        {
            int index = _active[a];
            ref readonly WindowGroup candidate = ref _listed.At(index);
            if (candidate.Cells.IsWithin(open) && kindLeft[candidate.Kind] > 0
                && candidate.Sum >= lowest && candidate.Sum <= highest)
                _active.Add(index);
        }
    }
}
