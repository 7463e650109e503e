namespace PackPlanner.Formats.Logs;

/// <summary>A growing column of doubles in blocks, so that growing neither copies nor doubles.</summary>
internal sealed class ColumnBuffer
{
    private const int Bits = 16;
    private const int Block = 1 << Bits;
    private readonly List<double[]> _blocks = [];
    private double[] _last = [];
    private int _at = Block;

    internal int Count => ((_blocks.Count - 1) << Bits) + _at;

    internal void Add(double value)
    {
        if (_at == Block)
        {
            _last = GC.AllocateUninitializedArray<double>(Block);
            _blocks.Add(_last);
            _at = 0;
        }

        _last[_at++] = value;
    }

    /// <summary>All figures as one array; the blocks are let go one by one.</summary>
    internal double[] ToArray()
    {
        if (_blocks.Count == 0)
            return [];
        double[] all = GC.AllocateUninitializedArray<double>(Count);
        for (int i = 0; i < _blocks.Count; i++)
        {
            int from = i << Bits;
            Array.Copy(_blocks[i], 0, all, from, Math.Min(Block, all.Length - from));
            _blocks[i] = [];
        }

        _blocks.Clear();
        _at = Block;
        return all;
    }
}
