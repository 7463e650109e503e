using MathNet.Numerics.LinearAlgebra;
using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis;

/// <summary>What is believed before a log is read: its cost written out, and pull and curvature as that cost's slope and bend.</summary>
public class PackBeliefsTests
{
    private static PackModel Pack(int groups, bool leaks, bool own, bool known = true, (int, int)[]? taps = null)
    {
        DiagnosisColumns log = SmallPack.Log(SmallPack.RideA(), groups, (_, i) => 3.7 + (0.001 * i));
        ResistanceFit resistance = SmallPack.Resistance([.. Enumerable.Range(0, groups).Select(k => 0.9 + (0.01 * k))], [.. Enumerable.Range(0, groups).Select(k => 0.1 - (0.01 * k))], known);
        return SmallPack.Model(SmallPack.Slices(log, topV: 4.2), groups, leaks, taps ?? [(0, 1)], resistance: resistance, ownCurves: own);
    }

    private static double Square(double value, double expected, double sd) => (value - expected) / sd * ((value - expected) / sd);

    private static double Tail(double apart, double sd) => Math.Log(1 + (apart / sd * (apart / sd)));

    private static double ByHand(PackModel m, double[] x, bool known)
    {
        double[] usual = [.12, .18, .18, .25, .3], seenSd = [.08, .1, .15, .35];
        // To what is common to all, many groups are no more than a few: the misses of the model are alike in all.
        double trust = Math.Sqrt(Math.Max(1, m.Groups / 3.0)), cost = 0;
        for (int j = 0; j < m.Curve.Shapes; j++)
            cost += Square(x[j], 0, 1 / trust);
        for (int j = 0; j < 5; j++)
            cost += Square(x[m.SlowAt + j], known && j < 4 ? m.Resistance.Slow[j] : usual[j], (known && j < 4 ? seenSd[j] : 0.4) / trust);
        for (int j = 0; j < 4; j++)
            cost += Square(x[m.HysteresisAt + j], 0, 1 / trust);
        cost += Square(x[m.MeanAt], Math.Log(0.93), (x[m.MeanAt] > Math.Log(0.93) ? 0.06 : 0.13) / trust);
        cost += Square(x[m.OffsetAt], 0, 0.4);
        for (int t = 0; t < m.Taps.Count; t++)
            cost += Square(x[m.TapAt + t], 0, 10);
        for (int k = 0; k < m.Groups; k++)
        {
            int at = m.GroupAt(k);
            cost += Tail(x[at] - x[m.MeanAt], 0.02) + Square(x[at], Math.Log(0.9), 0.3);
            cost += Tail(x[at + 1] - x[m.MeanAt + 1], 0.01) + Square(x[at + 1], x[m.MeanAt + 1], 0.12);
            cost += Own(m, x[(at + 4)..(at + 9)], 0.4) + Own(m, x[(at + 9)..(at + 12)], 1);
            cost += Resistance(m, x, k, known);
            if (m.Leaks)
                cost += Tail(x[at + 12], 2) + Enumerable.Range(0, m.Tops).Sum(e => Square(x[at + 13 + e], 0, 15));
        }

        return cost;
    }

    /// <summary>Ordinary curves are held by a normal belief; a curve of one's own by one with a long tail, of three freedoms, and fifteen times as wide a fence.</summary>
    private static double Own(PackModel m, double[] terms, double sd) => m.OwnCurves
        ? terms.Sum(t => Square(t, 0, 15 * sd)) + ((3 + terms.Length) * Math.Log(1 + (terms.Sum(t => Square(t, 0, sd)) / 3)))
        : terms.Sum(t => Square(t, 0, sd));

    private static double Resistance(PackModel m, double[] x, int k, bool known)
    {
        int at = m.GroupAt(k) + 2;
        if (!known)
            return Square(x[at], 1, 0.3) + Square(x[at + 1], 0, 0.05);
        // A tenth of the information of the windows, inverted, and three percent of the model's own, nine tenths of it the other way round.
        double[] i = m.Resistance.Information[k];
        Matrix<double> covariance = (0.1 * SmallPack.UnitOhm * SmallPack.UnitOhm * Matrix<double>.Build.DenseOfArray(new[,] { { i[0], i[1] }, { i[1], i[2] } })).Inverse();
        covariance += 0.0009 * Matrix<double>.Build.DenseOfArray(new[,] { { 1, -0.9 }, { -0.9, 1 } });
        Vector<double> off = Vector<double>.Build.Dense([x[at] - (m.Resistance.CellOhm[k] / SmallPack.UnitOhm), x[at + 1] - (m.Resistance.JointOhm[k] / SmallPack.UnitOhm)]);
        return off * covariance.Inverse() * off;
    }

    [Theory]
    [InlineData(3, true, true, true)]
    [InlineData(2, false, false, true)]
    [InlineData(8, true, true, false)]
    [InlineData(8, false, false, true)]
    public void The_cost_is_that_of_the_beliefs_written_out(int groups, bool leaks, bool own, bool known)
    {
        PackModel m = Pack(groups, leaks, own, known);
        double[] x = SmallPack.SomeOfAll(m), fuller = [.. x];
        fuller[m.MeanAt] = -0.05;

        Assert.Equal(known, PackStart.Known(m));
        Assert.Equal(ByHand(m, x, known), new PackBeliefs(m).Of(x, null), 1e-7);
        Assert.Equal(ByHand(m, fuller, known), new PackBeliefs(m).Of(fuller, null), 1e-7);
    }

