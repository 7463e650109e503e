namespace PackPlanner.Core.Grouping;

/// <summary>
/// Groups whose cells have like resistances, so that none carries much more than its share; within that limit, groups as
/// equal in capacity as can be.
/// </summary>
/// <remarks>
/// The limit is what neighbours in the order of resistance reach, but no less than ten per cent over the equal share: below
/// that, the readings of resistance are not good enough to pay capacity for (a choice of ours, no source).
/// </remarks>
internal sealed class EvenCurrents
{
    private const double FinestLimit = 1.10;

    private readonly GroupingProblem _cells;
    private readonly SortedLot _lot;
    private readonly int[] _groupOf;
    private readonly long[] _sum;
    private readonly double _mean;
    private readonly double _limit;
    private readonly List<int>[] _members;
    private Dice _dice;

    private EvenCurrents(SortedLot lot, int[] start, double limit, ulong seed)
    {
        (_lot, _cells, _groupOf, _limit, _dice) = (lot, lot.Problem, start, limit, new Dice(seed + 11));
        _sum = [.. _cells.BaseSum];
        _members = [.. _sum.Select(_ => new List<int>())];
        for (int i = 0; i < start.Length; i++)
        {
            if (start[i] < 0)
                continue;
            _sum[start[i]] += _cells.Capacity[i];
            _members[start[i]].Add(i);
        }

        _mean = _sum.Average();
    }

    /// <summary>Arranges the cells that the strict answer uses.</summary>
    internal static GroupingTrial Arrange(SortedLot lot, GroupingTrial strict, SearchBudget budget, ulong seed)
    {
        if (lot.Problem.Parallel == 1 || lot.Problem.Needed < 2)
            return strict;
        int[] start = ByResistance(lot, strict);
        EvenCurrents search = new(lot, start, 0, seed);
        double limit = Math.Max(FinestLimit, search.WorstShare());
        int[] best = new EvenCurrents(lot, [.. start], limit * (1 + 1e-9), seed).Anneal(budget);
        return GroupingTrial.Of(lot.Problem, best);
    }

    /// <summary>Neighbours in the order of resistance together; groups with locks take their own first.</summary>
    private static int[] ByResistance(SortedLot lot, GroupingTrial strict)
    {
        int[] groupOf = [.. Enumerable.Repeat(-1, strict.GroupOf.Length)];
        List<int> queue =
            [.. Enumerable.Range(0, groupOf.Length).Where(i => strict.GroupOf[i] >= 0).OrderBy(i => lot.ConductanceS[i]).ThenBy(i => i)];
        int parallel = lot.Problem.Parallel;
        int[] pinned = [.. Enumerable.Range(0, lot.Problem.Series).Where(g => lot.Problem.Places[g] < parallel)];
        foreach (int g in pinned)
        {
            double own = lot.BaseConductanceS[g] / (parallel - lot.Problem.Places[g]);
            foreach (int cell in queue.OrderBy(i => Math.Abs(lot.ConductanceS[i] - own)).Take(lot.Problem.Places[g]).ToArray())
            {
                groupOf[cell] = g;
                queue.Remove(cell);
            }
        }

        int next = 0;
        foreach (int g in Enumerable.Range(0, lot.Problem.Series).Except(pinned))
            for (int k = 0; k < parallel; k++)
                groupOf[queue[next++]] = g;
        return groupOf;
    }

    private double WorstShare() => Enumerable.Range(0, _sum.Length).Max(g => Share(g, -1, -1));

    /// <summary>Largest share of a group, times equal, as if one cell were exchanged for another; -1 for neither.</summary>
    private double Share(int group, int without, int with)
    {
        (double most, double all) = (0, _lot.BaseConductanceS[group]);
        foreach (GroupingCell cell in _lot.Pinned[group])
            most = Math.Max(most, 1000 / cell.ResistanceMilliohm!.Value);
        foreach (int member in _members[group])
        {
            double conductance = _lot.ConductanceS[member == without ? with : member];
            most = Math.Max(most, conductance);
            all += conductance;
        }

        return _cells.Parallel * most / all;
    }

    private int[] Anneal(SearchBudget budget)
    {
        int[] best = [.. _groupOf];
        (long bestSmallest, long bestLargest) = (_sum.Min(), _sum.Max());
        int[] used = [.. Enumerable.Range(0, _groupOf.Length).Where(i => _groupOf[i] >= 0)];
        long cost = 40 + (4L * _cells.Parallel);
        long moves = budget.Left / cost / 2;
        double temperature = 40;
        double cooling = Math.Pow(0.01 / temperature, 64.0 / Math.Max(64, moves));
        for (long move = 0; move < moves; move++)
        {
            if ((move & 63) == 0)
            {
                temperature *= cooling;
                if (!budget.Spend(64 * cost * 2))
                    break;
            }

            int a = used[_dice.Below(used.Length)];
            int b = used[_dice.Below(used.Length)];
            if (!TryExchange(a, b, temperature))
                continue;
            (long smallest, long largest) = (_sum.Min(), _sum.Max());
            if (smallest < bestSmallest || (smallest == bestSmallest && largest >= bestLargest))
                continue;
            (bestSmallest, bestLargest) = (smallest, largest);
            _groupOf.CopyTo(best, 0);
        }

        return best;
    }

    private bool TryExchange(int a, int b, double temperature)
    {
        (int from, int to) = (_groupOf[a], _groupOf[b]);
        if (from == to)
            return false;
        long moved = _cells.Capacity[b] - _cells.Capacity[a];
        double change = Price(_sum[from] + moved) + Price(_sum[to] - moved) - Price(_sum[from]) - Price(_sum[to]);
        double threshold = -Math.Log((_dice.Below(1 << 24) + 1) / (double)(1 << 24));
        if ((change > 0 && change > temperature * threshold) || Share(from, a, b) > _limit || Share(to, b, a) > _limit)
            return false;
        (_groupOf[a], _groupOf[b]) = (to, from);
        _members[from][_members[from].IndexOf(a)] = b;
        _members[to][_members[to].IndexOf(b)] = a;
        _sum[from] += moved;
        _sum[to] -= moved;
        return true;
    }

    /// <summary>Squares of per mille off the mean sum.</summary>
    private double Price(long sum)
    {
        double off = ((sum / _mean) - 1) * 1000;
        return off * off;
    }
}
