namespace PackPlanner.Core.Grouping;

/// <summary>Makes group resistances equal while every group's capacity stays in its band.</summary>
/// <remarks>
/// Small lots completely, unless some cells are kept from some groups; others by annealing over exchanges of two cells of two groups, or of a cell and a spare. While it
/// is warm a group may leave the band at a price, since few single exchanges keep all sums to the step; what is kept is
/// always inside the band. Conductances add up, so an exchange is judged in a few operations whatever P is.
/// </remarks>
internal sealed class ResistanceLevelling
{
    private const long CompleteSteps = 30_000_000;
    private const int Rounds = 6;
    private const double DearestOutside = 30;

    private readonly LevellingProblem _problem;
    private readonly GroupingProblem _cells;
    private readonly int[] _groupOf;
    private readonly int[] _member;
    private readonly long[] _sum;
    private readonly double[] _conductance;
    private readonly double _mean;
    private readonly double _width;
    private int _outside;
    private double _priceOutside = 1;
    private Dice _dice;

    private ResistanceLevelling(LevellingProblem problem, int[] start, ulong seed)
    {
        (_problem, _cells, _groupOf, _dice) = (problem, problem.Cells, [.. start], new Dice(seed + 7));
        _conductance = problem.GroupConductanceS(start);
        _mean = _conductance.Average();
        _width = Math.Max(1, (problem.High - problem.Low) / 2.0);
        _sum = [.. _cells.BaseSum];

        _member = [.. Enumerable.Range(0, start.Length)];
        for (int i = 0; i < start.Length; i++)
            if (start[i] >= 0)
                _sum[start[i]] += _cells.Capacity[i];
    }

    /// <summary>A grouping inside the band with as little spread of group resistance as was found.</summary>
    /// <param name="problem">The cells and the band.</param>
    /// <param name="start">A grouping inside the band.</param>
    /// <param name="budget">Steps to spend.</param>
    /// <param name="seed">Another seed searches in another order.</param>
    internal static int[] Level(LevellingProblem problem, int[] start, SearchBudget budget, ulong seed = 0)
    {
        (int[] best, bool complete) = (start, false);
        if (problem.Allows is null)
        {
            SearchBudget part = budget.Part(CompleteSteps);
            best = CompleteLevelling.Best(problem, start, part, out complete);
            budget.Settle(part, CompleteSteps);
        }

        if (complete || problem.Cells.Needed < 2)
            return best;
        double spread = problem.SpreadOhm(best);
        long moves = budget.Left / 40 / Rounds;
        for (int round = 0; round < Rounds && !budget.Spent; round++)
        {
            ResistanceLevelling search = new(problem, best, seed + (ulong)round);
            int[] found = search.Anneal(moves, budget, spread, round % 2 == 0 ? 30 : 4);
            double now = problem.SpreadOhm(found);
            if (now < spread * (1 - 1e-12))
                (best, spread) = (found, now);
        }

        return best;
    }

    private int[] Anneal(long moves, SearchBudget budget, double bestSpread, double warm)
    {
        int[] best = [.. _groupOf];
        double cooling = Math.Pow(0.02 / warm, 1.0 / Math.Max(1, moves / 64));
        double temperature = warm;
        for (long move = 0; move < moves; move++)
        {
            if ((move & 63) == 0)
            {
                temperature *= cooling;
                _priceOutside = 1 + (DearestOutside * move / moves);
                if (!budget.Spend(64 * 40))
                    break;
            }

            int a = _dice.Below(_member.Length);
            int b = _dice.Below(_member.Length);
            (int cellA, int cellB) = (_member[a], _member[b]);
            (int from, int to) = (_groupOf[cellA], _groupOf[cellB]);
            if (from == to || (_problem.Allows is { } allows && !(allows(cellA, to) && allows(cellB, from))))
                continue;
            double change = Change(cellA, from, cellB, to);
            if (change > 0 && change > temperature * Threshold())
                continue;
            Exchange(a, b, cellA, cellB, from, to);
            if (_outside > 0)
                continue;
            double spread = (1 / Least()) - (1 / Most());
            if (spread < bestSpread)
            {
                bestSpread = spread;
                _groupOf.CopyTo(best, 0);
            }
        }

        return best;
    }

    /// <summary>Minus the logarithm of a chance: a move is taken when its price over the temperature is below.</summary>
    private double Threshold() => -Math.Log((_dice.Below(1 << 24) + 1) / (double)(1 << 24));

    private double Change(int cellA, int from, int cellB, int to)
    {
        long moved = _cells.Capacity[cellB] - _cells.Capacity[cellA];
        double conducted = _problem.ConductanceS[cellB] - _problem.ConductanceS[cellA];
        double change = 0;
        if (from >= 0)
            change += Price(_sum[from] + moved, _conductance[from] + conducted) - Price(_sum[from], _conductance[from]);
        if (to >= 0)
            change += Price(_sum[to] - moved, _conductance[to] - conducted) - Price(_sum[to], _conductance[to]);
        return change;
    }

    /// <summary>Squares of per cents off the mean conductance, and of band widths outside the band.</summary>
    private double Price(long sum, double conductance)
    {
        double off = ((conductance / _mean) - 1) * 100;
        long beyond = Math.Max(0, Math.Max(_problem.Low - sum, sum - _problem.High));
        double outside = beyond / _width;
        return (off * off) + (beyond > 0 ? _priceOutside * (1 + (4 * outside * outside)) : 0);
    }

    private void Exchange(int a, int b, int cellA, int cellB, int from, int to)
    {
        (_member[a], _member[b]) = (cellB, cellA);
        (_groupOf[cellA], _groupOf[cellB]) = (to, from);
        long moved = _cells.Capacity[cellB] - _cells.Capacity[cellA];
        double conducted = _problem.ConductanceS[cellB] - _problem.ConductanceS[cellA];
        Add(from, moved, conducted);
        Add(to, -moved, -conducted);
    }

    private void Add(int group, long steps, double conductance)
    {
        if (group < 0)
            return;
        _outside -= IsOutside(group);
        _sum[group] += steps;
        _conductance[group] += conductance;
        _outside += IsOutside(group);
    }

    private int IsOutside(int group) => _sum[group] < _problem.Low || _sum[group] > _problem.High ? 1 : 0;

    private double Least() => _conductance.Min();

    private double Most() => _conductance.Max();
}
