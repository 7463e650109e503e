namespace PackPlanner.Core.Grouping;

/// <summary>Complete search for lots that are small enough: window after window is covered or refused, and each refusal is a proof.</summary>
internal sealed class StrictProofs(StrictProgress found)
{
    private readonly GroupingProblem _problem = found.Problem;
    private readonly StrictProgress _found = found;

    /// <summary>Proves both aims, or spends the budget.</summary>
    internal void Run()
    {
        ProveSmallest();
        if (_found.Best.Smallest == _found.Bound && !_found.Done)
            ProveSpread();
    }

    private void ProveSmallest()
    {
        if (_found.Best.Smallest == _found.Bound)
            return;
        WindowCover cover = new(
            _problem.Capacity[.._problem.Needed], _problem.BaseSum, _problem.Places);
        int[] groupOf = _found.Unassigned();
        long below = 0;
        while (_found.Best.Smallest < _found.Bound)
        {
            // From the bound downwards the windows are narrow, so the first refusals are cheap; each lowers the bound.
            long low = Math.Max(_found.Best.Smallest + 1, _found.Bound - below);
            SearchBudget part = _found.Budget.Part(_found.Budget.Left / 2);
            long given = _found.Budget.Left / 2;
            CoverVerdict verdict = cover.Search(low, long.MaxValue / 4, part, groupOf);
            _found.Budget.Settle(part, given);
            if (verdict == CoverVerdict.GaveUp)
                return;
            if (verdict == CoverVerdict.None)
            {
                _found.Bound = low - 1;
                below = (2 * below) + 1;
            }
            else
            {
                _found.Take(GroupingTrial.Of(_problem, [.. groupOf]));
                below = (_found.Bound - _found.Best.Smallest) / 2;
            }
        }
    }

    private void ProveSpread()
    {
        long slack = _problem.BestTotal - (_problem.Series * _found.Best.Smallest);
        int end = _problem.Needed;
        while (end < _problem.Capacity.Length && _problem.Capacity[_problem.Needed - 1] - _problem.Capacity[end] <= slack)
            end++;
        bool all = end <= CellSet.Most;
        WindowCover cover = new(_problem.Capacity[..Math.Min(end, CellSet.Most)], _problem.BaseSum, _problem.Places);
        int[] groupOf = _found.Unassigned();
        long above = 0;
        while (_found.Best.Spread > _found.SpreadBound)
        {
            long width = Math.Min(_found.Best.Spread - 1, _found.SpreadBound + above);
            SearchBudget part = _found.Budget.Part(_found.Budget.Left / 2);
            long given = _found.Budget.Left / 2;
            CoverVerdict verdict = cover.Search(_found.Best.Smallest, _found.Best.Smallest + width, part, groupOf);
            _found.Budget.Settle(part, given);
            if (verdict == CoverVerdict.Found)
            {
                _found.Take(GroupingTrial.Of(_problem, [.. groupOf]));
                above = (_found.Best.Spread - _found.SpreadBound) / 2;
                continue;
            }

            if (verdict == CoverVerdict.GaveUp || !all)
                return;
            _found.SpreadBound = width + 1;
            above = (2 * above) + 1;
        }
    }
}
