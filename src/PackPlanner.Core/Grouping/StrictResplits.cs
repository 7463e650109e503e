namespace PackPlanner.Core.Grouping;

/// <summary>Local search for lots that are too large to search whole.</summary>
internal sealed class StrictResplits(StrictProgress found)
{
    private readonly GroupingProblem _problem = found.Problem;
    private readonly StrictProgress _found = found;

    /// <summary>Local search: the worst group with some others is split anew, exactly, as long as that helps.</summary>
    internal void Run(long steps)
    {
        int[] open = [.. Enumerable.Range(0, _problem.Series).Where(g => _problem.Places[g] > 0)];
        int atOnce = Math.Min(PoolResplit.MostGroupsAtOnce(_problem.Parallel), open.Length);
        if (atOnce < 2)
            return;
        GroupingTrial current = _found.Best;
        SearchBudget part = _found.Budget.Part(steps);
        while (!_found.Done && !part.Spent)
        {
            // Drawing and adding up look at every cell.
            part.Spend(2L * _problem.Capacity.Length);
            bool settled = current.Smallest == _found.Bound;
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
            _found.Take(current);
        }

        _found.Budget.Settle(part, steps);
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
        if (richest != worst && _found.Dice.Below(4) != 0)
            groups[k++] = richest;
        while (k < count)
        {
            int group = open[_found.Dice.Below(open.Length)];
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
            int at = _found.Dice.Below(spares.Count);
            cells.Add(spares[at]);
            spares.RemoveAt(at);
        }

        cells.Sort();
        return [.. cells];
    }
}
