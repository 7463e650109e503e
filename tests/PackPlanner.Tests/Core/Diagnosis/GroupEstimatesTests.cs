using MathNet.Numerics.LinearAlgebra;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis;

/// <summary>Figures and doubts of groups: each part of a doubt worked out by hand, and the fit's own from its whole covariance.</summary>
public class GroupEstimatesTests
{
    private static readonly double[] Capacity = [9.5, 9.0, 9.6, 9.4], Charge = [0.95, 0.93, 0.96, 0.95];

    private static PackEstimator.Estimate Pack(bool leaks = false, bool known = true, string chemistry = "NMC", double stepS = 1, (int, int)[]? taps = null)
    {
        DiagnosisColumns log = SmallPack.Log(SmallPack.RideA(), 4);
        ResistanceFit resistance = SmallPack.Resistance([0.9, 1.0, 0.95, 0.9], [0.1, 0.05, 0.1, 0.4], known);
        PackModel model = SmallPack.Model(SmallPack.Slices(log), 4, leaks, taps, chemistry, resistance);
        return SmallPack.Estimate(model, SmallPack.Plain(model, Capacity, Charge), log, stepS);
    }

    private static GroupEstimate[] Of(PackEstimator.Estimate pack, bool told = true, double window = 0.95, double[]? windows = null, bool flat = false) =>
        GroupEstimates.Of(pack, new Identifiability(told, null, null, window) is var t && windows is null ? Windows(t, [window, window, window, window]) : Windows(new Identifiability(told, null, null, window), windows!), flat);

    // Set from within only; a record can be copied with it.
    private static Identifiability Windows(Identifiability told, double[] windows)
    {
        typeof(Identifiability).GetProperty("Windows", System.Reflection.BindingFlags.Instance | System.Reflection.BindingFlags.NonPublic)!.SetValue(told, windows);
        return told;
    }

    private static double Root(params double[] parts) => Math.Sqrt(parts.Sum(p => p * p));

    [Fact]
    public void Figures_are_read_out_of_the_parameters_against_their_medians()
    {
        PackEstimator.Estimate pack = Pack(leaks: true, taps: [(0, 1), (3, -1)]);
        double[] x = pack.Fit.X;
        (x[pack.Model.TapAt], x[pack.Model.TapAt + 1]) = (2, -3);
        for (int k = 0; k < 4; k++)
            x[pack.Model.GroupAt(k) + PackParameters.Leak] = k == 2 ? 5 : 1;

        GroupEstimate[] groups = Of(pack);

        // The middle of 9.0, 9.4, 9.5 and 9.6 in logarithms, and of 0.93, 0.95, 0.95, 0.96.
        double middle = Math.Sqrt(9.4 * 9.5), fastest = 1 + new[] { (0.1, 2.5), (0.2, 8), (0.15, 30), (0.25, 120) }.Sum(s => s.Item1 * (1 - Math.Exp(-1 / s.Item2)));
        double[] ohm = [.. new[] { (0.9, 0.1), (1.0, 0.05), (0.95, 0.1), (0.9, 0.4) }.Select(g => SmallPack.UnitOhm * ((g.Item1 * fastest) + g.Item2))];
        for (int k = 0; k < 4; k++)
        {
            Assert.Equal(Capacity[k], groups[k].CapacityAh, 1e-9);
            Assert.Equal(Capacity[k] / middle, groups[k].Share, 1e-9);
            Assert.Equal((Charge[k], Charge[k] - 0.95), (groups[k].Charge, groups[k].Offset));
            Assert.Equal(ohm[k], groups[k].ResistanceOhm, 1e-9);
            Assert.Equal(ohm[k] / Robust.Median(ohm), groups[k].TotalShare, 1e-9);
        }

        // Cells: the middle of 0.9, 0.9, 0.95, 1 is 0.925; joints over the middle of the sums 1, 1.05, 1.05, 1.3.
        Assert.Equal([0.9 / 0.925, 1 / 0.925], new[] { groups[0].CellsShare, groups[1].CellsShare }, (a, b) => Math.Abs(a - b) < 1e-9);
        Assert.Equal(0.4 / 1.05, groups[3].JointShare, 1e-9);
        // Four units beyond the others, each 1 mA for 10 Ah.
        Assert.Equal([0, 0, 0.004, 0], groups.Select(g => Math.Round(g.LeakA, 9)));
        Assert.Equal([0.02, -0.02, 0, -0.03], groups.Select(g => Math.Round(g.TapV, 9)));
    }

