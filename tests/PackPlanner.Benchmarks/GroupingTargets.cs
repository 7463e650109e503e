using System.Diagnostics;
using PackPlanner.Core.Grouping;

namespace PackPlanner.Benchmarks;

/// <summary>
/// Matching against sorting the same whole numbers, in one run: <c>dotnet run -c Release --project
/// tests/PackPlanner.Benchmarks -- grouping</c>. Medians over many invented lots; only the ratios mean anything.
/// </summary>
internal static class GroupingTargets
{
    private static readonly (int Series, int Parallel, double Spares, int Lots, double Target)[] AgainstSorting =
    [
        (4, 20, 0.05, 1000, 2.5), (10, 20, 0.05, 1000, 2.5), (20, 20, 0.05, 500, 2.5), (13, 6, 0, 500, 100), (13, 6, 0.1, 500, 100), (20, 10, 0.05, 500, 100),
        (40, 6, 0, 200, 100), (100, 100, 0.05, 50, 1), (100, 1000, 0.05, 20, 0.5), (1000, 10, 0.05, 20, 150), (1000, 10, 0, 20, 150),
    ];

    private static readonly (int Series, int Parallel, double Spares, int Lots)[] Quality =
    [
        (7, 2, 0.1, 20), (7, 4, 0, 20), (7, 4, 0.05, 20), (8, 4, 0.05, 20), (10, 4, 0.05, 20), (10, 5, 0, 20), (16, 4, 0.05, 20), (20, 3, 0.05, 10),
        (12, 5, 0, 20), (13, 4, 0.05, 20), (50, 4, 0.05, 10), (50, 3, 0.05, 6), (100, 3, 0.05, 4), (16, 5, 0.05, 20),
    ];

    private static readonly (int Series, int Parallel, double Spares)[] Levelling =
        [(7, 4, 0), (7, 4, 0.1), (10, 5, 0), (13, 6, 0), (20, 10, 0.05), (14, 8, 0)];

    internal static void Run()
    {
        Console.WriteLine("Against sorting the same numbers: of each lot the least of eight runs of either, which other work on the machine cannot raise;");
        Console.WriteLine("median, nine in ten and worst of the lots, and the median of single runs as they come");
        Console.WriteLine("shape        cells   target  match/sort  nine in ten    worst  single runs  largest gap  largest spread     proven");
        foreach (var shape in AgainstSorting)
            Sorting(shape.Series, shape.Parallel, shape.Spares, shape.Lots, shape.Target);
        Console.WriteLine();
        Console.WriteLine("What is reached (steps of 1 mAh; times are of this machine and its load, for the order of size only)");
        Console.WriteLine("shape        spares  lots  proven  largest gap  largest spread  median ms  worst ms");
        foreach (var shape in Quality)
            Reached(shape.Series, shape.Parallel, shape.Spares, shape.Lots);
        Console.WriteLine();
        Console.WriteLine("Resistances at a repeatability of 1 %, resistance of cells 15 % wide, ten lots");
        Console.WriteLine("shape        spread by capacity alone  levelled, mean  levelled, worst");
        foreach (var shape in Levelling)
            Level(shape.Series, shape.Parallel, shape.Spares);
        GroupingGrowth.Run();
    }

