namespace PackPlanner.Core.Grouping;

/// <summary>
/// For many cells in each group: deal the sorted cells to and fro, then exchange one cell of a group that is above its due
/// for one of a group that is below, so that the difference is exactly what one of the two lacks.
/// </summary>
/// <remarks>
/// With P cells a side there are P squared differences to choose from, so an exact exchange is nearly always found within a
/// few steps of two pointers, and each one settles a group for good: time grows with the cells, not with their product.
/// </remarks>
internal sealed class EqualDeal
{
    private const int PartnersTried = 24;
    private const int FirstExchangesTried = 96;

    private readonly DealtCells _cells;
    private readonly int _series;
    private readonly int _parallel;
    private readonly int[] _above;
    private readonly int[] _below;
    private int _belowCount;

    private EqualDeal(DealtCells cells, int series, int parallel)
    {
        _cells = cells;
        _series = series;
        _parallel = parallel;
        _above = new int[series];
        _below = new int[series];
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
        DealtCells cells = new(capacity, used, series, parallel);
        new EqualDeal(cells, series, parallel).Exchange(budget);
        cells.WriteTo(groupOf);
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
            if (_cells.ExcessOf(g) > 0)
                _above[aboveCount++] = g;
            else if (_cells.ExcessOf(g) < 0)
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
                if (_cells.ExcessOf(high) == 0)
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
            long wanted = Math.Min(_cells.ExcessOf(high), -_cells.ExcessOf(low));
            if (!_cells.FindExact(high, low, wanted, -1, -1, budget, out int a, out int b))
                continue;
            _cells.Swap(high, a, low, b);
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
        long wanted = Math.Min(_cells.ExcessOf(high), -_cells.ExcessOf(low));
        if (wanted < 4)
            return false;
        (int a, int b, long difference) = _cells.FindNearest(high, low, wanted, budget);
        if (a < 0 || difference < Math.Max(4, wanted / 2))
            return false;
        _cells.Swap(high, a, low, b);
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
            long wanted = Math.Min(_cells.ExcessOf(high), -_cells.ExcessOf(low));

            // The middles first: their differences are small, so the second exchange has many ways.
            int firstA = (_parallel / 2 + t) % _parallel;
            int firstB = (_parallel / 2 + (t / _parallel * 5)) % _parallel;
            long first = _cells[high, firstA] - _cells[low, firstB];
            if (!_cells.FindExact(high, low, wanted - first, firstA, firstB, budget, out int a, out int b))
                continue;
            (long secondHigh, long secondLow) = (_cells[high, a], _cells[low, b]);
            _cells.Swap(high, firstA, low, firstB);
            _cells.Swap(high, _cells.PositionOf(high, secondHigh), low, _cells.PositionOf(low, secondLow));
            DropWhenSettled(index);
            return true;
        }

        return false;
    }

    private void DropWhenSettled(int index)
    {
        if (_cells.ExcessOf(_below[index]) == 0)
            _below[index] = _below[--_belowCount];
    }

    private int HandOn(int high, ref int wander, SearchBudget budget)
    {
        for (int t = 0; t < _series; t++)
        {
            wander = wander + 1 == _series ? 0 : wander + 1;
            if (wander == high || _cells.ExcessOf(wander) != 0)
                continue;
            if (!_cells.FindExact(high, wander, _cells.ExcessOf(high), -1, -1, budget, out int a, out int b))
                continue;
            _cells.Swap(high, a, wander, b);
            return wander;
        }

        return -1;
    }

}
