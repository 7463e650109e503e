using PackPlanner.Core.Cells;
using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis;

/// <summary>What is a rest, a gap, a zero of the sensor: each limit on both its sides, for groups of 10 Ah.</summary>
public class CountLimitsTests
{
    private static ChargeCount Of(double[] amps, double stepS = 1, double ratedAh = 10, double[]? time = null) =>
        ChargeCount.Of(time ?? [.. amps.Select((_, i) => i * stepS)], amps, false, ratedAh);

    private static double[] Many(int n, double amps) => [.. Enumerable.Repeat(amps, n)];

    private static int Resting(double[] between, double stepS = 1, double ratedAh = 10) =>
        Of([.. Many(30, 5), .. between, .. Many(30, 5)], stepS, ratedAh).Resting.Count(r => r);

    // Twenty seconds, the row before them counted; a fortieth of the capacity in an hour, 0.25 A; half of that of scatter.
    [Theory]
    [InlineData(20, 0.1, 0, 20)]
    [InlineData(19, 0.1, 0, 0)]
    [InlineData(40, 0.249, 0, 40)]
    [InlineData(40, 0.251, 0, 0)]
    [InlineData(40, -0.249, 0, 40)]
    [InlineData(40, -0.251, 0, 0)]
    [InlineData(40, 0.1, 0.124, 40)]
    [InlineData(40, 0.1, 0.126, 0)]
    public void A_rest_is_long_low_and_still(int rows, double amps, double scatter, int resting)
    {
        Assert.Equal(resting, Resting([.. Enumerable.Range(0, rows).Select(i => amps + (i % 2 == 0 ? scatter : -scatter))]));
    }

    // One row beyond 1.6 times the limit, 0.4 A, parts a rest in two.
    [Theory]
    [InlineData(0.399, 51)]
    [InlineData(0.401, 50)]
    public void A_row_of_current_parts_a_rest(double amps, int resting)
    {
        Assert.Equal(resting, Resting([.. Many(25, 0.1), amps, .. Many(25, 0.1)]));
    }

    // Rows eight seconds apart tell a rest by two of them, others by four.
    [Theory]
    [InlineData(8, 2, 2)]
    [InlineData(8, 1, 0)]
    [InlineData(7.5, 3, 0)]
    [InlineData(7.5, 4, 4)]
    public void Few_rows_tell_a_rest_where_rows_are_far_apart(double stepS, int rows, int resting)
    {
        Assert.Equal(resting, Resting(Many(rows, 0.1), stepS));
    }

    // Small groups: 0.15 A at least is no current.
    [Theory]
    [InlineData(0.149, 40)]
    [InlineData(0.151, 0)]
    public void Fifteen_hundredths_of_an_ampere_are_the_least_limit(double amps, int resting)
    {
        Assert.Equal(resting, Resting(Many(40, amps), ratedAh: 2));
    }

    // The middle rest by its length, an hour at most each; how far they scatter, a fiftieth of the limit at least.
    [Fact]
    public void The_zero_is_that_of_the_middle_rest()
    {
        ChargeCount two = Of([.. Many(100, 0.1), .. Many(9, 5), .. Many(50, 0.2), .. Many(9, 5)]);
        Assert.Equal((0.1, 50 * 0.1 / 150), (two.ZeroA, two.ZeroSpreadA), (a, b) => Math.Abs(a.Item1 - b.Item1) < 1e-9 && Math.Abs(a.Item2 - b.Item2) < 1e-9);
        ChargeCount longest = Of([.. Many(240, 0.1), .. Many(9, 5), .. Many(240, 0.1), .. Many(9, 5), .. Many(1080, 0.2)], stepS: 10);
        Assert.Equal(0.1, longest.ZeroA, 1e-9);
        Assert.Equal(3600 * 0.1 / 8400, longest.ZeroSpreadA, 1e-9);
        Assert.Equal(0.02 * 0.25, Of([.. Many(100, 0.1), .. Many(9, 5)]).ZeroSpreadA, 1e-9);
        // A sensor with a dead band may stand anywhere within it; without a rest nothing is known.
        Assert.Equal((0, 0.1 * 0.25), (Of([.. Many(100, 0), .. Many(9, 5)]).ZeroA, Of([.. Many(100, 0), .. Many(9, 5)]).ZeroSpreadA));
        Assert.Equal((0, 0.2 * 0.25), (Of(Many(100, 5)).ZeroA, Of(Many(100, 5)).ZeroSpreadA));
    }

