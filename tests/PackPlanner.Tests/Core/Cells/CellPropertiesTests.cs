using CsCheck;
using PackPlanner.Core.Cells;

namespace PackPlanner.Tests.Core.Cells;

/// <summary>What holds for every curve and every set of readings.</summary>
public class CellPropertiesTests
{
    // Any rising curve of 4 to 20 points, some of them nearly level.
    private static readonly Gen<OpenCircuitCurve> Curves =
        from n in Gen.Int[3, 19]
        from steps in Gen.Double[0.05, 1].Array[n]
        from rises in Gen.OneOf(Gen.Double[0.01, 0.3], Gen.Double[0.0001, 0.001]).Array[n]
        select Through(steps, rises);

    private static OpenCircuitCurve Through(double[] steps, double[] rises)
    {
        double[] fraction = new double[steps.Length + 1], volts = new double[steps.Length + 1];
        volts[0] = 2.5;
        for (int i = 0; i < steps.Length; i++)
            (fraction[i + 1], volts[i + 1]) = (fraction[i] + steps[i] / steps.Sum(), volts[i] + rises[i]);
        fraction[^1] = 1;
        return new OpenCircuitCurve(fraction, volts, Standing.Assumed, "made up");
    }

    [Fact]
    public void Volts_tell_the_charge_that_gave_them_inside_the_curve_and_beyond_it()
    {
        Gen.Select(Curves, Gen.Double[-0.2, 1.2], Gen.Double[-0.2, 1.2]).Sample((curve, one, other) =>
        {
            Assert.Equal(one, curve.FractionAt(curve.VoltsAt(one)), tolerance: 1e-6);
            Assert.True(Math.Abs(one - other) < 1e-9 || one < other == curve.VoltsAt(one) < curve.VoltsAt(other));
            Assert.True(curve.SlopeAt(one) >= 0);
        }, seed: "0000KIcCwDG2", iter: 1000);
    }

    [Fact]
    public void The_mean_of_two_parts_is_the_mean_of_the_whole()
    {
        Gen.Select(Curves, Gen.Double[0, 0.45], Gen.Double[0.55, 1]).Sample((curve, low, high) =>
        {
            double middle = 0.3 * low + 0.7 * high;
            double parts = ((middle - low) * curve.MeanVolts(low, middle) + (high - middle) * curve.MeanVolts(middle, high)) / (high - low);
            Assert.Equal(curve.MeanVolts(low, high), parts, tolerance: 2e-4);
            Assert.InRange(parts, curve.VoltsAt(low), curve.VoltsAt(high));
        }, seed: "0000KIcCwDG2", iter: 300);
    }

    [Fact]
    public void A_curve_with_other_ends_has_those_volts_at_them_and_the_measured_ones_between()
    {
        Gen.Select(Gen.Int[0, Chemistries.All.Count - 1], Gen.Double[0.05, 0.3], Gen.Double[0.7, 0.95], Gen.Double[0.1, 0.9]).Sample((which, low, high, at) =>
        {
            // A point that lies almost on the new end is lifted past it by a hundredth of a millivolt.
            OpenCircuitCurve whole = Chemistries.All[which].Curve;
            OpenCircuitCurve part = whole.Between(whole.VoltsAt(high), whole.VoltsAt(low));
            Assert.Equal(whole.VoltsAt(low), part.EmptyV, tolerance: 1e-9);
            Assert.Equal(whole.VoltsAt(high), part.FullV, tolerance: 2e-5);
            Assert.Equal(whole.VoltsAt(low + at * (high - low)), part.VoltsAt(at), tolerance: 0.006);
        }, seed: "0000KIcCwDG2", iter: 300);
    }

    [Fact]
    public void At_most_half_of_the_readings_lie_on_either_side_of_the_median_and_a_wild_one_moves_no_score_of_the_others_far()
    {
        Gen.Double[1, 5].Array[3, 40].Sample(values =>
        {
            double median = Robust.Median(values);
            Assert.True(values.Count(v => v < median) <= values.Length / 2 && values.Count(v => v > median) <= values.Length / 2);
            double mad = Robust.MedianAbsoluteDeviation(values);
            Assert.True(values.Count(v => Math.Abs(v - median) <= mad + 1e-12) * 2 >= values.Length);
            double[] moved = Robust.ModifiedScores([.. values.Select(v => 10 * v + 3)]);
            Assert.All(Robust.ModifiedScores(values).Zip(moved), pair => Assert.Equal(pair.First, pair.Second, tolerance: 1e-6 * Math.Max(1, Math.Abs(pair.First))));
            double[] wild = [.. values, values.Max() + 1e6];
            Assert.InRange(Robust.Median(wild), median, values.Order().ElementAt(values.Length / 2 + (values.Length % 2 == 0 ? 0 : Math.Min(1, values.Length - 1))));
        }, seed: "0000KIcCwDG2", iter: 1000);
    }

    [Fact]
    public void A_way_there_and_back_in_temperature_ends_where_it_began()
    {
        Gen.Select(Gen.Double[-20, 60], Gen.Double[-20, 60], Gen.Double[-20, 60], Gen.Double[0.2, 5]).Sample((a, b, c, times) =>
        {
            if (Math.Abs(a - b) < 1)
                return;
            double slope = Arrhenius.SlopeKelvin(a, b, times);
            Assert.Equal(times, Arrhenius.Factor(slope, b, a), tolerance: 1e-9 * times);
            Assert.Equal(1, Arrhenius.Factor(slope, c, a) * Arrhenius.Factor(slope, a, c), tolerance: 1e-9);
        }, seed: "0000KIcCwDG2", iter: 300);
    }
}
