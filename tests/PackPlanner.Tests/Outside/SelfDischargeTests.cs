using PackPlanner.Core.Bench;
using PackPlanner.Core.Cells;

namespace PackPlanner.Tests.Outside;

public class SelfDischargeTests
{
    // Source: [LfpPlateau]: 0.833 mV per percent; by hand: 1.7 mV in 3 days is 0.5667 mV/day less, 1.6 mV is 0.5333 mV/day, 19.2 % a month.
    [Fact]
    public void On_an_LFP_plateau_half_a_millivolt_a_day_is_nineteen_percent_a_month_and_cannot_be_told()
    {
        OpenCircuitCurve plateau = new([0, 0.25, 0.5, 1], [3.25, 3.25 + 0.25 * 0.08333, 3.25 + 0.5 * 0.08333, 3.25 + 0.08333], Standing.Assumed, "LfpPlateau");

        SelfDischarge loss = SelfDischarge.Of([0, 3], [3.3012, 3.2996], stepV: 0.0001, plateau);

        Assert.Equal(0.53333, loss.MillivoltPerDay, 1e-4);
        Assert.Equal(0.02222, loss.MillivoltPerDay / 24, 1e-5);
        Assert.Equal(0.833, SelfDischarge.MillivoltPerPercent(plateau, 3.30), 0.001);
        Assert.Equal(LeakAnswer.FlatCurve, loss.Answer);
        Assert.Null(loss.PercentPerMonth);
        Assert.Equal(19.2, loss.MillivoltPerDay * 30 / 0.8333, 0.05);
    }

    // Source: [LeakNote] 142 and 620 microampere on 100 Ah; by hand x 720 h / 100 Ah.
    [Theory]
    [InlineData(0.142, 100, 0.10224)]
    [InlineData(0.620, 100, 0.4464)]
    public void A_steady_leak_is_so_many_percent_a_month(double milliamp, double ah, double percent) =>
        Assert.Equal(milliamp, SelfDischarge.LeakMilliamp(percent, ah), 1e-9);

    // By hand: 0.2 % of 2.5 Ah is 5 mAh, over 720 h 6.944 microampere; 3.2 Ah in 60 days is 1.6 % of 100 Ah a month, 2.2222 mA.
    [Theory]
    [InlineData(0.2, 2.5, 0.0069444)]
    [InlineData(1.6, 100, 2.2222)]
    public void Percent_a_month_is_a_steady_current(double percent, double ah, double milliamp) =>
        Assert.Equal(milliamp, SelfDischarge.LeakMilliamp(percent, ah), 5e-5);
}
