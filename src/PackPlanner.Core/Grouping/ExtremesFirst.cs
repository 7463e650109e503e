namespace PackPlanner.Core.Grouping;

/// <summary>
/// Builds groups one by one to an exact sum, the most extreme cell first, so that the last groups are made of the crowded
/// middle, where almost any sum can be met.
/// </summary>
/// <remarks>
/// Each group takes the most extreme cell left, cancels it with cells from the ends, and takes its last two or three cells by
/// a two-pointer search for exactly what is missing: about n steps a group. The wanted sum is always the average of what is
/// left, so a group that must be high or low passes the difference on.
/// </remarks>
internal sealed class ExtremesFirst
{
    private const int ThirdCellsTried = 64;

    private readonly GroupingProblem _problem;
    private readonly int[] _used;
    private readonly int[] _order;
    private readonly long[] _value;
    private readonly int[] _id;
    private readonly int[] _picked;
    private int _count;
    private int _pickedCount;

    /// <param name="problem">The cells and groups.</param>
    /// <param name="used">Indices of the free cells to use, ascending; as many as there are open places.</param>
    internal ExtremesFirst(GroupingProblem problem, int[] used)
    {
        _problem = problem;
        _used = used;
        _value = new long[used.Length];
        _id = new int[used.Length];
        _picked = new int[problem.Parallel];
        _order = [.. Enumerable.Range(0, problem.Series).Where(g => problem.Places[g] > 0)];
        if (problem.HasPins)
            _order = [.. _order.OrderBy(g => problem.Places[g])];
    }

    /// <summary>How many groups of the order are filled before <see cref="Build"/> stopped.</summary>
    internal int Filled { get; private set; }

    /// <summary>The cells that Build left, for an end game over the last groups.</summary>
    internal ReadOnlySpan<int> LeftCells => _id.AsSpan(0, _count);

    /// <summary>The groups that Build left open.</summary>
    internal ReadOnlySpan<int> LeftGroups => _order.AsSpan(Filled);

    internal int OpenGroups => _order.Length;

    /// <summary>Fills all but the last groups; false as soon as a group falls outside the limits.</summary>
    /// <param name="stopBefore">How many groups of the order to leave open, 0 for none.</param>
    /// <param name="low">Steps; a group below ends the attempt.</param>
    /// <param name="high">Steps; a group above ends the attempt.</param>
    /// <param name="dice">Chance, used only when varying.</param>
    /// <param name="vary">False for the plain attempt, true for one with small variations.</param>
    /// <param name="budget">Steps to spend.</param>
    /// <param name="groupOf">Group of each free cell of the problem; written for the used cells.</param>
    internal bool Build(int stopBefore, long low, long high, ref Dice dice, bool vary, SearchBudget budget, int[] groupOf)
    {
        _count = _used.Length;
        long total = 0;
        for (int i = 0; i < _count; i++)
        {
            _id[i] = _used[i];
            _value[i] = _problem.Capacity[_used[i]];
            total += _value[i];
        }

        foreach (int group in _order)
            total += _problem.BaseSum[group];
        for (Filled = 0; Filled < _order.Length - stopBefore; Filled++)
        {
            int group = _order[Filled];
            int groupsLeft = _order.Length - Filled;
            long wanted = total / groupsLeft;
            if (vary && groupsLeft > 1 && dice.Below(2) == 0)
                wanted = (total + groupsLeft - 1) / groupsLeft;
            long sum = _problem.BaseSum[group] + Fill(group, wanted - _problem.BaseSum[group], ref dice, vary, budget);
            if (sum < low || sum > high || budget.Spent)
                return false;
            total -= sum;
            for (int i = 0; i < _pickedCount; i++)
                groupOf[_id[_picked[i]]] = group;
            RemovePicked();
        }

        return true;
    }

