using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis.Simulator;

/// <summary>What the invented logger wrote, and what was true.</summary>
internal sealed record SimulatedLog(string Kind, SimulatedPack Pack, DiagnosisColumns Columns, SimulatedTruth Truth);

/// <summary>Truth beside a log.</summary>
internal sealed record SimulatedTruth(
    double[] CapacityAh, double[] Offset, double[] ResistanceOhm, double[] StartCharge, IReadOnlyList<string>[] Required,
    IReadOnlyList<string>[] Allowed, string Capacity, double NowAh, double BalancedAh, double ReplacedAh);

/// <summary>An imperfect logger: noise, steps, averages, sensor errors, gaps, drop-outs.</summary>
internal sealed class SimulatedLogger(Random random, SimulatedPack pack, double stepS, bool averages, double grainV, double noiseV)
{
    private readonly List<double> timeS = [];
    private readonly List<double> currentA = [];
    private readonly List<double[]> volts = [];
    private readonly List<double> degrees = [];
    private readonly double[] sum = new double[pack.Groups.Length];
    private double sumA, sumS, clockS, nextS;

    internal double OffsetA { get; init; }

    internal double Gain { get; init; } = 1;

    internal double DeadBandA { get; init; }

    internal double NoiseA { get; init; } = 0.05;

    internal bool HasTemperature { get; init; } = true;

    internal bool Asleep { get; set; }

    internal double SkewS { get; init; }

    internal double DropShare { get; init; }

    private double lastA;

    internal void See(double dt, double amps, double[] loaded)
    {
        clockS += dt;
        double[] seen = new double[loaded.Length];
        pack.Read(loaded, seen);
        double shownA = (amps * (1 - SkewS)) + (lastA * SkewS);
        lastA = amps;
        sumA += shownA * dt;
        sumS += dt;
        for (int k = 0; k < seen.Length; k++)
            sum[k] += seen[k] * dt;
        if (clockS + 1e-9 < nextS)
            return;
        nextS = clockS + stepS;
        if (!Asleep && random.NextDouble() >= DropShare)
        {
            double a = ((averages ? sumA / sumS : shownA) * Gain) + OffsetA + (NoiseA * SimulatedCurves.Normal(random) / (averages ? 3 : 1));
            if (Math.Abs(a) < DeadBandA)
                a = 0;
            timeS.Add(clockS);
            currentA.Add(Math.Round(a / 0.01) * 0.01);
            volts.Add([.. Enumerable.Range(0, seen.Length).Select(k => Round(averages ? sum[k] / sumS : seen[k]))]);
            degrees.Add(Math.Round((pack.Degrees + (0.1 * SimulatedCurves.Normal(random))) * 10) / 10);
        }
        Array.Clear(sum);
        (sumA, sumS) = (0, 0);
    }

    private double Round(double v) => Math.Round((v + (noiseV * SimulatedCurves.Normal(random))) / grainV) * grainV;

    internal double MeanDegrees => degrees.Average();

    internal DiagnosisColumns Columns()
    {
        double[] t = [.. timeS.Select(s => s - timeS[0])];
        double[][] byGroup = [.. Enumerable.Range(0, pack.Groups.Length).Select(k => volts.Select(v => v[k]).ToArray())];
        return new DiagnosisColumns(t, [.. currentA], byGroup, HasTemperature ? [.. degrees] : null, averages);
    }
}
