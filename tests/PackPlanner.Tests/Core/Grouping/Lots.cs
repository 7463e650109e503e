using CsCheck;

namespace PackPlanner.Tests.Core.Grouping;

/// <summary>Made-up lots of whole numbers, sorted downwards.</summary>
internal static class Lots
{
    internal static readonly (int Series, int Parallel)[] TinyShapes =
        [(2, 2), (3, 1), (4, 1), (2, 3), (3, 3), (2, 4), (4, 2), (3, 2), (2, 5), (5, 2)];

    private static readonly (long, long)[] Ranges = [(1, 6), (1900, 2400), (180, 260), (300, 6000)];

    /// <summary>A shape and at most ten cells for it: even lots, coarse ones with many equals, and lots with outliers.</summary>
    internal static readonly Gen<(int Series, int Parallel, long[] Cells)> Tiny =
        from shape in Gen.Int[0, TinyShapes.Length - 1].Select(i => TinyShapes[i])
        from spares in Gen.Int[0, 2]
        from range in Gen.Int[0, Ranges.Length - 1].Select(i => Ranges[i])
        from cells in Gen.Long[range.Item1, range.Item2].Array[Math.Min(10, (shape.Series * shape.Parallel) + spares)]
        select (shape.Series, shape.Parallel, Downwards(cells));

    internal static long[] Downwards(IEnumerable<long> cells) => [.. cells.OrderDescending()];

    /// <summary>Used cells as a tester would give them: about normal, 2,150 on average, 180 wide, whole steps.</summary>
    internal static long[] Used(int count, int seed, double mean = 2150, double deviation = 180)
    {
        Random random = new(seed);
        return Downwards(Enumerable.Range(0, count).Select(_ =>
        {
            double far = Math.Sqrt(-2 * Math.Log(1 - random.NextDouble()));
            return (long)Math.Round(mean + (deviation * far * Math.Cos(2 * Math.PI * random.NextDouble())));
        }));
    }

    /// <summary>A lot with a perfect split: every group has this sum, and nothing else is known of it.</summary>
    internal static long[] Planted(int series, int parallel, long sum, int seed)
    {
        Random random = new(seed);
        List<long> cells = [];
        for (int g = 0; g < series; g++)
        {
            long left = sum;
            for (int k = 1; k < parallel; k++)
            {
                long cell = (sum / parallel) + random.Next(-250, 251);
                cells.Add(cell);
                left -= cell;
            }

            cells.Add(left);
        }

        return Downwards(cells);
    }
}
