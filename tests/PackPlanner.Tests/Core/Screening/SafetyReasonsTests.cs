using PackPlanner.Core.Cells;
using PackPlanner.Core.Screening;

namespace PackPlanner.Tests.Core.Screening;

/// <summary>Each safety limit of resting volts, a hair to either side. A reading is good to 1 mV, so that the band is 2 mV.</summary>
public class SafetyReasonsTests
{
    private static readonly SafetyReasons.Limits Known = new(2.0, 1.5, 2.5, LimitOrigin.User, 4.2, LimitOrigin.Chemistry);

    private static CellDraft Cell(double? restV, params double[] earlier) => new()
    {
        Label = "A",
        Rows = [],
        Tests = [],
        RestV = restV,
        AllRestV = [.. earlier, .. restV is { } v ? [v] : Array.Empty<double>()],
    };

    [Theory]
    [InlineData(-0.0005, ReasonCodes.NegativeVoltage, Verdict.Reject, 0.0, "caution-02")]
    [InlineData(0.0, ReasonCodes.DeepDischarge, Verdict.Reject, 1.5, "caution-01")]
    [InlineData(1.4975, ReasonCodes.DeepDischarge, Verdict.Reject, 1.5, "caution-01")]
    [InlineData(1.4985, ReasonCodes.DeepDischarge, Verdict.Hold, 2.0, "caution-01")]
    [InlineData(2.0015, ReasonCodes.DeepDischarge, Verdict.Hold, 2.0, "caution-01")]
    [InlineData(2.0025, ReasonCodes.BelowCutOff, Verdict.Hold, 2.5, "caution-01")]
    [InlineData(2.5015, ReasonCodes.BelowCutOff, Verdict.Hold, 2.5, "caution-01")]
    [InlineData(4.2485, ReasonCodes.AboveChargeLimit, Verdict.Hold, 4.25, "caution-03")]
    [InlineData(4.3495, ReasonCodes.AboveChargeLimit, Verdict.Hold, 4.25, "caution-03")]
    [InlineData(4.3505, ReasonCodes.AboveChargeLimit, Verdict.Reject, 4.25, "caution-03")]
    public void A_resting_voltage_meets_the_limit_that_it_is_beyond(double volts, string code, Verdict bears, double limit, string caution)
    {
        VerdictReason reason = Assert.Single(SafetyReasons.Of(Cell(volts), Known, spreadV: 0.001));

        Assert.Equal((code, bears, caution, "V"), (reason.Code, reason.Bears, reason.Caution, reason.Unit));
        Assert.Equal(volts, reason.Value);
        Assert.Equal(limit, reason.Limit!.Value, tolerance: 1e-12);
        Assert.Equal(code switch { ReasonCodes.NegativeVoltage => null, ReasonCodes.BelowCutOff => LimitOrigin.User, _ => LimitOrigin.Chemistry }, reason.LimitFrom);
    }

    [Theory]
    [InlineData(2.5025)]
    [InlineData(3.6)]
    [InlineData(4.2475)]
    public void Between_the_limits_there_is_no_reason(double volts) => Assert.Empty(SafetyReasons.Of(Cell(volts, 2.4, 1.5), Known, spreadV: 0.001));

    [Fact]
    public void An_earlier_reading_that_was_deep_speaks_where_the_cell_reads_higher_now()
    {
        VerdictReason history = Assert.Single(SafetyReasons.Of(Cell(3.6, 1.49, 1.2), Known, spreadV: 0.001));

        Assert.Equal((ReasonCodes.DeepDischargeHistory, 1.2, 1.5, Verdict.Reject), (history.Code, history.Value, history.Limit, history.Bears));
        Assert.Equal(Verdict.Reject, SafetyReasons.Of(Cell(1.9, 1.2), Known, spreadV: 0.001).Single(reason => reason.Code == ReasonCodes.DeepDischargeHistory).Bears);
        Assert.DoesNotContain(SafetyReasons.Of(Cell(1.4985), Known, spreadV: 0.001), reason => reason.Code == ReasonCodes.DeepDischargeHistory);
        Assert.DoesNotContain(SafetyReasons.Of(Cell(1.2, 1.1), Known, spreadV: 0.001), reason => reason.Code == ReasonCodes.DeepDischargeHistory);
        Assert.Empty(SafetyReasons.Of(Cell(null, 1.2), Known, spreadV: 0.001));
    }

    [Fact]
    public void Without_a_cut_off_or_a_charge_limit_neither_is_held_against_a_cell()
    {
        SafetyReasons.Limits open = Known with { CutoffV = null, FullV = null };

        Assert.Empty(SafetyReasons.Of(Cell(2.1), open, spreadV: 0.001));
        Assert.Empty(SafetyReasons.Of(Cell(5.0), open, spreadV: 0.001));
    }

    // Where nobody names the chemistry: graphite cells are not charged again from 2.0 V down, LTO from 1.5 V.
    [Fact]
    public void Limits_are_the_users_then_the_chemistrys_then_those_of_the_anode()
    {
        ScreeningRequest stated = new() { FullV = 4.1, EmptyV = 2.8 };
        SafetyReasons.Limits nmc = SafetyReasons.LimitsOf(Chemistries.NickelManganeseCobalt, new ScreeningRequest(), false);
        SafetyReasons.Limits given = SafetyReasons.LimitsOf(Chemistries.NickelManganeseCobalt, stated, false);
        SafetyReasons.Limits unknown = SafetyReasons.LimitsOf(null, new ScreeningRequest(), graphiteByVolts: false);

        Assert.Equal((4.2, LimitOrigin.Chemistry, LimitOrigin.Chemistry), (nmc.FullV, nmc.FullFrom, nmc.CutoffFrom));
        Assert.Equal((4.1, 2.8, LimitOrigin.User, LimitOrigin.User), (given.FullV, given.CutoffV, given.FullFrom, given.CutoffFrom));
        Assert.Equal((2.0, 1.5, null), (unknown.DoNotRechargeV, unknown.SurelyDeepV, unknown.CutoffV));
        Assert.Equal(Chemistries.All.Where(c => c.HasGraphiteAnode).Min(c => c.CutoffV), SafetyReasons.LimitsOf(null, new ScreeningRequest(), graphiteByVolts: true).CutoffV);
        Assert.Equal(2.0, SafetyReasons.LimitsOf(null, new ScreeningRequest(), graphiteByVolts: true).SurelyDeepV);
    }

    [Theory]
    [InlineData(2.90, false)]
    [InlineData(2.91, true)]
    public void A_lot_whose_middle_rests_above_2_9_volts_is_no_LTO(double middleV, bool tooHigh) =>
        Assert.Equal(tooHigh, SafetyReasons.RestsTooHighForLto([1.0, middleV, 4.0]));

    [Theory]
    [InlineData(new[] { 3.6, 3.7 }, 0.1)]
    [InlineData(new[] { 3.60, 3.61 }, 0.01)]
    [InlineData(new[] { 3.6, 3.601 }, 0.001)]
    [InlineData(new[] { 3.6, 3.6012 }, 0.0001)]
    [InlineData(new[] { 3.6, 3.60123 }, 0.0)]
    [InlineData(new[] { 3.6 }, 0.0)]
    public void Readings_tell_how_finely_they_were_written(double[] volts, double step) => Assert.Equal(step, ReadingStep.Of(volts));
}
