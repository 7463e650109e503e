using System.Diagnostics;
using Google.OrTools.Sat;
using PackPlanner.Core.Grouping;

namespace PackPlanner.SolverChecks;

/// <summary>The same whole numbers to the matcher's kernel and to CP-SAT with two workers.</summary>
internal static class GroupingAgainstSolver
{
    private static readonly (int Series, int Parallel, int Spares)[] Shapes =
    [
        (4, 2, 1), (6, 3, 0), (5, 4, 1), (7, 4, 0), (7, 4, 3), (10, 5, 0), (13, 4, 5), (13, 6, 8), (20, 5, 10), (20, 10, 20),
    ];

    internal static int Run(int seconds)
    {
        Console.WriteLine($"CP-SAT with 2 workers, {seconds} s; steps of 1 mAh, about normal, 2150 wide 180");
        Console.WriteLine("shape      spares  ours min/spread proven        ms   solver min  status       ms   times");
        int worse = 0;
        foreach ((int series, int parallel, int spares) in Shapes)
        {
            long[] cells = Used((series * parallel) + spares, seed: (series * 100) + parallel);
            StrictSearch.Solve(GroupingProblem.Free(cells, series, parallel), new SearchBudget(1_000_000));
            Stopwatch watch = Stopwatch.StartNew();
            StrictAnswer ours = StrictSearch.Solve(GroupingProblem.Free(cells, series, parallel), new SearchBudget(1_200_000_000));
            double ourMs = watch.Elapsed.TotalMilliseconds;
            watch.Restart();
            (long? smallest, CpSolverStatus status) = Solver(cells, series, parallel, seconds);
            double solverMs = watch.Elapsed.TotalMilliseconds;
            if (smallest > ours.Best.Smallest)
                worse++;
            Console.WriteLine(
                $"{series}s{parallel}p {spares,10} {ours.Best.Smallest,9} / {ours.Best.Spread,-4} {ours.Proven,-6} {ourMs,10:F2} {smallest,11} {status,-10} {solverMs,7:F0} {solverMs / ourMs,9:F0}");
        }

        return worse;
    }

    /// <summary>One bool for each cell and group; the smallest group is to be as large as can be.</summary>
    private static (long? Smallest, CpSolverStatus Status) Solver(long[] cells, int series, int parallel, int seconds)
    {
        CpModel model = new();
        BoolVar[,] placed = new BoolVar[cells.Length, series];
        for (int i = 0; i < cells.Length; i++)
        {
            List<ILiteral> anywhere = [];
            for (int g = 0; g < series; g++)
                anywhere.Add(placed[i, g] = model.NewBoolVar($"x{i}_{g}"));
            model.AddAtMostOne(anywhere);
        }

        IntVar smallest = model.NewIntVar(0, cells.Sum(), "smallest");
        for (int g = 0; g < series; g++)
        {
            BoolVar[] members = [.. Enumerable.Range(0, cells.Length).Select(i => placed[i, g])];
            model.Add(LinearExpr.Sum(members) == parallel);
            model.Add(LinearExpr.WeightedSum(members, cells) >= smallest);
        }

        // Groups are alike: the largest cells go into the first groups in turn, which spares the solver their permutations.
        for (int g = 1; g < series; g++)
            model.Add(placed[0, g] == 0);
        model.Maximize(smallest);
        CpSolver solver = new() { StringParameters = $"max_time_in_seconds:{seconds},num_workers:2,random_seed:1" };
        CpSolverStatus status = solver.Solve(model);
        bool found = status is CpSolverStatus.Optimal or CpSolverStatus.Feasible;
        return (found ? (long)solver.ObjectiveValue : null, status);
    }

    private static long[] Used(int count, int seed)
    {
        Random random = new(seed);
        return
        [
            .. Enumerable.Range(0, count)
                .Select(_ => (long)Math.Round(2150 + (180 * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble()))))
                .OrderDescending(),
        ];
    }
}