    // A minute, or five rows, is a gap; across it nothing is counted where the pack was quiet before or after, or for longer than a quarter of an hour.
    [Theory]
    [InlineData(1, 60, 5, 5, false, 5)]
    [InlineData(1, 61, 5, 5, true, 5)]
    [InlineData(20, 100, 5, 5, false, 5)]
    [InlineData(20, 101, 5, 5, true, 5)]
    [InlineData(1, 200, 5, 0.19, true, 0)]
    [InlineData(1, 200, 0.19, 5, true, 0)]
    [InlineData(1, 200, 5, 0.21, true, 2.605)]
    [InlineData(1, 900, 5, 5, true, 5)]
    [InlineData(1, 901, 5, 5, true, 0)]
    public void Gaps_are_told_and_bridged(double stepS, double gapS, double before, double after, bool gap, double meanA)
    {
        // To and fro about the last value, so that neither side is a rest.
        double[] amps = [.. Many(9, 3), before, after, .. Many(9, 3)];
        double[] time = [.. amps.Select((_, i) => (i * stepS) + (i >= 10 ? gapS - stepS : 0))];

        ChargeCount count = Of(amps, time: time);

        Assert.Equal(gap ? 1 : 0, count.Gaps.Count);
        Assert.Equal(meanA * gapS / 3600, count.DrawnAh[10] - count.DrawnAh[9], 1e-9);
        if (gap)
            Assert.Equal(new LogGap(10, 9 * stepS, gapS, meanA != 0), count.Gaps[0]);
    }

    [Fact]
    public void Lost_currents_stay_at_the_last()
    {
        double[] amps = [double.NaN, 5, double.NaN, double.NaN, 3, 3];

        Assert.Equal([0, 5, 5, 5, 3, 3], Of(amps).CurrentA);
        Assert.True(double.IsNaN(amps[0]));
    }

    [Fact]
    public void The_usual_step_is_the_middle_one_that_goes_on()
    {
        Assert.Equal(1, ChargeCount.UsualStep([5]));
        Assert.Equal(1, ChargeCount.UsualStep([0, 0, 0]));
        Assert.Equal(3, ChargeCount.UsualStep([0, 2, 2, 5, 6, 100]));
        Assert.Equal(2, ChargeCount.UsualStep([.. Enumerable.Range(0, 9000).Select(i => i * 2.0)]));
    }

    [Fact]
    public void Columns_know_their_grain_and_give_a_stretch_from_nought_on()
    {
        DiagnosisColumns log = new([0, 1, 2, 3], [1, 2, 3, 4], [[3.70, 3.72, 3.7200001, 3.69], [3.6, double.NaN, 3.6, 3.6]], [20, 21, 22, 23], true);
        double[] volts = new double[2];

        Assert.Equal(0.02, log.GrainV, 1e-9);
        // Steps of a tenth and more are no grain.
        Assert.Equal(0.1, new DiagnosisColumns([0, 1], [0, 0], [[3, 4]], null, false).GrainV);
        Assert.True(log.CopyVolts(0, volts));
        Assert.Equal([3.70, 3.6], volts);
        Assert.False(log.CopyVolts(1, volts));
        DiagnosisColumns cut = log.Cut(new LogStretch(1, 2, false));
        Assert.Equal([0, 1], cut.TimeS);
        Assert.Equal([2, 3], cut.CurrentA);
        Assert.Equal((3.72, 21, 2, 2, true), (cut.Volts(0, 0), cut.Temperature(0), cut.Rows, cut.Groups, cut.RowsAreAverages));
        Assert.True(double.IsNaN(new DiagnosisColumns([0], [0], [[3]], null, false).Temperature(0)));
    }

