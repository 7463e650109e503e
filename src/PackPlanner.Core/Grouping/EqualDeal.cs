namespace PackPlanner.Core.Grouping;

/// <summary>
/// For many cells in each group: deal the sorted cells to and fro, then exchange one cell of a group that is above its due
/// for one of a group that is below, so that the difference is exactly what one of the two lacks.
/// </summary>
/// <remarks>
/// With P cells a side there are P squared differences to choose from, so an exact exchange is nearly always found within a
/// few steps of two pointers, and each one settles a group for good: time grows with the cells, not with their product.
/// The cells stay in dealing order, row by row, so that every pass over all of them runs straight through memory.
/// </remarks>
internal sealed class EqualDeal
{
    private const int PartnersTried = 24;
    private const int FirstExchangesTried = 96;

    private readonly int _series;
    private readonly int _parallel;
    private readonly long[] _value;
    private readonly int[] _id;
    private readonly long[] _excess;
    private readonly int[] _above;
    private readonly int[] _below;
    private int _belowCount;

    private EqualDeal(long[] capacity, int[] used, int series, int parallel)
    {
        _series = series;
        _parallel = parallel;
        _value = new long[used.Length];
        _id = new int[used.Length];
        _excess = new long[series];
        _above = new int[series];
        _below = new int[series];
        Deal(capacity, used);
    }

    /// <summary>Deals and exchanges; nothing may be pinned.</summary>
    /// <param name="capacity">Steps, sorted downwards.</param>
    /// <param name="used">Indices of the S x P cells to use, ascending.</param>
    /// <param name="series">Groups.</param>
    /// <param name="parallel">Cells in each.</param>
    /// <param name="budget">Steps to spend.</param>
    /// <param name="groupOf">Written for the used cells.</param>
    internal static void Run(
        long[] capacity, int[] used, int series, int parallel, SearchBudget budget, int[] groupOf)
    {
        EqualDeal deal = new(capacity, used, series, parallel);
        deal.Exchange(budget);
        for (int k = 0, slot = 0; k < parallel; k++)
            for (int g = 0; g < series; g++, slot++)
                groupOf[deal._id[slot]] = g;
    }

    private void Deal(long[] capacity, int[] used)
    {
        long total = 0;
        for (int k = 0; k < _parallel; k++)
        {
            // To and fro: every second row is laid down backwards.
            int row = k * _series;
            (int from, int by) = (k & 1) == 0 ? (row, 1) : (row + _series - 1, -1);
            for (int g = 0; g < _series; g++, from += by)
            {
                int id = used[from];
                long value = capacity[id];
                _id[row + g] = id;
                _value[row + g] = value;
                _excess[g] += value;
                total += value;
            }
        }

        ShareOut(total);
    }

    /// <summary>
    /// Each group is due the average; the remainder goes, one step each, to groups that are above the average anyway, and
    /// to any others when those are too few.
    /// </summary>
    private void ShareOut(long total)
    {
        long due = total / _series;
        long extra = total - (due * _series);
        for (int g = 0; g < _series; g++)
        {
            _excess[g] -= due;
            _above[g] = _excess[g] > 0 && extra > 0 ? 1 : 0;
            _excess[g] -= _above[g];
            extra -= _above[g];
        }

        for (int g = 0; g < _series && extra > 0; g++)
        {
            if (_above[g] != 0)
                continue;
            _excess[g]--;
            extra--;
        }
    }

    private void Exchange(SearchBudget budget)
    {
        // Neighbours in the deal hold nearly the same cells and so offer the same differences: walk in wide strides.
        int stride = Math.Max(1, (int)(_series * 0.618));
        while (CommonDivisor(stride, _series) != 1)
            stride++;
        int aboveCount = 0;
        for (int i = 0, g = 0; i < _series; i++, g = (g + stride) % _series)
        {
            if (_excess[g] > 0)
                _above[aboveCount++] = g;
            else if (_excess[g] < 0)
                _below[_belowCount++] = g;
        }

        // Each turn settles a group or makes the total excess smaller; the limit is for what cannot be settled.
        long turns = 16L * _series;
        (int wander, int failures) = (0, 0);
        while (aboveCount > 0 && failures < aboveCount && turns-- > 0 && budget.Spend(8))
        {
            int high = _above[aboveCount - 1];
            if (SettleAgainstBelow(high, budget) || SettleByTwo(high, budget))
            {
                failures = 0;
                if (_excess[high] == 0)
                    aboveCount--;
                continue;
            }

            // No partner fits: hand the excess on, exactly, to a group that was settled, and let that one try; else wait.
            int heir = HandOn(high, ref wander, budget);
            if (heir >= 0)
            {
                _above[aboveCount - 1] = heir;
                continue;
            }

            failures++;
            Array.Copy(_above, 0, _above, 1, aboveCount - 1);
            _above[0] = high;
        }
    }

    private static int CommonDivisor(int a, int b) => b == 0 ? a : CommonDivisor(b, a % b);

    private bool SettleAgainstBelow(int high, SearchBudget budget)
    {
        int tries = Math.Min(PartnersTried, _belowCount);
        for (int t = 0; t < tries; t++)
        {
            int index = _belowCount - 1 - t;
            int low = _below[index];
            long wanted = Math.Min(_excess[high], -_excess[low]);
            if (!FindExact(high, low, wanted, -1, -1, budget, out int a, out int b))
                continue;
            Swap(high, a, low, b);
            DropWhenSettled(index);
            return true;
        }

        return SettleRoughly(high, budget);
    }

