using System.Diagnostics;
using System.Globalization;
using PackPlanner.Core.Grouping;

namespace PackPlanner.Benchmarks;

/// <summary>How the time of matching grows with the cells: least of several runs over the same invented lots, slope on logarithmic scales.</summary>
internal static class GroupingGrowth
{
    private static readonly int[] Cells = [400, 1_200, 4_000, 12_000, 40_000];

    internal static void Run()
    {
        Console.WriteLine();
        Console.WriteLine("Matching, groups of twenty, a twentieth to spare: time for each cell over that of the smallest lot");
        (string Name, int SeriesAtMost)[] kinds = [("more groups of twenty", int.MaxValue), ("twenty groups, wider", 20)];
        foreach ((string name, int seriesAtMost) in kinds)
        {
            double[] seconds = [.. Cells.Select(cells => Least(cells, Math.Min(seriesAtMost, cells / 20)))];
            double x = Cells.Average(cells => Math.Log(cells)), y = seconds.Average(Math.Log);
            double slope = Cells.Zip(seconds, (cells, s) => (Math.Log(cells) - x) * (Math.Log(s) - y)).Sum() / Cells.Sum(cells => (Math.Log(cells) - x) * (Math.Log(cells) - x));
            string each = string.Join(", ", Cells.Zip(seconds, (cells, s) => string.Create(CultureInfo.InvariantCulture, $"{cells}: {s / cells / (seconds[0] / Cells[0]):0.00}")));
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {name}: {each}; slope {slope:0.00}"));
        }
    }

    // Three lots, the whole answer through the room's door, each the least of three.
    private static double Least(int cells, int series)
    {
        double sum = 0;
        for (int seed = 0; seed < 3; seed++)
        {
            Random random = new(seed);
            GroupingCell[] lot =
            [
                .. Enumerable.Range(0, cells + cells / 20).Select(i => new GroupingCell(
                    $"{i}", Math.Round(2150 + 180 * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble())) / 1000, null)),
            ];
            GroupingRequest request = new() { Cells = lot, Series = series, Parallel = cells / series };
            double least = double.PositiveInfinity;
            for (int round = 0; round < 3; round++)
            {
                long start = Stopwatch.GetTimestamp();
                GroupMatcher.Match(request);
                least = Math.Min(least, Stopwatch.GetElapsedTime(start).TotalSeconds);
            }

            sum += least;
        }

        return sum;
    }
}