    private static void Sorting(int series, int parallel, double spares, int lots, double target)
    {
        int cells = (series * parallel) + (int)Math.Round(series * parallel * spares);
        long[][] sorted = [.. Enumerable.Range(0, lots).Select(seed => Used(cells, seed))];
        int[][] shuffled = [.. sorted.Select((lot, seed) => Shuffled(lot, seed))];
        double[] sortUs = new double[lots], matchUs = new double[lots];
        Array.Fill(sortUs, double.PositiveInfinity);
        Array.Fill(matchUs, double.PositiveInfinity);
        List<double> single = [];
        (long gap, long spread, int proven) = (0, 0, 0);
        int[] scratch = new int[cells];

        // The first rounds only warm the compiler up.
        const int warm = 4, rounds = 12;
        for (int round = 0; round < rounds; round++)
        {
            (gap, spread, proven) = (0, 0, 0);
            for (int t = 0; t < lots; t++)
            {
                shuffled[t].CopyTo(scratch, 0);
                long start = Stopwatch.GetTimestamp();
                Array.Sort(scratch);
                double ofSort = Stopwatch.GetElapsedTime(start).TotalMicroseconds;
                start = Stopwatch.GetTimestamp();
                StrictAnswer answer = StrictSearch.Solve(GroupingProblem.Free(sorted[t], series, parallel), new SearchBudget(300_000_000));
                double ofMatch = Stopwatch.GetElapsedTime(start).TotalMicroseconds;
                gap = Math.Max(gap, answer.Bound - answer.Best.Smallest);
                spread = Math.Max(spread, answer.Best.Spread);
                proven += answer.Proven ? 1 : 0;
                if (round < warm)
                    continue;
                (sortUs[t], matchUs[t]) = (Math.Min(sortUs[t], ofSort), Math.Min(matchUs[t], ofMatch));
                single.Add(ofMatch / ofSort);
            }
        }

        double[] ratio = [.. matchUs.Select((us, t) => us / sortUs[t]).Order()];
        single.Sort();
        Console.WriteLine($"{series + "s" + parallel + "p",-12} {cells,6} {target,8} {ratio[lots / 2],11:F2} {ratio[lots * 9 / 10],12:F2} {ratio[^1],8:F1} {single[single.Count / 2],12:F2} {gap,12} {spread,15} {proven,5}/{lots} {(ratio[lots * 9 / 10] <= target && gap == 0 && spread <= 1 ? "met" : "NOT MET")}");
    }

    private static void Reached(int series, int parallel, double spares, int lots)
    {
        int extra = (int)Math.Round(series * parallel * spares);
        List<double> milliseconds = [];
        (long gap, long spread, int proven) = (0, 0, 0);
        for (int seed = 0; seed < lots; seed++)
        {
            long[] cells = Used((series * parallel) + extra, 5000 + seed);
            long start = Stopwatch.GetTimestamp();
            StrictAnswer answer = StrictSearch.Solve(
                GroupingProblem.Free(cells, series, parallel), new SearchBudget(GroupingRequest.DefaultSearchSteps));
            milliseconds.Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);
            gap = Math.Max(gap, answer.Bound - answer.Best.Smallest);
            spread = Math.Max(spread, answer.Best.Spread);
            proven += answer.Proven ? 1 : 0;
        }

        Console.WriteLine($"{series + "s" + parallel + "p",-12} {extra,6} {lots,5} {proven,7} {gap,12} {spread,15} {milliseconds.Order().ElementAt(lots / 2),10:F2} {milliseconds.Max(),9:F0}");
    }

    private static void Level(int series, int parallel, double spares)
    {
        int cells = (series * parallel) + (int)Math.Round(series * parallel * spares);
        List<double> before = [], after = [];
        for (int seed = 0; seed < 10; seed++)
        {
            double[] milliohm = [.. Used(cells, 900 + seed, 40_000, 6_000).Select(r => r / 1000.0)];
            int[] order = Shuffled([.. Enumerable.Range(0, cells).Select(i => (long)i)], seed);
            GroupingCell[] lot =
                [.. Used(cells, 700 + seed).Select((mah, i) => new GroupingCell($"{i}", mah / 1000.0, milliohm[order[i]]))];
            GroupingRequest request = new() { Cells = lot, Series = series, Parallel = parallel };
            before.Add(SpreadPercent(request));
            after.Add(SpreadPercent(request with { RepeatabilityFraction = 0.01 }));
        }

        Console.WriteLine($"{series + "s" + parallel + "p",-12} {before.Average(),20:F1} % {after.Average(),16:F2} % {after.Max(),14:F2} %");
    }

    private static double SpreadPercent(GroupingRequest request)
    {
        MatchedPack pack = ((GroupingOutcome.Matched)GroupMatcher.Match(request)).Pack;
        double[] milliohm = [.. pack.Groups.Select(group => group.ResistanceMilliohm!.Value)];
        return 100 * (milliohm.Max() - milliohm.Min()) / milliohm.Average();
    }

    private static int[] Shuffled(long[] lot, int seed)
    {
        Random random = new(seed + 777);
        return [.. lot.Select(value => (int)value).OrderBy(_ => random.Next())];
    }

    /// <summary>Invented used cells, about normal, sorted downwards.</summary>
    private static long[] Used(int count, int seed, double mean = 2150, double deviation = 180)
    {
        Random random = new(seed);
        return
        [
            .. Enumerable.Range(0, count)
                .Select(_ => (long)Math.Round(mean + (deviation * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble()))))
                .OrderDescending(),
        ];
    }
}
