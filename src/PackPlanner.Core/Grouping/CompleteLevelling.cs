namespace PackPlanner.Core.Grouping;

/// <summary>All groupings inside the band, for small lots: the one with the least spread of group resistance, exactly.</summary>
/// <remarks>
/// The first cell not yet placed is joined with every choice of companions, or left out while spares remain; a branch ends
/// when its groups already differ by as much as the best. Ties go to the grouping that is met first.
/// </remarks>
internal sealed class CompleteLevelling
{
    private readonly LevellingProblem _problem;
    private readonly SearchBudget _budget;
    private readonly int[] _groupOf;
    private readonly bool[] _filled;
    private int[] _best;
    private double _bestSpread;

    private CompleteLevelling(LevellingProblem problem, int[] start, SearchBudget budget)
    {
        (_problem, _budget, _best) = (problem, budget, start);
        _bestSpread = problem.SpreadOhm(start);
        _groupOf = new int[start.Length];
        Array.Fill(_groupOf, Unplaced);
        _filled = new bool[problem.Cells.Series];
    }

    private const int Unplaced = -2;

    /// <summary>Searches all, starting from a grouping inside the band.</summary>
    /// <param name="problem">The cells and the band.</param>
    /// <param name="start">Group of each free cell, every sum inside the band.</param>
    /// <param name="budget">Steps to spend.</param>
    /// <param name="complete">True when everything was seen, so that the answer is the best there is.</param>
    internal static int[] Best(LevellingProblem problem, int[] start, SearchBudget budget, out bool complete)
    {
        CompleteLevelling search = new(problem, start, budget);
        search.Next(0, double.PositiveInfinity, 0, problem.Cells.Spares);
        complete = !budget.Spent;
        return search._best;
    }

    private void Next(int from, double least, double most, int spares)
    {
        if (!_budget.Spend(4))
            return;
        while (from < _groupOf.Length && _groupOf[from] != Unplaced)
            from++;
        if (from == _groupOf.Length)
        {
            Finish(least, most);
            return;
        }

        GroupingProblem cells = _problem.Cells;
        for (int g = 0; g < cells.Series; g++)
        {
            if (_filled[g] || cells.Places[g] == 0 || !IsFirstOfItsKind(g))
                continue;
            _filled[g] = true;
            _groupOf[from] = g;
            Companions(from, from + 1, cells.Places[g] - 1, g, cells.BaseSum[g] + cells.Capacity[from],
                _problem.BaseConductanceS[g] + _problem.ConductanceS[from], (least, most), spares);
            _groupOf[from] = Unplaced;
            _filled[g] = false;
        }

        if (spares == 0)
            return;
        _groupOf[from] = -1;
        Next(from + 1, least, most, spares - 1);
        _groupOf[from] = Unplaced;
    }

    /// <summary>Open groups without pinned cells are alike: only the first of them is tried.</summary>
    private bool IsFirstOfItsKind(int group)
    {
        GroupingProblem cells = _problem.Cells;
        if (cells.Places[group] != cells.Parallel)
            return true;
        for (int g = 0; g < group; g++)
            if (!_filled[g] && cells.Places[g] == cells.Parallel)
                return false;
        return true;
    }

    private void Companions(
        int first, int from, int places, int group, long sum, double conductance, (double Least, double Most) so, int spares)
    {
        if (places == 0)
        {
            if (sum < _problem.Low || sum > _problem.High)
                return;
            double resistance = 1 / conductance;
            (double least, double most) = (Math.Min(so.Least, resistance), Math.Max(so.Most, resistance));
            if (most - least < _bestSpread)
                Next(first + 1, least, most, spares);
            return;
        }

        long[] capacity = _problem.Cells.Capacity;
        for (int i = from; i < _groupOf.Length && _budget.Spend(1); i++)
        {
            if (_groupOf[i] != Unplaced)
                continue;
            // The cells come sorted downwards: this one and its like are the most that the open places can still bring.
            if (sum + (places * capacity[i]) < _problem.Low)
                break;
            if (sum + capacity[i] > _problem.High)
                continue;
            _groupOf[i] = group;
            Companions(first, i + 1, places - 1, group, sum + capacity[i], conductance + _problem.ConductanceS[i], so, spares);
            _groupOf[i] = Unplaced;
        }
    }

    private void Finish(double least, double most)
    {
        GroupingProblem cells = _problem.Cells;
        for (int g = 0; g < cells.Series; g++)
        {
            if (cells.Places[g] > 0 && !_filled[g])
                return;
            if (cells.Places[g] > 0)
                continue;
            if (cells.BaseSum[g] < _problem.Low || cells.BaseSum[g] > _problem.High)
                return;
            double resistance = 1 / _problem.BaseConductanceS[g];
            (least, most) = (Math.Min(least, resistance), Math.Max(most, resistance));
        }

        // A hair's breadth, so that rounding in another order of the same groups does not pass for an improvement.
        if (most - least >= _bestSpread * (1 - 1e-12))
            return;
        _bestSpread = most - least;
        _best = [.. _groupOf];
    }
}
