using MathNet.Numerics.LinearAlgebra;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis;

/// <summary>The look over all capacities and charges: it finds the valley that a known pack lies in, and its cost is that of the linear problem written out.</summary>
public class PackScanTests
{
    private static readonly double[] Capacity = [8.2, 8.0, 7.4], Charge = [0.97, 0.98, 0.93];

    private static PackModel Pack(string chemistry = "NMC", double[]? capacity = null, double[]? charge = null)
    {
        DiagnosisColumns log = SmallPack.Log([.. Enumerable.Repeat(0.0, 40), .. Enumerable.Range(0, 380).Select(i => i / 7 % 3 == 0 ? 1.0 : 9.0), .. Enumerable.Repeat(0.0, 40)], 3);
        PackModel model = SmallPack.Model(SmallPack.Slices(log), 3, chemistry: chemistry);
        SmallPack.Say(model, SmallPack.Plain(model, capacity ?? Capacity, charge ?? Charge));
        return model;
    }

    [Theory]
    [InlineData("NMC")]
    [InlineData("LFP")]
    public void The_median_group_is_found_within_a_step_of_the_grid_or_two(string chemistry)
    {
        IReadOnlyList<PackScan.Start> starts = new PackScan(Pack(chemistry)).Median(4);

        Assert.InRange(starts.Count, 1, 4);
        Assert.Equal(starts.OrderBy(s => s.Cost), starts);
        Assert.Equal(0.80, Math.Exp(starts[0].LogCapacity), 0.09);
        Assert.Equal(0.97, starts[0].Charge, 0.05);
        for (int i = 0; i < starts.Count; i++)
        {
            for (int j = 0; j < i; j++)
                Assert.True(Math.Abs(starts[i].Charge - starts[j].Charge) > 0.05 || Math.Abs(starts[i].LogCapacity - starts[j].LogCapacity) > 0.09);
        }
    }

    // Weights of the curve, hysteresis and the size of the resistance are one least-squares problem: residues, belief and the determinant.
    [Fact]
    public void The_cost_of_a_start_is_that_of_its_least_squares()
    {
        PackModel m = Pack();
        PackScan.Start start = new PackScan(m).Median(1)[0];
        int r = m.Curve.Shapes, size = r + 5;
        double capacityAh = 10 * Math.Exp(start.LogCapacity), sdV = (2 * 0.0015) + (0.001 / 5);
        double[] slow = [0.1, 0.2, 0.15, 0.25, 0.3], bare = m.Curve.Bent([]);
        List<double[]> rows = [];
        List<double> misses = [];
        foreach (ChargeSlices.Piece[] pieces in m.Slices.Pieces.GroupBy(p => p.Slice).Select(g => g.ToArray()))
        {
            double z = start.Charge - (pieces.Average(p => p.DrawnAh) / capacityAh);
            double drive = pieces.Average(p => p.CurrentA + slow.Select((s, j) => s * p.SlowA[j]).Sum());
            double drop = SmallPack.UnitOhm * drive * m.Shape.AtCharge(z, out _);
            double volts = Robust.Median([.. Enumerable.Range(0, 3).Select(k => pieces.Average(p => p.Volts[k]))]);
            double[] row = new double[size];
            m.Curve.ShapesAt(z, row.AsSpan(0, r));
            for (int h = 0; h < 4; h++)
                row[r + h] = -0.004 * pieces.Average(p => p.Hysteresis[h]);
            row[^1] = -0.05 * drop;
            rows.Add([.. row.Select(v => v / sdV)]);
            misses.Add((volts + drop - m.Curve.Volts(z, bare, out _)) / sdV);
        }

        Matrix<double> a = Matrix<double>.Build.DenseOfRowArrays(rows);
        Vector<double> b = Vector<double>.Build.DenseOfEnumerable(misses);
        Matrix<double> normal = a.TransposeThisAndMultiply(a) + Matrix<double>.Build.DenseIdentity(size);
        Vector<double> x = normal.Cholesky().Solve(a.TransposeThisAndMultiply(b));
        double belief = (start.LogCapacity - Math.Log(0.93)) / (start.LogCapacity > Math.Log(0.93) ? 0.06 : 0.13);
        double cost = Math.Pow((b - (a * x)).L2Norm(), 2) + (x * x) + (2 * normal.Cholesky().Factor.Diagonal().Sum(d => Math.Log(d))) + (belief * belief);

        Assert.True(rows.Count < 220, "all slices are looked at");
        Assert.Equal(cost, start.Cost, 1e-5 * Math.Abs(cost));
        Assert.All(start.Weights, (w, j) => Assert.Equal(x[j], w, 1e-6));
        Assert.All(start.Hysteresis, (w, j) => Assert.Equal(x[r + j], w, 1e-6));
    }

    // Under the true curve each group's own valley: 3 % steps of capacity, points and a half of charge.
    [Theory]
    [InlineData("NMC")]
    [InlineData("LFP")]
    public void Each_group_is_found_under_the_true_curve(string chemistry)
    {
        PackModel m = Pack(chemistry);
        PackScan scan = new(m);
        PackScan.Start truth = new(Math.Log(0.80), 0.97, new double[m.Curve.Shapes], new double[4], 0);

        for (int k = 0; k < 3; k++)
        {
            IReadOnlyList<(double LogCapacity, double Charge)> found = scan.Group(k, truth, 3);
            Assert.InRange(found.Count, 1, 3);
            Assert.Equal(Capacity[k] / 10, Math.Exp(found[0].LogCapacity), 0.035);
            Assert.Equal(Charge[k], found[0].Charge, 0.025);
            Assert.All(found.Skip(1), f => Assert.True(Math.Abs(f.Charge - found[0].Charge) > 0.04 || Math.Abs(f.LogCapacity - found[0].LogCapacity) > 0.07));
        }
    }

    // A group far smaller and fuller than the others is still within what is looked at: from 0.55 to 1.15 and 24 points to both sides.
    [Fact]
    public void An_odd_group_is_found_too()
    {
        PackModel m = Pack(capacity: [9.5, 9.4, 7.1], charge: [0.95, 0.96, 0.99]);

        (double log, double charge) = new PackScan(m).Group(2, new(Math.Log(0.945), 0.955, new double[m.Curve.Shapes], new double[4], 0), 1)[0];

        Assert.Equal(0.71, Math.Exp(log), 0.03);
        Assert.Equal(0.99, charge, 0.02);
    }
}