    [Theory]
    [InlineData(3, true, true)]
    [InlineData(8, false, false)]
    public void Pull_is_half_the_slope_of_the_cost_downhill(int groups, bool leaks, bool own)
    {
        PackModel m = Pack(groups, leaks, own);
        double[] x = SmallPack.SomeOfAll(m);
        NormalEquations normal = new(m.Shared, m.PerGroup, groups);
        PackBeliefs beliefs = new(m);

        double cost = beliefs.Of(x, normal);

        Assert.Equal(beliefs.Of(x, null), cost, 1e-12);
        for (int i = 0; i < m.Size; i++)
        {
            double[] more = [.. x], less = [.. x];
            (more[i], less[i]) = (x[i] + 1e-6, x[i] - 1e-6);
            double slope = (beliefs.Of(more, null) - beliefs.Of(less, null)) / 2e-6;
            Assert.True(Math.Abs(normal.Right[i] + (slope / 2)) < 1e-5 + (1e-6 * Math.Abs(slope)), $"parameter {i}: {normal.Right[i]} against {-slope / 2}");
        }
    }

    // Curvature of a tail is that of the square which touches it: weight times distance is the pull.
    [Fact]
    public void Curvature_of_ties_is_their_pull_over_their_distance()
    {
        PackModel m = Pack(3, true, true);
        double[] x = SmallPack.Plain(m, [9, 8, 10], [0.9, 0.85, 0.95]), apart = [.. x];
        apart[m.GroupAt(1) + 12] = 3;
        NormalEquations normal = new(m.Shared, m.PerGroup, 3);
        new PackBeliefs(m).Of(apart, normal);
        Matrix<double> whole = normal.Whole();
        int at = m.GroupAt(1);

        double d = apart[at] - apart[m.MeanAt], tie = 1 / ((0.02 * 0.02) + (d * d)), charge = apart[at + 1] - apart[m.MeanAt + 1], near = (1 / (0.01 * 0.01 + (charge * charge))) + (1 / (0.12 * 0.12));
        Assert.Equal(-tie, whole[at, m.MeanAt], 1e-6);
        Assert.Equal(tie + (1 / 0.09), whole[at, at], 1e-6);
        Assert.Equal(-near, whole[at + 1, m.MeanAt + 1], 1e-6);
        Assert.Equal(near, whole[at + 1, at + 1], 1e-6);
        Assert.Equal(1 / (4 + 9.0), whole[at + 12, at + 12], 1e-9);
        Assert.Equal(1 / 225.0, whole[at + 13, at + 13], 1e-9);
        // No warp at all: (3 + 5) / 3 of the ordinary, and the fence.
        Assert.Equal((8 / 3.0 / 0.16) + (1 / 36.0), whole[at + 4, at + 4], 1e-9);
        Assert.Equal((6 / 3.0) + (1 / 225.0), whole[at + 9, at + 9], 1e-9);
        Assert.Equal(whole[at + 2, at + 3], whole[at + 3, at + 2], 1e-9);
        Assert.True(whole[at + 2, at + 3] > 0, "cells and joint share what the windows tell of their sum");
    }

    // 3 % of a unit is where resistance counts as told.
    [Theory]
    [InlineData(0.0299, true)]
    [InlineData(0.0301, false)]
    public void Resistance_is_known_from_three_percent_on(double sd, bool known)
    {
        ResistanceFit resistance = SmallPack.Resistance([1, 1, 1], [0, 0, 0]);
        for (int k = 0; k < 3; k++)
            resistance.Information[k][0] = k == 0 ? 0 : 1 / (sd * SmallPack.UnitOhm * (sd * SmallPack.UnitOhm));

        Assert.Equal(known, PackStart.Known(SmallPack.Model(SmallPack.Slices(SmallPack.Log(SmallPack.RideA(), 3)), 3, resistance: resistance)));
    }

    [Fact]
    public void Where_current_and_slow_current_moved_alike_the_belief_stays_finite()
    {
        ResistanceFit resistance = SmallPack.Resistance([1, 1, 1], [0, 0, 0]);
        for (int k = 0; k < 3; k++)
            resistance.Information[k] = [4e9, 4e9 + 1, 4e9];
        PackModel m = SmallPack.Model(SmallPack.Slices(SmallPack.Log(SmallPack.RideA(), 3)), 3, resistance: resistance);

        PackStart.ResistanceBelief(m, 1, out double cells, out double joint, out double cc, out double cj, out double jj);

        Assert.Equal((1, 0), (cells, joint));
        // Their sum is told to no better than the model's own error, their difference hardly at all.
        Assert.InRange(cc + (2 * cj) + jj, 1000, 1.2 * 2 / (0.0009 * 0.1));
        Assert.InRange(cc - (2 * cj) + jj, 0, 100);
        Assert.True((cc * jj) - (cj * cj) >= 0);
    }
}
