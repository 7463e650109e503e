namespace PackPlanner.Core.Grouping;

/// <summary>What the search for the strict aims found, in steps, and what of it is proven.</summary>
/// <param name="Best">The best grouping found.</param>
/// <param name="Bound">No grouping has a smallest group above this.</param>
/// <param name="SpreadBound">No grouping with this smallest group has less spread.</param>
/// <param name="Stopped">True when the user's cancel ended it.</param>
internal sealed record StrictAnswer(GroupingTrial Best, long Bound, long SpreadBound, bool Stopped)
{
    internal bool SmallestProven => Best.Smallest == Bound;

    internal bool Proven => SmallestProven && Best.Spread == SpreadBound;
}

/// <summary>Largest smallest group, then least spread: the quick ways first, then complete or local search as size allows.</summary>
internal sealed class StrictSearch
{
    /// <summary>Up to this many open places, and five in parallel, the whole tree is searched.</summary>
    internal const int CompletePlaces = 64;

    private const int CompleteParallel = 5;

    /// <summary>Up to this many with six in parallel.</summary>
    private const int CompletePlacesOfSix = 54;

    private const long FirstSlice = 3_000_000;

    private const int QuickAttempts = 40;

    /// <summary>From this many cells in parallel, or of this many in all, a deal with exchanges is the quickest start.</summary>
    private const int DealParallel = 14;

    private const int DealPlaces = 1_000;

    // Building group by group looks at all cells for each group: too long a first answer from here on.
    private const int AlwaysDealPlaces = 40_000;

    private readonly GroupingProblem _problem;
    private readonly SearchBudget _budget;
    private readonly long _closeEnough;
    private readonly Action<GroupingTrial>? _onBetter;
    private Dice _dice;
    private GroupingTrial _best;
    private long _bound;
    private long _spreadBound;

    // 1 when no choice of cells has a total that S equal groups at the sum bound would need.
    private long _leastSpread;

    private StrictSearch(GroupingProblem problem, SearchBudget budget, ulong seed, long closeEnough, Action<GroupingTrial>? onBetter)
    {
        (_problem, _budget, _closeEnough, _onBetter, _dice) = (problem, budget, closeEnough, onBetter, new Dice(seed + 1));
        _best = null!;
    }

    /// <summary>Solves the strict aims within the budget.</summary>
    /// <param name="problem">The cells and groups.</param>
    /// <param name="budget">Steps to spend.</param>
    /// <param name="seed">Another seed searches in another order.</param>
    /// <param name="closeEnough">Steps from a bound at which the search ends; 0 to go on to the bound itself.</param>
    /// <param name="onBetter">Told of every better grouping while the search runs.</param>
    internal static StrictAnswer Solve(
        GroupingProblem problem, SearchBudget budget, ulong seed = 0, long closeEnough = 0, Action<GroupingTrial>? onBetter = null)
    {
        StrictSearch search = new(problem, budget, seed, closeEnough, onBetter);
        search.Run();
        return new StrictAnswer(search._best, search._bound, search._spreadBound, budget.Stopped);
    }

    private bool Done => _bound - _best.Smallest <= _closeEnough && _best.Spread - _spreadBound <= _closeEnough;

    private void Run()
    {
        if (_problem.Parallel <= 2 && !_problem.HasPins)
        {
            _best = SmallGroups.Solve(_problem);
            (_bound, _spreadBound) = (_best.Smallest, _best.Spread);
            return;
        }

        if (_problem.Needed == 0)
        {
            _best = GroupingTrial.Of(_problem, NewAssignment());
            (_bound, _spreadBound) = (_best.Smallest, _best.Spread);
            return;
        }

        int[] largest = SpareChoice.Largest(_problem);
        long total = _problem.BestTotal;
        _bound = total / _problem.Series;
        int[] used = SpareChoice.Using(_problem, total - (_bound * _problem.Series), out bool noneExists) ?? largest;
        _leastSpread = noneExists ? 1 : 0;
        _spreadBound = _leastSpread;
        First(used);
        if (Done)
            return;

        _bound = GroupingBounds.OnSmallest(_problem);
        BoundSpread();
        bool complete = _problem.Needed <= CompletePlaces && _problem.Parallel <= CompleteParallel;
        complete |= _problem.Needed <= CompletePlacesOfSix && _problem.Parallel <= CompleteParallel + 1;
        Restarts(used, complete ? FirstSlice / 10 : FirstSlice, first: true);
        if (!Done && complete)
            CompleteSearch();
        TakeTurns(used, largest);
    }

    /// <summary>Restarts and re-splitting by turns, in growing slices: which of them succeeds differs from lot to lot.</summary>
    private void TakeTurns(int[] used, int[] largest)
    {
        for (long slice = FirstSlice; !Done && !_budget.Spent; slice += slice / 2)
        {
            long before = _budget.Left;
            Resplit(slice);
            if (!Done)
                Restarts(largest, slice);
            if (used != largest && !Done && _best.Smallest == _bound)
                Restarts(used, slice);
            if (_budget.Left == before)
                return;
        }
    }

