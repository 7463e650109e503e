using MathNet.Numerics.LinearAlgebra;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis;

public class CurvePriorTests
{
    /// <summary>How far the belief must be strained, in spreads, to follow a curve whose charge is stretched; and what it then misses.</summary>
    private static (double Strain, double MissV) Follow(string chemistry, double fullV, double emptyV, Func<double, double> stretched)
    {
        CurvePrior prior = CurvePrior.For(Chemistries.All.Single(c => c.Name == chemistry), fullV, emptyV);
        double[] bare = prior.Bent([]), at = [.. Enumerable.Range(1, 99).Select(i => i / 100.0)];
        Matrix<double> shapes = Matrix<double>.Build.Dense(at.Length, prior.Shapes);
        double[] row = new double[prior.Shapes];
        for (int i = 0; i < at.Length; i++)
        {
            prior.ShapesAt(at[i], row);
            shapes.SetRow(i, row);
        }
        Vector<double> wanted = Vector<double>.Build.Dense(at.Length, i => prior.Volts(stretched(at[i]), bare, out _) - prior.Volts(at[i], bare, out _));
        const double readingV = 0.003;
        Vector<double> weights = ((shapes.TransposeThisAndMultiply(shapes) / (readingV * readingV)) + Matrix<double>.Build.DenseIdentity(prior.Shapes))
            .Cholesky().Solve(shapes.TransposeThisAndMultiply(wanted) / (readingV * readingV));
        return (weights.L2Norm(), (wanted - (shapes * weights)).AbsoluteMaximum());
    }

    // Electrodes of another maker or of an aged cell stand slipped by some points of charge: that is no strange curve.
    [Theory]
    [InlineData("NMC", 4.2, 3.0)]
    [InlineData("NCA", 4.2, 2.8)]
    public void A_curve_stretched_by_two_points_and_a_half_is_followed_without_strain(string chemistry, double fullV, double emptyV)
    {
        (double strain, double missV) = Follow(chemistry, fullV, emptyV, z => z + (0.025 * Math.Sin(Math.PI * z)));

        Assert.InRange(strain, 0.2, 1.5);
        Assert.InRange(missV, 0, 0.006);
    }

    [Fact]
    public void A_curve_stretched_by_ten_points_strains_the_belief()
    {
        (double strain, _) = Follow("NMC", 4.2, 3.0, z => z + (0.1 * Math.Sin(Math.PI * z)));

        Assert.InRange(strain, 3, 20);
    }

    // What any chemistry may bend: every shape vanishes when full and when empty, and the curve there is the resting volts.
    [Theory]
    [InlineData("NMC", 4.2, 3.0, 0.033)]
    [InlineData("NCA", 4.2, 2.9, 0.042)]
    [InlineData("LFP", 3.4, 2.8, 0.031)]
    [InlineData("LMO", 4.2, 3.2, 0.055)]
    public void Every_way_of_bending_holds_both_ends(string chemistry, double fullV, double emptyV, double doubt)
    {
        CurvePrior prior = CurvePrior.For(Chemistries.Find(chemistry)!, fullV, emptyV);
        double[] weights = [.. Enumerable.Range(0, prior.Shapes).Select(j => 1.5 * Math.Sin(2 * j))], bent = prior.Bent(weights), bare = prior.Bent([]), at = new double[prior.Shapes];

        Assert.Equal(doubt, prior.CapacityDoubt);
        Assert.Equal(chemistry == "LFP", prior.IsFlat);
        Assert.Equal([emptyV, fullV], new[] { prior.Volts(0, bent, out _), prior.Volts(1, bent, out _) }, (a, b) => Math.Abs(a - b) < 1e-5);
        Assert.Equal([bare[0], bare[^1]], new[] { bent[0], bent[^1] }, (a, b) => Math.Abs(a - b) < 1e-3);
        double furthest = 0;
        foreach (double z in new[] { 0.0123, 0.07, 0.305, 0.5, 0.77, 0.931, 0.99 })
        {
            prior.ShapesAt(z, at);
            double by = at.Zip(weights, (s, w) => s * w).Sum();
            furthest = Math.Max(furthest, Math.Abs(by));
            // Read at the node to both sides, straight between them.
            Assert.Equal(prior.Volts(z, bare, out _) + by, prior.Volts(z, bent, out _), 2e-4);
        }

        Assert.InRange(furthest, 0.003, 0.3);
        foreach (double z in new[] { -0.1, 0, 1, 1.1 })
        {
            prior.ShapesAt(z, at);
            Assert.All(at, s => Assert.Equal(0, s));
        }
    }

