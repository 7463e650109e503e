using System.Diagnostics;
using System.Globalization;
using PackPlanner.Core.Fitting;

namespace PackPlanner.Benchmarks;

/// <summary>
/// How the cost of fitting grows: one shape drawn larger and larger, processor seconds of both cores, and the slope of their logarithm over
/// that of the places: <c>-- fitting-growth 0</c> for the quick look, 700 for the whole search.
/// </summary>
internal static class FittingGrowth
{
    private static readonly double[] Scales = [0.5, 0.7, 1, 1.4, 2, 2.8, 4, 5];

    internal static void Run(int work)
    {
        Console.WriteLine($"One shape drawn larger, --work {work}: processor seconds of both cores, groups included");
        Table("round cells in a frame, one layer", work, by => Frame(by, 85, new CellBody.Cylinder(18.6, 65.3, [Axis.Y]), new Clearances(2, 6, 0, 0, 0.6, 0, 8), 13));
        Table("upright boxes in a tray", work, by => Tray(by, [BoxPose.Upright]));
        Table("boxes in three poses in a frame", work, by => Frame(
            by, 260 * by, new CellBody.Box(71, 22, 91, [BoxPose.Upright, BoxPose.OnEdge, BoxPose.OnFace]), new Clearances(2, 0, 3, 12, 1, 1, 0), 12));
    }

    private static void Table(string title, int work, Func<double, FitCase> drawn)
    {
        Console.WriteLine();
        Console.WriteLine($"| {title}: places | P of floor | cpu s |");
        Console.WriteLine("|---|---|---|");
        // Once before, so that no run pays for the compiler.
        LayoutSearch.Search(drawn(1), new FitEffort(Math.Min(work, 10)), null, CancellationToken.None);
        List<(double Places, double Seconds)> runs = [];
        foreach (double by in Scales)
        {
            TimeSpan before = Process.GetCurrentProcess().TotalProcessorTime;
            FitCase fitCase = drawn(by);
            FitAnswer answer = LayoutSearch.Search(fitCase, new FitEffort(work), null, CancellationToken.None);
            double seconds = (Process.GetCurrentProcess().TotalProcessorTime - before).TotalSeconds;
            runs.Add((Math.Log(answer.Cells.Count), Math.Log(seconds)));
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {answer.Cells.Count} | {answer.Parallel} of {answer.Cells.Count / fitCase.Series} | {seconds:0.00} |"));
        }

        double meanX = runs.Average(r => r.Places), meanY = runs.Average(r => r.Seconds);
        double slope = runs.Sum(r => (r.Places - meanX) * (r.Seconds - meanY)) / runs.Sum(r => (r.Places - meanX) * (r.Places - meanX));
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"log-log slope {slope:0.00} (least squares over all rows)"));
    }

    private static FitCase Frame(double by, double deep, CellBody cell, Clearances clearances, int series)
    {
        OutlinePointMm[] outline = [new(0, 0), new(420 * by, 0), new(360 * by, 210 * by), new(40 * by, 180 * by)];
        return new FitCase([new NamedSolid("frame", new Solid.Prism(Axis.Y, outline, 0, deep))], [], "cell", cell, 47, clearances, Series: series, LinkReachMm: cell is CellBody.Box ? 20 : 2);
    }

    private static FitCase Tray(double by, BoxPose[] poses) => new(
        [new NamedSolid("tray", new Solid.Box(new PointMm(0, 0, 0), new PointMm(700 * by, 500 * by, 130)))], [],
        "cell", new CellBody.Box(71, 22, 91, poses), 300, new Clearances(2, 0, 3, 12, 1, 1, 0), Series: 12, LinkReachMm: 20);
}