    private void BoundSpread()
    {
        // The sum argument holds only at the sum bound; below it the groups may also all be equal.
        long atSum = _best.Smallest == _problem.BestTotal / _problem.Series ? _leastSpread : 0;
        _spreadBound = Math.Max(atSum, GroupingBounds.OnLargest(_problem, _best.Smallest) - _best.Smallest);
    }

    private void Take(GroupingTrial trial)
    {
        if (!trial.IsBetterThan(_best))
            return;
        bool higher = trial.Smallest > _best.Smallest;
        _best = trial;
        if (higher)
            BoundSpread();
        _onBetter?.Invoke(trial);
    }

    private void First(int[] used)
    {
        int[] groupOf = NewAssignment();
        bool deal = _problem.Parallel >= DealParallel
            || (_problem.Parallel >= 6 && _problem.Needed >= DealPlaces)
            || _problem.Needed >= AlwaysDealPlaces;
        if (deal && !_problem.HasPins)
        {
            EqualDeal.Run(_problem.Capacity, used, _problem.Series, _problem.Parallel, _budget, groupOf);
        }
        else
        {
            ExtremesFirst builder = new(_problem, used);
            SearchBudget unlimited = new(long.MaxValue);
            builder.Build(0, long.MinValue, long.MaxValue, ref _dice, vary: false, unlimited, groupOf);
            _budget.Spend(long.MaxValue - unlimited.Left);
        }

        _best = GroupingTrial.Of(_problem, groupOf);
        _onBetter?.Invoke(_best);
    }

    private int[] NewAssignment()
    {
        int[] groupOf = new int[_problem.Capacity.Length];
        Array.Fill(groupOf, -1);
        return groupOf;
    }

    /// <summary>Builds again with small variations, and searches the last groups completely.</summary>
    private void Restarts(int[] used, long steps, bool first = false)
    {
        ExtremesFirst builder = new(_problem, used);
        SearchBudget part = _budget.Part(steps);
        int[] groupOf = NewAssignment();
        bool vary = false;
        for (int attempt = 0; !Done && !part.Spent; attempt++)
        {
            // Small end games first: they suffice for most lots, and take microseconds.
            int atOnce = Math.Min(builder.OpenGroups, _problem.Parallel <= 3 || (first && attempt < QuickAttempts)
                ? PoolResplit.GroupsAtOnce(_problem.Parallel)
                : PoolResplit.MostGroupsAtOnce(_problem.Parallel));
            // A group below the best smallest, or, once that is at its bound, one as large as the largest, cannot better it.
            bool settled = _best.Smallest == _bound;
            long high = settled ? _best.Largest - 1 : long.MaxValue;
            long low = settled ? _bound : _best.Smallest + 1;
            if (builder.Build(atOnce, low, high, ref _dice, vary, part, groupOf) && Finish(builder, part, groupOf))
                Take(GroupingTrial.Of(_problem, [.. groupOf]));
            if (vary && atOnce == builder.OpenGroups)
                break;
            part.Spend(_problem.Capacity.Length);
            vary = true;
            Array.Fill(groupOf, -1);
        }

        _budget.Settle(part, steps);
    }

    private bool Finish(ExtremesFirst builder, SearchBudget budget, int[] groupOf)
    {
        if (builder.LeftGroups.Length == 0)
            return true;
        long[] sums = [.. _problem.BaseSum];
        for (int i = 0; i < groupOf.Length; i++)
            if (groupOf[i] >= 0)
                sums[groupOf[i]] += _problem.Capacity[i];
        (long smallest, long largest) = (long.MaxValue, long.MinValue);
        foreach (int group in builder.LeftGroups)
            sums[group] = long.MaxValue;
        foreach (long sum in sums)
        {
            smallest = Math.Min(smallest, sum);
            largest = sum == long.MaxValue ? largest : Math.Max(largest, sum);
        }

        (long low, long high) = smallest > _best.Smallest
            ? (_best.Smallest + 1, long.MaxValue / 4)
            : (_best.Smallest, _best.Largest - 1);
        if (_best.Smallest == _bound)
            (low, high) = (_bound, _best.Largest - 1);
        if (high < long.MaxValue / 4 && largest > high)
            return false;
        int[] cells = [.. builder.LeftCells];
        return PoolResplit.TrySplit(_problem, cells, builder.LeftGroups, low, high, budget, groupOf);
    }

    /// <summary>Proves both aims, or spends the budget.</summary>
    private void CompleteSearch()
    {
        ProveSmallest();
        if (_best.Smallest == _bound && !Done)
            ProveSpread();
    }

