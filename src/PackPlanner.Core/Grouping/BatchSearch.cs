namespace PackPlanner.Core.Grouping;

/// <summary>Groups of one batch as far as the cells allow; with that, the largest smallest group that is found.</summary>
/// <remarks>
/// Each batch is a strict problem of its own, and so are the mixed groups with what is left. Where there are mixed groups, exchanges
/// that keep to the plan raise the poorest group, and each kind is split anew.
/// </remarks>
internal sealed class BatchSearch
{
    private const int Rounds = 8;
    private readonly GroupingProblem _problem;
    private readonly SortedLot _lot;
    private readonly BatchPlan _plan;
    private readonly SearchBudget _budget;
    private readonly ulong _seed;
    private readonly int[] _kinds;
    private long _boundOfBatches = long.MaxValue;

    private BatchSearch(SortedLot lot, BatchPlan plan, SearchBudget budget, ulong seed)
    {
        (_lot, _problem, _plan, _budget, _seed) = (lot, lot.Problem, plan, budget, seed);
        _kinds = [.. plan.TypeOf.Distinct().OrderDescending()];
    }

    /// <summary>The groups, and steps that no smallest group can exceed with so many groups of one batch.</summary>
    internal static (GroupingTrial Best, long Bound) Arrange(SortedLot lot, BatchPlan plan, SearchBudget budget, ulong seed)
    {
        BatchSearch search = new(lot, plan, budget, seed);
        GroupingTrial best = search.First();
        for (int round = 0; round < Rounds && plan.Mixed > 0 && !budget.Spent; round++)
        {
            GroupingTrial better = search.SplitAnew(search.Climb(best));
            if (!better.IsBetterThan(best))
                break;
            best = better;
        }

        return (best, Math.Min(plan.BoundSteps, Math.Max(search._boundOfBatches, plan.OtherwiseSteps)));
    }

    /// <summary>One batch after the other, the mixed groups last with what is left.</summary>
    private GroupingTrial First()
    {
        int[] groupOf = new int[_problem.Capacity.Length];
        Array.Fill(groupOf, -1);
        foreach (int kind in _kinds)
        {
            long bound = Split(kind, [.. Enumerable.Range(0, groupOf.Length).Where(i => groupOf[i] < 0 && (kind < 0 || _plan.BatchOf[i] == kind))], groupOf);
            if (kind >= 0)
                _boundOfBatches = Math.Min(_boundOfBatches, bound);
        }

        return GroupingTrial.Of(_problem, groupOf);
    }

    /// <summary>The cells of each kind of group, spread over its groups anew.</summary>
    private GroupingTrial SplitAnew(GroupingTrial current)
    {
        int[] groupOf = [.. current.GroupOf];
        foreach (int kind in _kinds)
            Split(kind, [.. Enumerable.Range(0, groupOf.Length).Where(i => groupOf[i] >= 0 && _plan.TypeOf[groupOf[i]] == kind)], groupOf);
        return GroupingTrial.Of(_problem, groupOf);
    }

    private long Split(int kind, int[] cells, int[] groupOf)
    {
        int[] groups = [.. Enumerable.Range(0, _plan.TypeOf.Length).Where(g => _plan.TypeOf[g] == kind)];
        long[] pinned = [.. groups.SelectMany(g => _lot.Pinned[g]).Select(cell => _lot.StepsOf(cell))];
        GroupingProblem part = new(
            [.. cells.Select(i => _problem.Capacity[i])], _problem.Parallel,
            [.. groups.Select(g => _problem.BaseSum[g])], [.. groups.Select(g => _problem.Places[g])], pinned);
        long share = Math.Max(1, _budget.Left / (_kinds.Length + 1));
        SearchBudget given = _budget.Part(share);
        StrictAnswer answer = StrictSearch.Solve(part, given, _seed);
        int[] split = answer.Best.GroupOf;
        _budget.Settle(given, share);
        for (int i = 0; i < cells.Length; i++)
            groupOf[cells[i]] = split[i] < 0 ? -1 : groups[split[i]];
        return answer.Bound;
    }

    /// <summary>Exchanges that raise the poorest group, each the largest gain there is, as long as one does.</summary>
    private GroupingTrial Climb(GroupingTrial current)
    {
        while (!_budget.Spent && BestExchange(current) is { } better)
            current = better;
        return current;
    }

    private GroupingTrial? BestExchange(GroupingTrial current)
    {
        int poor = Array.IndexOf(current.Sum, current.Smallest);
        (long best, int inCell, int outCell) = (current.Smallest, -1, -1);
        for (int a = 0; a < current.GroupOf.Length; a++)
        {
            if (current.GroupOf[a] != poor)
                continue;
            _budget.Spend(current.GroupOf.Length);
            for (int b = 0; b < current.GroupOf.Length; b++)
            {
                int giver = current.GroupOf[b];
                long gain = _problem.Capacity[b] - _problem.Capacity[a];
                if (giver == poor || gain <= 0 || !_plan.Allows(b, poor) || !_plan.Allows(a, giver))
                    continue;
                long smallest = Math.Min(current.Smallest + gain, giver < 0 ? long.MaxValue : current.Sum[giver] - gain);
                if (smallest > best)
                    (best, inCell, outCell) = (smallest, b, a);
            }
        }

        if (inCell < 0)
            return null;
        int[] groupOf = [.. current.GroupOf];
        (groupOf[inCell], groupOf[outCell]) = (groupOf[outCell], groupOf[inCell]);
        return GroupingTrial.Of(_problem, groupOf);
    }
}