    [Fact]
    public void Volts_and_slope_go_on_straight_beyond_both_ends()
    {
        CurvePrior prior = CurvePrior.For(Chemistries.Find("NMC")!, 4.2, 3.0);
        double[] weights = new double[prior.Shapes];
        weights[0] = 3;
        double[] bent = prior.Bent(weights), bare = prior.Bent([]);

        double above = prior.Volts(1.1, bent, out double aboveSlope), below = prior.Volts(-0.1, bent, out double belowSlope);

        Assert.Equal((bare[400] - bare[399]) * 400, aboveSlope, 1e-9);
        Assert.Equal((bare[1] - bare[0]) * 400, belowSlope, 1e-9);
        Assert.Equal(bare[400] + (0.1 * aboveSlope), above, 1e-9);
        Assert.Equal(bare[0] - (0.1 * belowSlope), below, 1e-9);
        Assert.Equal(bent[200] + (0.5 * (bent[201] - bent[200])), prior.Volts(200.5 / 400, bent, out double slope), 1e-9);
        Assert.Equal((bent[201] - bent[200]) * 400, slope, 1e-9);
    }

    // Ten stretches of a tenth, the logarithm of each one's rise over the usual, over a half (over one on a flat curve), squared.
    [Theory]
    [InlineData("NMC", 4.2, 3.0, 0.5)]
    [InlineData("LFP", 3.4, 2.8, 1.0)]
    public void Strangeness_is_that_of_slopes(string chemistry, double fullV, double emptyV, double spread)
    {
        CurvePrior prior = CurvePrior.For(Chemistries.Find(chemistry)!, fullV, emptyV);
        double[] weights = new double[prior.Shapes];
        weights[^1] = 1.2;
        weights[0] = 0.4;
        double[] bent = prior.Bent(weights), bare = prior.Bent([]);

        double sum = Enumerable.Range(0, 10).Sum(i =>
        {
            // The last stretch ends where the curve is held.
            double High(double[] v) => i == 9 ? bare[400] : v[40 * (i + 1)];
            double Low(double[] v) => i == 0 ? bare[0] : v[40 * i];
            double usual = High(bare) - Low(bare), log = Math.Log(Math.Max(High(bent) - Low(bent), 0.02 * usual) / usual) / spread;
            return log * log;
        });

        Assert.Equal(sum, prior.Strangeness(weights), 1e-6);
        Assert.Equal(0, prior.Strangeness(new double[prior.Shapes]), 1e-9);
        Assert.True(sum > 0.01);
    }

    // What the belief allows at a charge: the spread of all its ways there, by the stated volts and slopes.
    [Theory]
    [InlineData("LMO", 4.2, 3.2, 0.5, 0.03, 0.01, 0.005, 0.004)]
    public void The_belief_is_as_wide_as_is_stated(string chemistry, double fullV, double emptyV, double z, double sdV, double perSlope, double fineV, double finePerSlope)
    {
        CurvePrior prior = CurvePrior.For(Chemistries.Find(chemistry)!, fullV, emptyV);
        double[] at = new double[prior.Shapes], bare = prior.Bent([]);
        // A node, so that nothing lies between.
        double node = Math.Round((0.09 + (0.04 * Math.Round((z - 0.09) / 0.04))) * 400) / 400;
        prior.ShapesAt(node, at);
        double slope = (prior.Volts(node + 0.005, bare, out _) - prior.Volts(node - 0.005, bare, out _)) / 0.01;
        double slip = 0.025 * Math.Sin(Math.PI * node) * slope, twice = 0.012 * Math.Sin(2 * Math.PI * node) * slope;
        double expected = (sdV * sdV) + (perSlope * perSlope * slope * slope) + (fineV * fineV) + (finePerSlope * finePerSlope * slope * slope) + (slip * slip) + (twice * twice);

        // The ends, a length and more away, take some of it back.
        Assert.InRange(at.Sum(s => s * s), 0.80 * expected, 1.02 * expected);
    }

    [Fact]
    public void Widths_are_the_stated_ones()
    {
        Assert.Equal([(0.020, 0.010, 0.20), (0.004, 0.004, 0.06)], CurveMembers.Smoothness(CurveFamily.Nmc));
        Assert.Equal([(0.030, 0.010, 0.20), (0.005, 0.004, 0.06)], CurveMembers.Smoothness(CurveFamily.Nca));
        Assert.Equal([(0.030, 0.010, 0.20), (0.005, 0.004, 0.06)], CurveMembers.Smoothness(CurveFamily.Other));
        Assert.Equal([(0.006, 0.004, 0.25), (0.002, 0.012, 0.04)], CurveMembers.Smoothness(CurveFamily.Lfp));
    }
}
