using BenchmarkDotNet.Attributes;
using PackPlanner.Core.Sharing;

namespace PackPlanner.Benchmarks;

/// <summary>Dividing a load: the ratio of two rows is to stay near the ratio of their cells.</summary>
[ShortRunJob]
public class SharingBenchmarks
{
    private ParallelCells thousand = null!;
    private ParallelCells hundredThousand = null!;

    [GlobalSetup]
    public void Build()
    {
        thousand = Group(1_000);
        hundredThousand = Group(100_000);
    }

    [Benchmark(Baseline = true)]
    public double A_thousand_cells() => CurrentSharing.AtFirstInstant(thousand, 3_000).TerminalV;

    [Benchmark]
    public double A_hundred_thousand_cells() => CurrentSharing.AtFirstInstant(hundredThousand, 300_000).TerminalV;

    private static ParallelCells Group(int cells)
    {
        Random random = new(1);
        return ParallelCells.Alike(
            1, [.. Enumerable.Range(0, cells).Select(i => new CellBranch($"{i}", 3.6 + 0.01 * random.NextDouble(), 20 + 10 * random.NextDouble()))], 0.001, 1, cells);
    }
}