    // Where no current stepped, the level of the voltages has to serve, with five times the doubt.
    [Fact]
    public void Without_steps_resistance_is_that_of_the_fit()
    {
        PackEstimator.Estimate pack = Pack(known: false);
        double[] x = pack.Fit.X;
        (x[pack.Model.GroupAt(1) + 2], x[pack.Model.GroupAt(1) + 3]) = (1.1, 0.2);
        double[] usual = [.12, .18, .18, .25, .3], tau = [2.5, 8, 30, 120, 500];

        GroupEstimate[] groups = Of(pack);

        double share = 1 + usual.Zip(tau, (s, t) => s * (1 - Math.Exp(-1 / t))).Sum();
        Assert.Equal(SmallPack.UnitOhm * ((1.1 * share) + 0.2), groups[1].ResistanceOhm, 1e-9);
        Assert.All(groups, g => Assert.Equal(0.3, g.ResistanceSd));
        Assert.All(Of(Pack(stepS: 3)), g => Assert.Equal(0.06, g.ResistanceSd));
        Assert.All(Of(Pack(stepS: 3.1)), g => Assert.Equal(0.13, g.ResistanceSd));
    }

    // With no covariance to be had every doubt stands at its widest.
    [Fact]
    public void Without_a_covariance_every_doubt_is_at_its_widest()
    {
        GroupEstimate[] groups = Of(Pack(leaks: true), told: false);

        Assert.All(groups, g => Assert.Equal((0.14, 0.14, 0.10, 0.5), (g.CapacitySd, g.ShareSd, g.OffsetSd, g.CellsSd)));
        Assert.All(groups, g => Assert.Equal(3 * 0.001, g.LeakSd, 1e-12));
        Assert.All(Of(Pack()), g => Assert.True(double.IsNaN(g.LeakSd)));
        // Told, 6.8 % and 12 % of how far it lies off the middle are the most.
        double middle = Math.Log(Math.Sqrt(9.4 * 9.5) / 10);
        Assert.All(Of(Pack()), (g, k) => Assert.Equal(0.068 + (0.12 * Math.Abs(Math.Log(Capacity[k] / 10) - middle)), g.CapacitySd, 1e-9));
    }

    // A third of what leaked away is doubt of capacity, six percent at most.
    [Theory]
    [InlineData(40, 0.33)]
    [InlineData(4000, 0)]
    public void What_leaked_is_doubt_of_capacity(double units, double share)
    {
        PackEstimator.Estimate pack = Pack(leaks: true);
        pack.Fit.X[pack.Model.GroupAt(2) + PackParameters.Leak] = units;
        double hours = pack.Model.Slices.Pieces[^1].TimeS / 3600, middle = Math.Log(Math.Sqrt(9.4 * 9.5) / 10);

        double leaked = share > 0 ? share * units * 0.001 * hours / 9.6 : 0.06;

        Assert.Equal(0.068 + leaked + (0.12 * (Math.Log(0.96) - middle)), Of(pack)[2].CapacitySd, 1e-9);
    }

    /// <summary>A pack fitted to volts that the model itself made, so that the covariance is a real one.</summary>
    private static PackEstimator.Estimate Fitted(string chemistry = "NMC")
    {
        PackEstimator.Estimate pack = Pack(chemistry: chemistry);
        SmallPack.Say(pack.Model, [.. pack.Fit.X]);
        pack.Fit.Run(2, adaptFloors: false);
        Assert.NotNull(pack.Fit.Covariances);
        return pack;
    }

