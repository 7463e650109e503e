using MathNet.Numerics.LinearAlgebra;
using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis;

/// <summary>The fit's cost, pull and curvature against sums over all readings written out, and what it makes of a pack that is known.</summary>
public class PackFitTests
{
    private static PackModel Pack(double loadError = 0.015, bool leaks = false, double[]? ride = null)
    {
        double[] amps = ride ?? SmallPack.RideA();
        // One group loses some readings, and one piece all of them.
        DiagnosisColumns log = SmallPack.Log(amps, 3, (k, i) => k == 1 && i % 7 < 3 ? double.NaN : 3.7);
        return SmallPack.Model(SmallPack.Slices(log), 3, leaks, loadError: loadError);
    }

    /// <summary>Readings near what the model says, some of them wild.</summary>
    private static double[] WithErrors(PackModel m)
    {
        double[] x = SmallPack.SomeOfAll(m);
        SmallPack.Say(m, x);
        foreach (ChargeSlices.Piece p in m.Slices.Pieces)
        {
            for (int k = 0; k < 3; k++)
                p.Volts[k] += 0.004 * Math.Sin((3.0 * p.Place) + k) * (p.Place % 11 == 0 ? 9 : 1);
        }

        m.Slices.Pieces[5].Readings[2] = 0;
        return x;
    }

    private static double SdV(PackModel m, ChargeSlices.Piece p, int k, double driveA, double floorV)
    {
        double load = m.LoadError * SmallPack.UnitOhm * driveA, noise = Math.Max(m.Resistance.NoiseV[k], 0.001 / 3);
        return Math.Sqrt((((floorV * floorV) + (load * load) + (0.001 * 0.001 / 24)) * m.Slices.SharedBy[p.Place]) + (noise * noise / p.Readings[k]));
    }

    /// <summary>Every reading with its miss over its spread, and the row of derivatives.</summary>
    private static IEnumerable<(int Group, double T, double SdV, double MissV, double[] Row)> Readings(PackModel m, double[] x)
    {
        PackVolts volts = new(m);
        volts.TakeCurve(x);
        foreach (ChargeSlices.Piece p in m.Slices.Pieces)
        {
            for (int k = 0; k < m.Groups; k++)
            {
                if (p.Readings[k] == 0)
                    continue;
                double miss = p.Volts[k] - volts.At(x, p, k, out PackVolts.Local local), sd = SdV(m, p, k, local.DriveA, m.FloorV);
                double[] row = new double[m.Shared + m.PerGroup];
                volts.FillRow(x, p, k, local, row);
                yield return (k, Math.Abs(miss) / sd, sd, miss, row);
            }
        }
    }

    // Beyond two spreads and a half a miss costs no more than along a straight line (Huber).
    private static double Loss(double t) => t <= 2.5 ? t * t : (5 * t) - 6.25;

    [Fact]
    public void Cost_pull_and_curvature_are_the_sums_over_all_readings()
    {
        PackModel m = Pack(leaks: true);
        double[] x = WithErrors(m);
        NormalEquations expected = new(m.Shared, m.PerGroup, m.Groups);
        double cost = new PackBeliefs(m).Of(x, expected);
        Matrix<double> curvature = expected.Whole();
        int wild = 0;
        foreach ((int k, double t, double sd, double miss, double[] row) in Readings(m, x))
        {
            cost += Loss(t);
            wild += t > 2.5 ? 1 : 0;
            double weight = (t <= 2.5 ? 1 : 2.5 / t) / (sd * sd);
            int At(int j) => j < m.Shared ? j : j - m.Shared + m.GroupAt(k);
            for (int a = 0; a < row.Length; a++)
            {
                expected.Right[At(a)] += weight * row[a] * miss;
                for (int b = 0; b < row.Length; b++)
                    curvature[At(a), At(b)] += weight * row[a] * row[b];
            }
        }

        (double Cost, double[] Pull, Matrix<double> Curvature) fit = new PackFit(m, x).Quadratic(x);

        Assert.InRange(wild, 5, 200);
        Assert.Equal(cost, fit.Cost, 1e-6);
        Assert.All(fit.Pull, (pull, i) => Assert.Equal(expected.Right[i], pull, 1e-6 * (1 + Math.Abs(pull))));
        Assert.Equal(0, (fit.Curvature - curvature).InfinityNorm() / curvature.InfinityNorm(), 1e-12);
    }