    /// <summary>While the sums are far apart, any large step towards the middle helps.</summary>
    private bool SettleRoughly(int high, SearchBudget budget)
    {
        if (_belowCount == 0)
            return false;
        int low = _below[_belowCount - 1];
        long wanted = Math.Min(_excess[high], -_excess[low]);
        if (wanted < 4)
            return false;
        (int a, int b, long difference) = FindNearest(high, low, wanted, budget);
        if (a < 0 || difference < Math.Max(4, wanted / 2))
            return false;
        Swap(high, a, low, b);
        DropWhenSettled(_belowCount - 1);
        return true;
    }

    /// <summary>Two cells for two: any first exchange, then one that makes up exactly what it missed.</summary>
    private bool SettleByTwo(int high, SearchBudget budget)
    {
        for (int t = 0; t < FirstExchangesTried && _belowCount > 0; t++)
        {
            int index = t % _belowCount;
            int low = _below[index];
            long wanted = Math.Min(_excess[high], -_excess[low]);

            // The middles first: their differences are small, so the second exchange has many ways.
            int firstA = (_parallel / 2 + t) % _parallel;
            int firstB = (_parallel / 2 + (t / _parallel * 5)) % _parallel;
            long first = _value[SlotOf(high, firstA)] - _value[SlotOf(low, firstB)];
            if (!FindExact(high, low, wanted - first, firstA, firstB, budget, out int a, out int b))
                continue;
            (long secondHigh, long secondLow) = (_value[SlotOf(high, a)], _value[SlotOf(low, b)]);
            Swap(high, firstA, low, firstB);
            Swap(high, PositionOf(high, secondHigh), low, PositionOf(low, secondLow));
            DropWhenSettled(index);
            return true;
        }

        return false;
    }

    private void DropWhenSettled(int index)
    {
        if (_excess[_below[index]] == 0)
            _below[index] = _below[--_belowCount];
    }

    private int HandOn(int high, ref int wander, SearchBudget budget)
    {
        for (int t = 0; t < _series; t++)
        {
            wander = wander + 1 == _series ? 0 : wander + 1;
            if (wander == high || _excess[wander] != 0)
                continue;
            if (!FindExact(high, wander, _excess[high], -1, -1, budget, out int a, out int b))
                continue;
            Swap(high, a, wander, b);
            return wander;
        }

        return -1;
    }

    private int SlotOf(int group, int rank) => (rank * _series) + group;

    private int PositionOf(int group, long value)
    {
        int rank = 0;
        while (_value[SlotOf(group, rank)] != value)
            rank++;
        return rank;
    }

    /// <summary>A cell of each group, by rank, whose difference is exactly the wanted one.</summary>
    /// <remarks>The step of the two pointers is chosen without a branch: which one moves cannot be predicted.</remarks>
    private bool FindExact(
        int high, int low, long wanted, int exceptA, int exceptB, SearchBudget budget, out int a, out int b)
    {
        long[] values = _value;
        (int step, int end) = (_series, values.Length);
        (int upper, int lower) = (high, low);
        (int notUpper, int notLower) = (SlotOf(high, exceptA), SlotOf(low, exceptB));
        bool found = false;
        while (upper < end && lower < end)
        {
            long over = values[upper] - values[lower] - wanted;
            if (over == 0)
            {
                if (upper != notUpper && lower != notLower)
                {
                    found = true;
                    break;
                }

                if (upper == notUpper)
                    upper += step;
                else
                    lower += step;
                continue;
            }

            int move = over > 0 ? step : 0;
            upper += move;
            lower += step - move;
        }

        (a, b) = (upper / step, lower / step);
        budget.Spend(a + b + 2);
        return found;
    }

    /// <summary>A cell of each group, by rank; their difference is the nearest that is not above the wanted one.</summary>
    private (int A, int B, long Difference) FindNearest(int high, int low, long wanted, SearchBudget budget)
    {
        (int a, int b, int bestA, int bestB, long best) = (0, 0, -1, -1, 0);
        while (a < _parallel && b < _parallel)
        {
            long difference = _value[SlotOf(high, a)] - _value[SlotOf(low, b)];
            if (difference > wanted)
            {
                a++;
                continue;
            }

            if (difference > best)
                (bestA, bestB, best) = (a, b, difference);
            b++;
        }

        budget.Spend(a + b + 2);
        return (bestA, bestB, best);
    }

    private void Swap(int high, int a, int low, int b)
    {
        int fromHigh = SlotOf(high, a);
        int fromLow = SlotOf(low, b);
        (long highValue, int highId) = (_value[fromHigh], _id[fromHigh]);
        (long lowValue, int lowId) = (_value[fromLow], _id[fromLow]);
        Replace(high, a, lowValue, lowId);
        Replace(low, b, highValue, highId);
        _excess[high] -= highValue - lowValue;
        _excess[low] += highValue - lowValue;
    }

    /// <summary>Puts a cell in the place of another and keeps the group sorted downwards.</summary>
    private void Replace(int group, int rank, long value, int id)
    {
        int slot = SlotOf(group, rank);
        while (rank + 1 < _parallel && _value[SlotOf(group, rank + 1)] > value)
            slot = Shift(slot, SlotOf(group, ++rank));
        while (rank > 0 && _value[SlotOf(group, rank - 1)] < value)
            slot = Shift(slot, SlotOf(group, --rank));
        _value[slot] = value;
        _id[slot] = id;
    }

    private int Shift(int to, int from)
    {
        _value[to] = _value[from];
        _id[to] = _id[from];
        return from;
    }
}
