using System.Diagnostics;
using System.Globalization;
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

    private const int Runs = 41;

    /// <summary>Prints one row for each shape and how the two targets stand.</summary>
    /// <param name="seconds">What CP-SAT may take for each.</param>
    /// <returns>Shapes on which CP-SAT found a larger smallest group.</returns>
    internal static int Run(int seconds)
    {
        Console.WriteLine($"CP-SAT with 2 workers, {seconds} s; steps of 1 mAh, about normal, 2150 wide 180. Ours: the median of {Runs} runs after as many to warm the compiler up.");
        Console.WriteLine("shape      spares  ours min/spread proven        ms   solver min  status           ms    solver/ours");
        int worse = 0;
        List<string> said = [];
        foreach ((int series, int parallel, int spares) in Shapes)
        {
            long[] cells = Used((series * parallel) + spares, seed: (series * 100) + parallel);
            StrictAnswer ours = Ours(cells, series, parallel);
            double ourMs = MedianMs(cells, series, parallel);
            Stopwatch watch = Stopwatch.StartNew();
            (long? smallest, CpSolverStatus status) = Solver(cells, series, parallel, seconds);
            double solverMs = watch.Elapsed.TotalMilliseconds;
            if (smallest > ours.Best.Smallest)
                worse++;
            // Where it gave up before a proof the ratio is only a floor.
            string floor = status == CpSolverStatus.Optimal ? "" : "above ";
            Console.WriteLine(
                $"{series}s{parallel}p {spares,10} {ours.Best.Smallest,9} / {ours.Best.Spread,-4} {ours.Proven,-6} {ourMs,10:F3} {smallest,11} {status,-10} {solverMs,9:F0} {floor + (solverMs / ourMs).ToString("N0", CultureInfo.InvariantCulture),14}");
            if (spares == 0 && (series, parallel) is (7, 4) or (10, 5))
                said.Add($"{series}s{parallel}p without spares, {(ours.Proven ? "proven" : "NOT PROVEN")}: {floor}{(solverMs / ourMs).ToString("N0", CultureInfo.InvariantCulture)} times less time; 1,000 wanted: {(ours.Proven && solverMs / ourMs >= 1000 ? "met" : "NOT MET")}");
        }

        said.ForEach(Console.WriteLine);
        Console.WriteLine(worse == 0 ? "a smaller smallest group than CP-SAT's: never; met" : $"a smaller smallest group than CP-SAT's: {worse} times; NOT MET");
        Console.WriteLine();
        return worse;
    }

    private static StrictAnswer Ours(long[] cells, int series, int parallel) =>
        StrictSearch.Solve(GroupingProblem.Free(cells, series, parallel), new SearchBudget(1_200_000_000));

    private static double MedianMs(long[] cells, int series, int parallel)
    {
        double[] ms = new double[Runs];
        for (int run = -Runs; run < Runs; run++)
        {
            Stopwatch watch = Stopwatch.StartNew();
            Ours(cells, series, parallel);
            if (run >= 0)
                ms[run] = watch.Elapsed.TotalMilliseconds;
        }

        Array.Sort(ms);
        return ms[Runs / 2];
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
