using System.Diagnostics;
using System.Globalization;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Sharing;
using PackPlanner.Core.UsableEnergy;

namespace PackPlanner.Benchmarks;

/// <summary>
/// Usable energy and sharing against the least work that they can be, in one run: <c>dotnet run -c Release --project
/// tests/PackPlanner.Benchmarks -- power</c>. Least of many rounds taken in turns; only ratios mean anything.
/// </summary>
internal static class PowerTargets
{
    private const int Groups = 100;
    private const int Seconds = 10_800;
    private static readonly int[] Sizes = [1_000, 3_000, 10_000, 30_000, 100_000];

    internal static void Run()
    {
        Ride();
        Share();
        Draws();
    }

    // Three hours in steps of a second over a hundred groups, against nothing but looking at the curve as often, at one charge for all groups.
    private static void Ride()
    {
        SeriesString pack = Pack();
        LoadStep[] amperes = [.. Enumerable.Range(0, Seconds).Select(s => new LoadStep(1, 14.5 + s % 7 * 0.1, false))];
        LoadStep[] watts = [.. Enumerable.Range(0, Seconds).Select(s => new LoadStep(1, 14.5 * 370 + s % 7 * 37, true))];
        double[] least = Least(
            15,
            () => Look(pack),
            () => Through(pack, amperes),
            () => Through(pack, watts));
        Console.WriteLine("A ride of 100 groups, 3 h in steps of 1 s, over as many looks at the bare curve");
        Console.WriteLine(Line($"  load in amperes  {least[1] / least[0]:0.0} x"));
        Console.WriteLine(Line($"  load in watts    {least[2] / least[0]:0.0} x"));
        Console.WriteLine();
    }

    // Straight through in proportion to the cells is a slope of 1 on logarithmic scales.
    private static void Share()
    {
        ParallelCells[] groups = [.. Sizes.Select(Group)];
        double[] least = Least(15, [.. groups.Select((group, i) => (Func<double>)(() => Repeated(group, Sizes[^1] / Sizes[i])))]);
        double[] logCells = [.. Sizes.Select(size => Math.Log(size))];
        double[] logTime = [.. least.Select((seconds, i) => Math.Log(seconds / (Sizes[^1] / Sizes[i])))];
        (double meanX, double meanY) = (logCells.Average(), logTime.Average());
        double slope = logCells.Zip(logTime, (x, y) => (x - meanX) * (y - meanY)).Sum() / logCells.Sum(x => (x - meanX) * (x - meanX));
        Console.WriteLine("Sharing a load between cells in parallel: time for each cell over that of the smallest group");
        for (int i = 0; i < Sizes.Length; i++)
            Console.WriteLine(Line($"  {Sizes[i],7} cells  {Math.Exp(logTime[i] - logTime[0]) / Sizes[i] * Sizes[0]:0.00} x"));
        Console.WriteLine(Line($"  slope on logarithmic scales {slope:0.00}; hundredfold cells take {Math.Exp(logTime[^1] - logTime[0]):0} times as long"));
        Console.WriteLine();
    }

    private static void Draws()
    {
        EnergyRequest request = new()
        {
            Groups = [.. Enumerable.Range(1, 20).Select(g => new SeriesGroup(g, 45 + 0.01 * g, 3, null, 4))],
            Chemistry = Chemistries.NickelManganeseCobalt,
            Load = new LoadPlan.ConstantCurrent(20),
        };
        double[] least = Least(
            3,
            () => EnergyBudgets.Of(request, CancellationToken.None).UsableWh,
            () => EnergyDraws.Of(request, 1_000, 1, null, CancellationToken.None)!.MedianWh);
        Console.WriteLine("Monte Carlo of 20 groups: one draw over one whole answer without draws");
        Console.WriteLine(Line($"  {least[1] / 1_000 / least[0]:0.000} x, so 10 000 draws are {10 * least[1] / least[0]:0} answers"));
    }

    private static double Look(SeriesString pack)
    {
        double sum = 0;
        for (int s = 0; s < Seconds; s++)
            for (int g = 0; g < Groups; g++)
                sum += pack.Curve.VoltsAt(1 - (double)s / Seconds);
        return sum;
    }

    private static double Through(SeriesString pack, LoadStep[] ride) =>
        Discharge.Run(pack, new LoadPlan.Profile(ride), new DischargeEnd(2.75, UnderLoad: true), CancellationToken.None).DeliveredWh;

    private static double Repeated(ParallelCells group, int times)
    {
        double sum = 0;
        for (int i = 0; i < times; i++)
            sum += CurrentSharing.AtFirstInstant(group, 3 * group.Cells.Count).TerminalV;
        return sum;
    }

    private static SeriesString Pack() => new()
    {
        Curve = Chemistries.NickelManganeseCobalt.Curve,
        CapacityAh = [.. Enumerable.Range(0, Groups).Select(g => 45 + 0.01 * g)],
        StartFraction = [.. Enumerable.Repeat(1.0, Groups)],
        CellOhm = [.. Enumerable.Repeat(0.003, Groups)],
    };

    private static ParallelCells Group(int cells)
    {
        Random random = new(1);
        return ParallelCells.Alike(
            1, [.. Enumerable.Range(0, cells).Select(i => new CellBranch($"{i}", 3.6 + 0.01 * random.NextDouble(), 20 + 10 * random.NextDouble()))], 0.001, 1, cells);
    }

    // In turns, so that whatever else the machine does meets all of them; a first round warms the compiler up.
    private static double[] Least(int rounds, params Func<double>[] tasks)
    {
        double[] least = new double[tasks.Length];
        Array.Fill(least, double.PositiveInfinity);
        double kept = 0;
        for (int round = 0; round <= rounds; round++)
        {
            for (int t = 0; t < tasks.Length; t++)
            {
                long start = Stopwatch.GetTimestamp();
                kept += tasks[t]();
                if (round > 0)
                    least[t] = Math.Min(least[t], Stopwatch.GetElapsedTime(start).TotalSeconds);
            }
        }

        return double.IsNaN(kept) ? throw new InvalidOperationException("A task gave no number.") : least;
    }

    private static string Line(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
