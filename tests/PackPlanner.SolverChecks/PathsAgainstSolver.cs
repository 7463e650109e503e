using System.Text.Json;
using Google.OrTools.Sat;
using PackPlanner.Core.Fitting;
using PackPlanner.Formats.Json;

namespace PackPlanner.SolverChecks;

/// <summary>
/// One cell in each group: our path through the layout that we chose, and the shortest through any of its places by CP-SAT. A proved optimum
/// says how much of a bar ratio lies in the layout and how much in the path.
/// </summary>
internal static class PathsAgainstSolver
{
    internal static int Run(int seconds)
    {
        Console.WriteLine($"CP-SAT with 2 workers, {seconds} s: the shortest path of S places through our layout, every place allowed");
        Console.WriteLine("| cavity | places | S | bars, ours | least by CP-SAT | proved lower limit | ours over the limit |");
        Console.WriteLine("|---|---|---|---|---|---|---|");
        int shorter = 0;
        foreach (string text in File.ReadLines(Path.Combine(AppContext.BaseDirectory, "cavities.jsonl")))
        {
            using JsonDocument document = JsonDocument.Parse(text);
            string name = document.RootElement.GetProperty("id").GetString()!;
            if (!FitCaseJson.Read(JsonInput.Of(name, document.RootElement), []).Is(out FitCase? fitCase, out _))
                throw new InvalidDataException(name);
            if (fitCase.Series is not int series || (fitCase.Cell is CellBody.Cylinder && fitCase.Parallel != 1))
                continue;
            FitAnswer answer = LayoutSearch.Search(fitCase, new FitEffort(100), null, CancellationToken.None);
            if (answer is not { Parallel: 1, BusbarRatio: double ours })
                continue;
            NeighbourGraph graph = NeighbourGraph.Of([.. answer.Cells.Select(cell => Placed(fitCase, cell))], fitCase.Clearances, fitCase.LinkReachMm);
            double least = (series - 1) * graph.SmallestMm!.Value;
            (double? found, double limit, CpSolverStatus status) = Solver(graph, series, seconds);
            shorter += found / least < ours - 1e-3 ? 1 : 0;
            Console.WriteLine(FormattableString.Invariant(
                $"| {name} | {answer.Cells.Count} | {series} | {ours:0.000} | {found / least:0.000} {status} | {limit / least:0.000} | {ours / (limit / least):0.000} |"));
        }

        return shorter;
    }

    private static Body Placed(FitCase fitCase, PlacedCell cell) => new(cell.Centre, Attitude.Of(fitCase).First(a =>
        a.RoundAlong == cell.RoundAlong && (cell.Terminals is null || Attitude.FaceName(a.TerminalFace) == cell.Terminals)
        && Axes3.All.All(axis => Math.Abs(a.Size(axis) - cell.SizeMm[axis]) < 1e-9)));

    /// <summary>A round trip through S places and one stop outside; thousandths of a millimetre.</summary>
    private static (double? FoundMm, double LimitMm, CpSolverStatus Status) Solver(NeighbourGraph graph, int series, int seconds)
    {
        CpModel model = new();
        CircuitConstraint trip = model.AddCircuit();
        List<BoolVar> used = [];
        List<(BoolVar Arc, long Length)> arcs = [];
        for (int i = 0; i < graph.Count; i++)
        {
            BoolVar stays = model.NewBoolVar($"stays{i}"), taken = model.NewBoolVar($"taken{i}");
            model.Add(stays + taken == 1);
            used.Add(taken);
            trip.AddArc(i + 1, i + 1, stays);
            trip.AddArc(0, i + 1, model.NewBoolVar($"from{i}"));
            trip.AddArc(i + 1, 0, model.NewBoolVar($"to{i}"));
            foreach (int j in graph.Near[i])
            {
                BoolVar arc = model.NewBoolVar($"arc{i}_{j}");
                trip.AddArc(i + 1, j + 1, arc);
                arcs.Add((arc, (long)Math.Round(1000 * graph.Distance(i, j))));
            }
        }

        model.Add(LinearExpr.Sum(used) == series);
        model.Minimize(LinearExpr.WeightedSum(arcs.Select(a => a.Arc), arcs.Select(a => a.Length)));
        CpSolver solver = new() { StringParameters = $"max_time_in_seconds:{seconds},num_workers:2,random_seed:1" };
        CpSolverStatus status = solver.Solve(model);
        double? found = status is CpSolverStatus.Optimal or CpSolverStatus.Feasible ? solver.ObjectiveValue / 1000 : null;
        return (found, solver.BestObjectiveBound / 1000, status);
    }
}