    [Fact]
    public void A_group_by_itself_moves_to_where_its_own_cost_is_least()
    {
        PackModel m = Pack(loadError: 0);
        double[] x = WithErrors(m);
        PackFit fit = new(m, x);
        int at = m.GroupAt(1);

        (double[] own, double cost) = fit.Polish(1, x[at..(at + m.PerGroup)], 0.002, 30);

        double CostOf(double[] group)
        {
            double[] with = [.. x];
            group.CopyTo(with, at);
            return new PackBeliefs(m).OfGroup(with, 1, null) + Shifted(m, with, 1, 0.002);
        }

        Assert.Equal(CostOf(own), cost, 1e-6);
        Assert.True(cost < CostOf(x[at..(at + m.PerGroup)]));
        for (int j = 0; j < own.Length; j++)
        {
            foreach (double step in new[] { -0.02, 0.02 })
            {
                double[] beside = [.. own];
                beside[j] += step;
                Assert.True(CostOf(beside) > cost - 0.02, $"parameter {j} of the group is better by {step}");
            }
        }

        Assert.Equal(x, fit.X);
        fit.Place(1, own);
        Assert.Equal(own, fit.X[at..(at + m.PerGroup)]);
    }

    private static double Shifted(PackModel m, double[] x, int group, double extraV) =>
        Readings(m, x).Where(r => r.Group == group).Sum(r => Loss(Math.Abs(r.MissV - extraV) / r.SdV));

    // Capacities, charges, resistances and a bent curve that the readings were made with, begun from quite other ones.
    [Fact]
    public void A_pack_that_the_model_itself_made_is_found_again()
    {
        PackModel m = Pack(loadError: 0, ride: [.. Enumerable.Repeat(0.0, 60), .. Enumerable.Range(0, 500).Select(i => i / 7 % 3 == 0 ? 1.0 : 9.0), .. Enumerable.Repeat(0.0, 60)]);
        double[] capacity = [9.3, 8.6, 9.4], charge = [0.97, 0.96, 0.95], truth = SmallPack.Plain(m, capacity, charge);
        SmallPack.Say(m, truth);
        PackFit fit = new(m, SmallPack.Plain(m, [9, 9, 9], [0.93, 0.93, 0.93]));
        double before = fit.Quadratic(fit.X).Cost;

        fit.Run(40, adaptFloors: true);

        Assert.InRange(fit.Cost, 0, before / 20);
        Assert.Equal(fit.Quadratic(fit.X).Cost, fit.Cost, 1e-9);
        for (int k = 0; k < 3; k++)
        {
            Assert.Equal(capacity[k] / capacity[0], Math.Exp(fit.X[m.GroupAt(k)] - fit.X[m.GroupAt(0)]), 0.01);
            Assert.Equal(capacity[k], 10 * Math.Exp(fit.X[m.GroupAt(k)]), 0.35);
            Assert.Equal(charge[k], fit.X[m.GroupAt(k) + 1], 0.02);
            // Nothing is missed, and a floor never falls below three fifths of the ordinary.
            Assert.Equal(0.6 * 0.0015, fit.FloorV[k], 1e-9);
        }

        Assert.NotNull(fit.Covariances);
        Assert.Equal(fit.Cost + m.Curve.Strangeness(fit.X.AsSpan(0, m.Curve.Shapes)), fit.Judgement, 1e-9);
    }

    // A descent changes nothing once it has arrived; what it says of its cost is the cost there.
    [Fact]
    public void Floors_are_learnt_only_where_asked_and_can_be_handed_on()
    {
        PackModel m = Pack(loadError: 0);
        double[] x = SmallPack.Plain(m, [9, 9, 9], [0.95, 0.95, 0.95]);
        SmallPack.Say(m, x);
        foreach (ChargeSlices.Piece p in m.Slices.Pieces)
            p.Volts[2] += p.Place % 2 == 0 ? 0.03 : -0.03;
        PackFit fit = new(m, [.. x]), same = new(m, [.. x]), other = new(m, [.. x]);

        fit.Run(12, adaptFloors: true);
        same.Run(12, adaptFloors: false);
        other.CopyFloors(fit);

        // What is missed by to and fro cannot be fitted: it is counted to twenty millivolts, and a floor is four times the ordinary at most.
        Assert.Equal(4 * 0.0015, fit.FloorV[2], 1e-9);
        Assert.True(fit.FloorV[0] < 0.0015);
        Assert.All(same.FloorV, floor => Assert.Equal(0.0015, floor));
        Assert.Equal(fit.FloorV, other.FloorV);
    }

    // Eight groups count as eight thirds of three.
    [Fact]
    public void A_strange_curve_is_judged_by_as_many_groups_as_follow_it()
    {
        DiagnosisColumns log = SmallPack.Log(SmallPack.RideA(), 8);
        PackModel m = SmallPack.Model(SmallPack.Slices(log), 8);
        double[] x = SmallPack.Plain(m, [.. Enumerable.Repeat(9.0, 8)], [.. Enumerable.Repeat(0.9, 8)]);
        x[0] = 2;
        PackFit fit = new(m, x);

        Assert.Equal(8 / 3.0 * m.Curve.Strangeness(x.AsSpan(0, m.Curve.Shapes)), fit.Judgement, 1e-9);
        Assert.True(fit.Judgement > 0);
    }
}
