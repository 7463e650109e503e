namespace PackPlanner.Core.Grouping;

/// <summary>
/// The search of <see cref="WindowCover"/> among the groups that it listed: takes groups that share no cell until all are filled,
/// branching on the cell with the fewest ways left.
/// </summary>
/// <remarks>Of cells of equal capacity only the first uncovered is tried.</remarks>
internal sealed class CoverTree
{
    private readonly long[] _capacity;
    private readonly long[] _kindBase;
    private readonly WindowGroups _listed;
    private readonly CellSet _likeTheOneBefore;
    private readonly List<int> _active = [];
    private long _low;
    private long _high;
    private SearchBudget _budget = new(0);

    /// <param name="capacity">Steps of the pool's cells, sorted downwards.</param>
    /// <param name="kindBase">Steps already in a group of each kind.</param>
    /// <param name="listed">The groups to choose among, when <see cref="Search"/> is called.</param>
    internal CoverTree(long[] capacity, long[] kindBase, WindowGroups listed)
    {
        (_capacity, _kindBase, _listed) = (capacity, kindBase, listed);
        for (int i = 1; i < capacity.Length; i++)
            if (capacity[i] == capacity[i - 1])
                _likeTheOneBefore = _likeTheOneBefore.With(i);
    }

    /// <summary>True when the budget ran out before the whole tree was seen.</summary>
    internal bool GaveUp { get; private set; }

    /// <summary>Looks for groups that fill all places; true when found.</summary>
    /// <param name="low">Least sum of a group, steps.</param>
    /// <param name="high">Largest sum of a group, steps.</param>
    /// <param name="budget">Steps to spend.</param>
    /// <param name="spares">Cells that may stay uncovered.</param>
    /// <param name="kindLeft">Groups to fill of each kind; changed on the way.</param>
    /// <param name="chosen">Filled when found.</param>
    internal bool Search(long low, long high, SearchBudget budget, int spares, int[] kindLeft, List<WindowGroup> chosen)
    {
        (_low, _high, _budget, GaveUp) = (low, high, budget, false);
        _active.Clear();
        for (int c = 0; c < _listed.Count; c++)
            _active.Add(c);
        return Descend(0, CellSet.First(_capacity.Length), kindLeft.Sum(), spares, kindLeft, chosen);
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
            GaveUp = true;
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
            if (GaveUp)
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