    private long Fill(int group, long need, ref Dice dice, bool vary, SearchBudget budget)
    {
        int places = _problem.Places[group];
        bool takeExtreme = places == _problem.Parallel && places > 1;
        (int top, int bottom) = (0, _count - 1);
        long rest = 0;
        for (int i = 0; i < _count; i++)
            rest += _value[i];
        long mean = rest / _count;
        _pickedCount = 0;
        long missing = need;
        while (places > 3 || (takeExtreme && places > 1))
        {
            long aim = missing - (places * mean);
            bool fromTop = takeExtreme && Math.Abs(aim) <= places
                ? _value[top] - mean >= mean - _value[bottom]
                : aim > 0;
            if (vary && dice.Below(8) == 0)
                fromTop = !fromTop;
            int position = fromTop ? top++ : bottom--;
            _picked[_pickedCount++] = position;
            missing -= _value[position];
            places--;
            takeExtreme = false;
        }

        budget.Spend((3L * _count) + 8);
        missing -= places switch
        {
            1 => TakeOne(missing, top, bottom),
            2 => TakeTwo(missing, top, bottom, ref dice, vary, budget),
            _ => TakeThree(missing, top, bottom, mean, ref dice, vary, budget),
        };
        return need - missing;
    }

    private long TakeOne(long missing, int top, int bottom)
    {
        int best = top;
        for (int i = top + 1; i <= bottom; i++)
            if (Math.Abs(_value[i] - missing) < Math.Abs(_value[best] - missing))
                best = i;
        _picked[_pickedCount++] = best;
        return _value[best];
    }

    private long TakeTwo(long missing, int top, int bottom, ref Dice dice, bool vary, SearchBudget budget)
    {
        (int first, int second, long sum) = NearestTwo(missing, top, bottom, -1, ref dice, vary, budget);
        _picked[_pickedCount++] = first;
        _picked[_pickedCount++] = second;
        return sum;
    }

    private long TakeThree(
        long missing, int top, int bottom, long mean, ref Dice dice, bool vary, SearchBudget budget)
    {
        bool fromTop = missing > 3 * mean;
        int offset = vary ? dice.Below(Math.Min(4, bottom - top - 1)) : 0;
        (int a, int b, int c, long bestSum) = (-1, -1, -1, 0);
        int tries = Math.Min(ThirdCellsTried, bottom - top + 1 - offset);
        for (int k = 0; k < tries; k++)
        {
            int third = fromTop ? top + offset + k : bottom - offset - k;
            (int first, int second, long sum) =
                NearestTwo(missing - _value[third], top, bottom, third, ref dice, vary, budget);
            sum += _value[third];
            if (a < 0 || Math.Abs(sum - missing) < Math.Abs(bestSum - missing))
                (a, b, c, bestSum) = (first, second, third, sum);
            if (bestSum == missing || budget.Spent)
                break;
        }

        _picked[_pickedCount++] = a;
        _picked[_pickedCount++] = b;
        _picked[_pickedCount++] = c;
        return bestSum;
    }

    /// <summary>
    /// Two cells in [top, bottom], not the excluded one, whose sum is nearest to what is missing; found from the ends
    /// inwards, so that of several exact pairs the most extreme one comes first.
    /// </summary>
    private (int First, int Second, long Sum) NearestTwo(
        long missing, int top, int bottom, int excluded, ref Dice dice, bool vary, SearchBudget budget)
    {
        (int i, int j) = (top, bottom);
        (int first, int second, long bestSum, long bestMiss) = (-1, -1, 0, long.MaxValue);
        while (i < j)
        {
            if (i == excluded)
            {
                i++;
                continue;
            }

            if (j == excluded)
            {
                j--;
                continue;
            }

            long sum = _value[i] + _value[j];
            long miss = sum - missing;
            if (Math.Abs(miss) < bestMiss)
            {
                (first, second, bestSum, bestMiss) = (i, j, sum, Math.Abs(miss));
                if (miss == 0 && !(vary && dice.Below(3) == 0))
                    break;
            }

            if (miss > 0)
                i++;
            else
                j--;
        }

        budget.Spend(bottom - top - (j - i) + 1);
        return (first, second, bestSum);
    }

    private void RemovePicked()
    {
        Span<int> gone = _picked.AsSpan(0, _pickedCount);
        gone.Sort();
        int write = gone.Length == 0 ? _count : gone[0];
        int next = 0;
        for (int read = write; read < _count; read++)
        {
            if (next < gone.Length && read == gone[next])
            {
                next++;
                continue;
            }

            _value[write] = _value[read];
            _id[write++] = _id[read];
        }

        _count = write;
    }
}