    private void ProveSmallest()
    {
        if (_best.Smallest == _bound)
            return;
        WindowCover cover = new(
            _problem.Capacity[.._problem.Needed], _problem.BaseSum, _problem.Places);
        int[] groupOf = NewAssignment();
        long below = 0;
        while (_best.Smallest < _bound)
        {
            // From the bound downwards the windows are narrow, so the first refusals are cheap; each lowers the bound.
            long low = Math.Max(_best.Smallest + 1, _bound - below);
            SearchBudget part = _budget.Part(_budget.Left / 2);
            long given = _budget.Left / 2;
            CoverVerdict verdict = cover.Search(low, long.MaxValue / 4, part, groupOf);
            _budget.Settle(part, given);
            if (verdict == CoverVerdict.GaveUp)
                return;
            if (verdict == CoverVerdict.None)
            {
                _bound = low - 1;
                below = (2 * below) + 1;
            }
            else
            {
                Take(GroupingTrial.Of(_problem, [.. groupOf]));
                below = (_bound - _best.Smallest) / 2;
            }
        }
    }

    private void ProveSpread()
    {
        long slack = _problem.BestTotal - (_problem.Series * _best.Smallest);
        int end = _problem.Needed;
        while (end < _problem.Capacity.Length && _problem.Capacity[_problem.Needed - 1] - _problem.Capacity[end] <= slack)
            end++;
        bool all = end <= CellSet.Most;
        WindowCover cover = new(_problem.Capacity[..Math.Min(end, CellSet.Most)], _problem.BaseSum, _problem.Places);
        int[] groupOf = NewAssignment();
        long above = 0;
        while (_best.Spread > _spreadBound)
        {
            long width = Math.Min(_best.Spread - 1, _spreadBound + above);
            SearchBudget part = _budget.Part(_budget.Left / 2);
            long given = _budget.Left / 2;
            CoverVerdict verdict = cover.Search(_best.Smallest, _best.Smallest + width, part, groupOf);
            _budget.Settle(part, given);
            if (verdict == CoverVerdict.Found)
            {
                Take(GroupingTrial.Of(_problem, [.. groupOf]));
                above = (_best.Spread - _spreadBound) / 2;
                continue;
            }

            if (verdict == CoverVerdict.GaveUp || !all)
                return;
            _spreadBound = width + 1;
            above = (2 * above) + 1;
        }
    }

    /// <summary>Local search: the worst group with some others is split anew, exactly, as long as that helps.</summary>
    private void Resplit(long steps)
    {
        int[] open = [.. Enumerable.Range(0, _problem.Series).Where(g => _problem.Places[g] > 0)];
        int atOnce = Math.Min(PoolResplit.MostGroupsAtOnce(_problem.Parallel), open.Length);
        if (atOnce < 2)
            return;
        GroupingTrial current = _best;
        SearchBudget part = _budget.Part(steps);
        while (!Done && !part.Spent)
        {
            // Drawing and adding up look at every cell.
            part.Spend(2L * _problem.Capacity.Length);
            bool settled = current.Smallest == _bound;
            int worst = Array.IndexOf(current.Sum, settled ? current.Largest : current.Smallest);
            if (_problem.Places[worst] == 0)
                break;
            int[] groups = Draw(open, worst, RichestOpen(current), atOnce);
            int[] cells = Pool(current, groups);
            int[] groupOf = [.. current.GroupOf];
            (long low, long high) = settled
                ? (current.Smallest, current.Largest - 1)
                : (current.Smallest + 1, Math.Max(current.Largest, current.Smallest + 1));
            if (!PoolResplit.TrySplit(_problem, cells, groups, low, high, part, groupOf))
                continue;
            current = GroupingTrial.Of(_problem, groupOf);
            Take(current);
        }

        _budget.Settle(part, steps);
    }

    /// <summary>The open group with most above the smallest: what it can give makes more splits possible.</summary>
    private int RichestOpen(GroupingTrial trial)
    {
        int richest = -1;
        for (int g = 0; g < trial.Sum.Length; g++)
            if (_problem.Places[g] > 0 && (richest < 0 || trial.Sum[g] > trial.Sum[richest]))
                richest = g;
        return richest;
    }

    private int[] Draw(int[] open, int worst, int richest, int count)
    {
        int[] groups = new int[count];
        groups[0] = worst;
        int k = 1;
        if (richest != worst && _dice.Below(4) != 0)
            groups[k++] = richest;
        while (k < count)
        {
            int group = open[_dice.Below(open.Length)];
            if (Array.IndexOf(groups, group, 0, k) < 0)
                groups[k++] = group;
        }

        return groups;
    }

    /// <summary>The cells of the groups and a few spares.</summary>
    private int[] Pool(GroupingTrial trial, int[] groups)
    {
        List<int> cells = [];
        List<int> spares = [];
        for (int i = 0; i < trial.GroupOf.Length; i++)
        {
            if (trial.GroupOf[i] < 0)
                spares.Add(i);
            else if (Array.IndexOf(groups, trial.GroupOf[i]) >= 0)
                cells.Add(i);
        }

        for (int k = 0; k < 2 && spares.Count > 0 && cells.Count < 30; k++)
        {
            int at = _dice.Below(spares.Count);
            cells.Add(spares[at]);
            spares.RemoveAt(at);
        }

        cells.Sort();
        return [.. cells];
    }
}