    /// <summary>One standard deviation of a group's parameter, from the inverse of the whole curvature; against the mean of all where asked.</summary>
    private static double Sd(PackEstimator.Estimate pack, int k, int parameter, bool relative)
    {
        PackModel m = pack.Model;
        Matrix<double> inverse = pack.Fit.Quadratic(pack.Fit.X).Curvature.Inverse();
        int at = m.GroupAt(k) + parameter;
        if (!relative)
            return Math.Sqrt(inverse[at, at]);
        // What is common moves all groups; a group's answer to it less the mean answer of all is what counts.
        Vector<double> Answer(int g) => inverse.Row(m.GroupAt(g) + parameter).SubVector(0, m.Shared) * inverse.SubMatrix(0, m.Shared, 0, m.Shared).Inverse();
        Vector<double> own = Answer(k), mean = Enumerable.Range(0, m.Groups).Select(Answer).Aggregate((a, b) => a + b) / m.Groups;
        Matrix<double> common = inverse.SubMatrix(0, m.Shared, 0, m.Shared);
        return Math.Sqrt(inverse[at, at] - (own * common * own) + ((own - mean) * common * (own - mean)));
    }

    [Theory]
    [InlineData(1.0, 1.0)]
    [InlineData(0.80, 0.80)]
    [InlineData(0.80, 0.70)]
    [InlineData(0.90, 0.80)]
    public void Doubts_add_up_as_stated_on_a_sloping_curve(double window, double own)
    {
        PackEstimator.Estimate pack = Fitted() with { CountSd = 0.011, ValleySd = 0.013 };
        double[] logs = [.. Enumerable.Range(0, 4).Select(k => pack.Fit.X[pack.Model.GroupAt(k)])];
        double middle = Robust.Median(logs), common = 3 * Robust.Median([.. Enumerable.Range(0, 4).Select(k => Sd(pack, k, 0, relative: false))]);

        GroupEstimate[] groups = Of(pack, window: window, windows: [own, own, own, own]);

        double part = (0.18 * Math.Max(0, 0.85 - window)) + (0.10 * Math.Max(0, Math.Min(0.85, window) - own));
        for (int k = 0; k < 4; k++)
        {
            double off = 0.12 * Math.Abs(logs[k] - middle), absolute = Math.Max(common, 3 * Sd(pack, k, 0, relative: false));
            Assert.Equal(Math.Min(0.068 + off, Root(absolute, Root(0.033 + part, 0.011, 0.013) + off)), groups[k].CapacitySd, 2e-5);
            Assert.Equal(Math.Min(0.14, Root(3 * Sd(pack, k, 0, relative: true), 0.007 + off)), groups[k].ShareSd, 2e-5);
            Assert.Equal(Math.Min(0.10, Root(3 * Sd(pack, k, 1, relative: true), 0.0025)), groups[k].OffsetSd, 2e-5);
            Assert.Equal(Math.Min(0.5, Root(3 * Sd(pack, k, 2, relative: true), 0.03)), groups[k].CellsSd, 2e-4);
        }
    }

    // On a flat curve a log that tells has no part of a window to doubt but where a group was followed less; one that met one knee has nine percent.
    [Theory]
    [InlineData(true, 0.95, 0.95, 0)]
    [InlineData(true, 0.95, 0.7, 0.02)]
    [InlineData(true, 0.85, 0.7, 0.015)]
    [InlineData(false, 0.85, 0.85, 0.09)]
    public void Doubts_add_up_as_stated_on_a_flat_curve(bool told, double window, double own, double part)
    {
        PackEstimator.Estimate pack = Fitted("LFP");
        double[] logs = [.. Enumerable.Range(0, 4).Select(k => pack.Fit.X[pack.Model.GroupAt(k)])];
        double common = 3 * Robust.Median([.. Enumerable.Range(0, 4).Select(k => Sd(pack, k, 0, relative: false))]);

        GroupEstimate[] groups = Of(pack, told, window, [own, own, own, own], flat: true);

        for (int k = 0; k < 4; k++)
        {
            double off = 0.12 * Math.Abs(logs[k] - Robust.Median(logs)), absolute = Math.Max(common, 3 * Sd(pack, k, 0, relative: false));
            Assert.Equal(Math.Min(told ? 0.068 + off : 0.14, Root(absolute, 0.031 + part + off)), groups[k].CapacitySd, 5e-5);
        }
    }
}
