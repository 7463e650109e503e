namespace PackPlanner.Core.Grouping;

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
    private readonly StrictProgress _found;

    private StrictSearch(StrictProgress found) => (_found, _problem) = (found, found.Problem);

    /// <summary>Solves the strict aims within the budget.</summary>
    /// <param name="problem">The cells and groups.</param>
    /// <param name="budget">Steps to spend.</param>
    /// <param name="seed">Another seed searches in another order.</param>
    /// <param name="closeEnough">Steps from a bound at which the search ends; 0 to go on to the bound itself.</param>
    /// <param name="onBetter">Told of every better grouping while the search runs.</param>
    internal static StrictAnswer Solve(
        GroupingProblem problem, SearchBudget budget, ulong seed = 0, long closeEnough = 0, Action<GroupingTrial>? onBetter = null)
    {
        StrictProgress found = new(problem, budget, new Dice(seed + 1), closeEnough, onBetter);
        new StrictSearch(found).Run();
        return new StrictAnswer(found.Best, found.Bound, found.SpreadBound, budget.Stopped);
    }

    private void Run()
    {
        if (_problem.Parallel <= 2 && !_problem.HasPins)
        {
            _found.Best = SmallGroups.Solve(_problem);
            (_found.Bound, _found.SpreadBound) = (_found.Best.Smallest, _found.Best.Spread);
            return;
        }

        if (_problem.Needed == 0)
        {
            _found.Best = GroupingTrial.Of(_problem, _found.Unassigned());
            (_found.Bound, _found.SpreadBound) = (_found.Best.Smallest, _found.Best.Spread);
            return;
        }

        int[] largest = SpareChoice.Largest(_problem);
        long total = _problem.BestTotal;
        _found.Bound = total / _problem.Series;
        int[] used = SpareChoice.Using(_problem, total - (_found.Bound * _problem.Series), out bool noneExists) ?? largest;
        _found.LeastSpread = noneExists ? 1 : 0;
        _found.SpreadBound = _found.LeastSpread;
        First(used);
        if (_found.Done)
            return;

        _found.Bound = GroupingBounds.OnSmallest(_problem);
        _found.BoundSpread();
        bool complete = _problem.Needed <= CompletePlaces && _problem.Parallel <= CompleteParallel;
        complete |= _problem.Needed <= CompletePlacesOfSix && _problem.Parallel <= CompleteParallel + 1;
        Restarts(used, complete ? FirstSlice / 10 : FirstSlice, first: true);
        if (!_found.Done && complete)
            new StrictProofs(_found).Run();
        TakeTurns(used, largest);
    }

    /// <summary>Restarts and re-splitting by turns, in growing slices: which of them succeeds differs from lot to lot.</summary>
    private void TakeTurns(int[] used, int[] largest)
    {
        StrictResplits resplits = new(_found);
        for (long slice = FirstSlice; !_found.Done && !_found.Budget.Spent; slice += slice / 2)
        {
            long before = _found.Budget.Left;
            resplits.Run(slice);
            if (!_found.Done)
                Restarts(largest, slice);
            if (used != largest && !_found.Done && _found.Best.Smallest == _found.Bound)
                Restarts(used, slice);
            if (_found.Budget.Left == before)
                return;
        }
    }

    private void First(int[] used)
    {
        int[] groupOf = _found.Unassigned();
        bool deal = _problem.Parallel >= DealParallel
            || (_problem.Parallel >= 6 && _problem.Needed >= DealPlaces)
            || _problem.Needed >= AlwaysDealPlaces;
        if (deal && !_problem.HasPins)
        {
            EqualDeal.Run(_problem.Capacity, used, _problem.Series, _problem.Parallel, _found.Budget, groupOf);
        }
        else
        {
            ExtremesFirst builder = new(_problem, used);
            SearchBudget unlimited = new(long.MaxValue);
            builder.Build(0, long.MinValue, long.MaxValue, ref _found.Dice, vary: false, unlimited, groupOf);
            _found.Budget.Spend(long.MaxValue - unlimited.Left);
        }

        _found.Begin(GroupingTrial.Of(_problem, groupOf));
    }

    /// <summary>Builds again with small variations, and searches the last groups completely.</summary>
    private void Restarts(int[] used, long steps, bool first = false)
    {
        ExtremesFirst builder = new(_problem, used);
        SearchBudget part = _found.Budget.Part(steps);
        int[] groupOf = _found.Unassigned();
        bool vary = false;
        for (int attempt = 0; !_found.Done && !part.Spent; attempt++)
        {
            // Small end games first: they suffice for most lots, and take microseconds.
            int atOnce = Math.Min(builder.OpenGroups, _problem.Parallel <= 3 || (first && attempt < QuickAttempts)
                ? PoolResplit.GroupsAtOnce(_problem.Parallel)
                : PoolResplit.MostGroupsAtOnce(_problem.Parallel));
            // A group below the best smallest, or, once that is at its bound, one as large as the largest, cannot better it.
            bool settled = _found.Best.Smallest == _found.Bound;
            long high = settled ? _found.Best.Largest - 1 : long.MaxValue;
            long low = settled ? _found.Bound : _found.Best.Smallest + 1;
            if (builder.Build(atOnce, low, high, ref _found.Dice, vary, part, groupOf) && Finish(builder, part, groupOf))
                _found.Take(GroupingTrial.Of(_problem, [.. groupOf]));
            if (vary && atOnce == builder.OpenGroups)
                break;
            part.Spend(_problem.Capacity.Length);
            vary = true;
            Array.Fill(groupOf, -1);
        }

        _found.Budget.Settle(part, steps);
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

        (long low, long high) = smallest > _found.Best.Smallest
            ? (_found.Best.Smallest + 1, long.MaxValue / 4)
            : (_found.Best.Smallest, _found.Best.Largest - 1);
        if (_found.Best.Smallest == _found.Bound)
            (low, high) = (_found.Bound, _found.Best.Largest - 1);
        if (high < long.MaxValue / 4 && largest > high)
            return false;
        int[] cells = [.. builder.LeftCells];
        return PoolResplit.TrySplit(_problem, cells, builder.LeftGroups, low, high, budget, groupOf);
    }

}
