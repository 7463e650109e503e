using System.Diagnostics;
using Google.OrTools.Sat;
using PackPlanner.Core.Fitting;

namespace PackPlanner.SolverChecks;

/// <summary>Boxes in one layer, sizes in whole millimetres, some round a post: ours and CP-SAT over every place on the millimetre grid.</summary>
internal static class BoxesAgainstSolver
{
    private static readonly (int X, int Y, int Long, int Thick, int[]? Post)[] Shapes =
    [
        (42, 31, 9, 4, null), (57, 34, 7, 4, null), (43, 26, 7, 3, null), (40, 25, 7, 3, null), (53, 51, 9, 7, null),
        (40, 25, 7, 3, [18, 10, 23, 15]), (43, 26, 9, 4, [0, 0, 7, 5]), (36, 36, 8, 5, [14, 14, 20, 22]), (50, 22, 9, 5, [22, 0, 27, 12]),
        (31, 47, 11, 4, [12, 20, 17, 27]), (45, 33, 13, 6, null), (38, 29, 10, 7, [30, 20, 38, 29]),
    ];

    internal static int Run(int seconds)
    {
        Console.WriteLine($"CP-SAT with 2 workers, {seconds} s, every place on the grid");
        Console.WriteLine("space      box     post             ours  bound  proven      ms   solver  status         ms");
        int worse = 0;
        foreach ((int x, int y, int length, int thick, int[]? post) in Shapes)
        {
            Stopwatch watch = Stopwatch.StartNew();
            FitAnswer ours = LayoutSearch.Search(Case(x, y, length, thick, post), FitEffort.Full, null, CancellationToken.None);
            double ourMs = watch.Elapsed.TotalMilliseconds;
            watch.Restart();
            (int? most, CpSolverStatus status) = Solver(x, y, length, thick, post, seconds);
            if (most > ours.Cells.Count || (status == CpSolverStatus.Optimal && ours.Cells.Count > most))
                worse++;
            Console.WriteLine(
                $"{x} x {y,-5} {length} x {thick,-3} {(post is null ? "-" : string.Join(' ', post)),-14} {ours.Cells.Count,6} {ours.Bound,6}  {ours.Proven,-6} {ourMs,8:F0} {most,8}  {status,-10} {watch.Elapsed.TotalMilliseconds,6:F0}");
        }

        return worse;
    }

    private static FitCase Case(int x, int y, int length, int thick, int[]? post) => new(
        [new NamedSolid("space", new Solid.Box(new PointMm(0, 0, 0), new PointMm(x, y, 5)))],
        post is [var a, var b, var c, var d] ? [new NamedSolid("post", new Solid.Box(new PointMm(a, b, 0), new PointMm(c, d, 5)))] : [],
        "box", new CellBody.Box(length, thick, 5, [BoxPose.Upright]), null, new Clearances(0, 0, 0, 0, 0, 0, 0));

    /// <summary>One bool for each place and way round; no square millimetre is covered twice.</summary>
    private static (int? Most, CpSolverStatus Status) Solver(int x, int y, int length, int thick, int[]? post, int seconds)
    {
        CpModel model = new();
        List<ILiteral>[,] over = new List<ILiteral>[x, y];
        List<BoolVar> places = [];
        foreach ((int w, int h) in new[] { (length, thick), (thick, length) })
        {
            for (int u = 0; u + w <= x; u++)
            {
                for (int v = 0; v + h <= y; v++)
                {
                    if (post is [var a, var b, var c, var d] && u < c && u + w > a && v < d && v + h > b)
                        continue;
                    BoolVar place = model.NewBoolVar($"p{w}_{u}_{v}");
                    places.Add(place);
                    for (int i = u; i < u + w; i++)
                    {
                        for (int j = v; j < v + h; j++)
                            (over[i, j] ??= []).Add(place);
                    }
                }
            }
        }

        foreach (List<ILiteral>? covering in over)
        {
            if (covering is { Count: > 1 })
                model.AddAtMostOne(covering);
        }

        model.Maximize(LinearExpr.Sum(places));
        CpSolver solver = new() { StringParameters = $"max_time_in_seconds:{seconds},num_workers:2,random_seed:1" };
        CpSolverStatus status = solver.Solve(model);
        return (status is CpSolverStatus.Optimal or CpSolverStatus.Feasible ? (int)Math.Round(solver.ObjectiveValue) : null, status);
    }
}
