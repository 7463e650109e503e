namespace PackPlanner.Core.Grouping;

/// <summary>All choices of a few cells from a pool with their sums, sorted: the halves of which whole groups are joined.</summary>
internal sealed class PartSums
{
    private readonly long[] _capacity;
    private readonly CellSet[] _cells;
    private int _count;

    /// <param name="capacity">Steps, the pool's cells.</param>
    /// <param name="size">Cells in each choice, 1 or more.</param>
    internal PartSums(long[] capacity, int size)
    {
        _capacity = capacity;
        int all = (int)Count(capacity.Length, size);
        _cells = new CellSet[all];
        Sum = new long[all];
        Add(0, size, 0, default);
        Array.Sort(Sum, _cells);
    }

    internal long[] Sum { get; }

    internal ReadOnlySpan<CellSet> Cells => _cells;

    /// <summary>How many choices of that size there are, capped far above what can be listed.</summary>
    internal static double Count(int cells, int size)
    {
        double count = 1;
        for (int k = 0; k < size; k++)
            count = count * (cells - k) / (k + 1);
        return Math.Round(count);
    }

    private void Add(int next, int places, long sum, CellSet cells)
    {
        if (places == 0)
        {
            Sum[_count] = sum;
            _cells[_count++] = cells;
            return;
        }

        for (int i = next; i <= _capacity.Length - places; i++)
            Add(i + 1, places - 1, sum + _capacity[i], cells.With(i));
    }
}
