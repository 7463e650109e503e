using PackPlanner.Core.Bench;
using PackPlanner.Core.Cells;

namespace PackPlanner.Tests.Core.Bench;

public class SelfDischargeTests
{
    private static readonly OpenCircuitCurve Nmc = Chemistries.NickelManganeseCobalt.Curve;

    [Fact]
    public void A_day_is_too_early_and_the_days_needed_are_said()
    {
        SelfDischarge loss = SelfDischarge.Of([0, 1], [3.900, 3.898], 0.001, Nmc);

        Assert.Equal(LeakAnswer.TooEarly, loss.Answer);
        Assert.Null(loss.PercentPerMonth);
        Assert.True(loss.DaysNeeded >= 3);
    }

    [Fact]
    public void Two_weeks_on_a_steep_curve_tell()
    {
        SelfDischarge loss = SelfDischarge.Of([0, 14], [3.900, 3.896], 0.001, Nmc);

        // By hand: NMC rises 3.8899 to 3.9181 V from 75 to 77.5 %: 11.28 mV a percent; 4 mV are 0.3546 %, in 30 days 0.760 %.
        Assert.Equal(LeakAnswer.Told, loss.Answer);
        Assert.Equal(0.760, loss.PercentPerMonth!.Value, 0.01);
    }

    [Fact]
    public void A_ten_millivolt_meter_cannot_tell_what_a_finer_one_would()
    {
        Assert.Equal(LeakAnswer.CoarseMeter, SelfDischarge.Of([0, 14], [3.60, 3.60], 0.01, Nmc).Answer);
        Assert.Equal(LeakAnswer.Told, SelfDischarge.Of([0, 14], [3.600, 3.599], 0.001, Nmc).Answer);
    }

    [Fact]
    public void An_LFP_plateau_cannot_tell_unless_the_fall_is_clear()
    {
        OpenCircuitCurve lfp = Chemistries.LithiumIronPhosphate.Curve;

        Assert.Equal(LeakAnswer.FlatCurve, SelfDischarge.Of([0, 14], [3.290, 3.285], 0.001, lfp).Answer);
        SelfDischarge leaking = SelfDischarge.Of([0, 14], [3.310, 3.265], 0.001, lfp);
        Assert.Equal(LeakAnswer.Told, leaking.Answer);
        Assert.True(leaking.PercentPerMonth > 20);
    }

    [Fact]
    public void Volts_that_rose_are_no_gain_of_charge_at_rest() =>
        Assert.Equal(LeakAnswer.Rose, SelfDischarge.Of([0, 14], [3.60, 3.75], 0.001, Nmc).Answer);

    [Fact]
    public void More_readings_narrow_the_spread()
    {
        double two = SelfDischarge.Of([0, 14], [3.900, 3.896], 0.001, Nmc).SpreadMillivoltPerDay!.Value;
        double five = SelfDischarge.Of([0, 3, 7, 11, 14], [3.900, 3.899, 3.898, 3.897, 3.896], 0.001, Nmc).SpreadMillivoltPerDay!.Value;

        // By hand: two readings 1 mV x root 2 / 14 days.
        Assert.Equal(Math.Sqrt(2) / 14, two, 1e-9);
        Assert.True(five < two);
    }

    [Fact]
    public void A_stated_rate_is_turned_into_charge_at_the_cells_own_volts()
    {
        Assert.Null(SelfDischarge.Stated(0.3, 3.29, Chemistries.LithiumIronPhosphate.Curve).PercentPerMonth);
        Assert.Equal(0.3 * 30 / 11.28, SelfDischarge.Stated(0.3, 3.904, Nmc).PercentPerMonth!.Value, 0.02);
        Assert.Equal(LeakAnswer.NoCurve, SelfDischarge.Stated(0.3, 3.904, null).Answer);
    }

    [Fact]
    public void One_reading_is_refused() =>
        Assert.Throws<ArgumentException>(() => SelfDischarge.Of([0], [3.9], 0.001, Nmc));
}
