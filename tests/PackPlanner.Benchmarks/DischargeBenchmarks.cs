using BenchmarkDotNet.Attributes;
using PackPlanner.Core.Cells;
using PackPlanner.Core.UsableEnergy;

namespace PackPlanner.Benchmarks;

/// <summary>A ride of three hours in steps of a second over a hundred groups, against looking at the curve that often.</summary>
[ShortRunJob]
public class DischargeBenchmarks
{
    private const int Groups = 100;
    private const int Seconds = 10_800;
    private static readonly OpenCircuitCurve Curve = Chemistries.NickelManganeseCobalt.Curve;
    private SeriesString pack = null!;
    private LoadStep[] ride = [];

    [GlobalSetup]
    public void Build()
    {
        pack = new SeriesString
        {
            Curve = Curve,
            CapacityAh = [.. Enumerable.Range(0, Groups).Select(g => 45 + 0.01 * g)],
            StartFraction = [.. Enumerable.Repeat(1.0, Groups)],
            CellOhm = [.. Enumerable.Repeat(0.003, Groups)],
        };
        ride = [.. Enumerable.Range(0, Seconds).Select(s => new LoadStep(1, 14.5 + s % 7 * 0.1, false))];
    }

    [Benchmark(Baseline = true)]
    public double Looking_at_the_curve()
    {
        double sum = 0;
        for (int s = 0; s < Seconds; s++)
            for (int g = 0; g < Groups; g++)
                sum += pack.Curve.VoltsAt(1 - (double)s / Seconds);
        return sum;
    }

    [Benchmark]
    public double Riding() =>
        Discharge.Run(pack, new LoadPlan.Profile(ride), new DischargeEnd(2.75, UnderLoad: true), CancellationToken.None).DeliveredWh;
}