    // Half a percent for each kelvin below 25 °C, as usable energy has it.
    [Theory]
    [InlineData(30, 0, false)]
    [InlineData(25, 0, false)]
    [InlineData(15, 5, false)]
    [InlineData(10, 7.5, false)]
    [InlineData(9.9, 7.55, true)]
    [InlineData(-54, 39.5, true)]
    [InlineData(-60, 42.5, true)]
    public void Cold_takes_a_share(double degC, double percent, bool cold)
    {
        ColdLoss loss = ColdLoss.At(degC, Chemistries.Find("NMC")!);

        Assert.Equal((degC, percent, cold), (loss.MeanDegC, Math.Round(loss.LossPercent, 9), loss.Cold));
    }

    // On LFP a pack that rested five minutes below the step near 60 % and wakes above it was charged, the other way round it was ridden.
    [Theory]
    [InlineData(3.284, 3.329, 320, 0, true)]
    [InlineData(3.286, 3.329, 320, 0, false)]
    [InlineData(3.284, 3.327, 320, 0, false)]
    [InlineData(3.329, 3.284, 320, 0, true)]
    [InlineData(3.327, 3.284, 320, 0, false)]
    [InlineData(3.329, 3.286, 320, 0, false)]
    [InlineData(3.284, 3.329, 280, 0, false)]
    [InlineData(3.284, 3.340, 320, 0.41, false)]
    public void Charge_that_moved_across_the_step_is_seen(double beforeV, double afterV, int restS, double amps, bool seen)
    {
        double[] current = [.. Many(20, 5), .. Many(restS / 10, 0), .. Enumerable.Range(0, 20).Select(i => i % 2 == 0 ? amps : amps > 0 ? 3 : 0)];
        int row = 20 + (restS / 10);
        double[] time = [.. current.Select((_, i) => (i * 10.0) + (i >= row ? 40_000 : 0))];
        DiagnosisColumns log = new(time, current, [[.. current.Select((_, i) => i < row ? beforeV : afterV)]], null, false);
        PackGiven given = new(Chemistries.Find("LFP")!, 1, 1, 10, 3.4, 2.8);
        ChargeCount count = ChargeCount.Of(time, current, false, 10);

        Assert.Equal(seen ? [row] : [], UnloggedCharge.Of(log, count, given));
        Assert.Equal(seen ? 0 : 1, UnloggedCharge.Unseen(count, given, UnloggedCharge.Of(log, count, given)).Count());
    }

    // On a sloping curve: twelve points of charge that the resting voltage moved and nobody counted.
    [Theory]
    [InlineData(0.121, true)]
    [InlineData(0.119, false)]
    [InlineData(-0.121, true)]
    [InlineData(-0.119, false)]
    public void Twelve_points_of_charge_are_more_than_recovery(double points, bool seen)
    {
        OpenCircuitCurve curve = Chemistries.Find("NMC")!.Curve.Between(4.2, 3.0);
        double At(double charge) => Enumerable.Range(0, 60).Aggregate((Low: 3.0, High: 4.2), (v, _) => curve.FractionAt((v.Low + v.High) / 2) < charge ? ((v.Low + v.High) / 2, v.High) : (v.Low, (v.Low + v.High) / 2)).Low;
        double[] current = new double[40], time = [.. current.Select((_, i) => (i * 10.0) + (i >= 20 ? 40_000 : 0))];
        DiagnosisColumns log = new(time, current, [[.. current.Select((_, i) => At(i < 20 ? 0.6 : 0.6 + points))], [.. current.Select((_, i) => At(i < 20 ? 0.6 : 0.6 + points))]], null, false);

        Assert.Equal(seen ? [20] : [], UnloggedCharge.Of(log, ChargeCount.Of(time, current, false, 10), new(Chemistries.Find("NMC")!, 2, 1, 10, 4.2, 3.0)));
    }
}
