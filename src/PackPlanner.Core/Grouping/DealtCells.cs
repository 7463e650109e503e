namespace PackPlanner.Core.Grouping;

/// <summary>Sorted cells dealt to and fro over the groups, each group kept sorted downwards while cells are exchanged.</summary>
/// <remarks>The cells stay in dealing order, row by row, so that every pass over all of them runs straight through memory.</remarks>
internal sealed class DealtCells
{
    private readonly int _series;
    private readonly int _parallel;
    private readonly long[] _value;
    private readonly int[] _id;
    private readonly long[] _excess;

    /// <summary>Deals.</summary>
    /// <param name="capacity">Steps, sorted downwards.</param>
    /// <param name="used">Indices of the S x P cells to use, ascending.</param>
    /// <param name="series">Groups.</param>
    /// <param name="parallel">Cells in each.</param>
    internal DealtCells(long[] capacity, int[] used, int series, int parallel)
    {
        (_series, _parallel) = (series, parallel);
        (_value, _id, _excess) = (new long[used.Length], new int[used.Length], new long[series]);
        Deal(capacity, used);
    }

    /// <summary>Steps of the cell of a rank in a group.</summary>
    internal long this[int group, int rank] => _value[SlotOf(group, rank)];

    /// <summary>Steps by which a group is above its due.</summary>
    internal long ExcessOf(int group) => _excess[group];

    /// <summary>Writes the group of each cell that was dealt.</summary>
    internal void WriteTo(int[] groupOf)
    {
        for (int k = 0, slot = 0; k < _parallel; k++)
            for (int g = 0; g < _series; g++, slot++)
                groupOf[_id[slot]] = g;
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
        bool[] given = new bool[_series];
        for (int g = 0; g < _series; g++)
        {
            _excess[g] -= due;
            given[g] = _excess[g] > 0 && extra > 0;
            if (!given[g])
                continue;
            _excess[g]--;
            extra--;
        }

        for (int g = 0; g < _series && extra > 0; g++)
        {
            if (given[g])
                continue;
            _excess[g]--;
            extra--;
        }
    }

    private int SlotOf(int group, int rank) => (rank * _series) + group;

    /// <summary>Rank of a cell of this value in a group that has one.</summary>
    internal int PositionOf(int group, long value)
    {
        int rank = 0;
        while (_value[SlotOf(group, rank)] != value)
            rank++;
        return rank;
    }

    /// <summary>A cell of each group, by rank, whose difference is exactly the wanted one.</summary>
    /// <remarks>The step of the two pointers is chosen without a branch: which one moves cannot be predicted.</remarks>
    internal bool FindExact(
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
    internal (int A, int B, long Difference) FindNearest(int high, int low, long wanted, SearchBudget budget)
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

    /// <summary>Exchanges a cell of one group for one of another, by rank.</summary>
    internal void Swap(int high, int a, int low, int b)
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
