using PackPlanner.Core.Cells;
using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis;

public class UnloggedChargeTests
{
    private const double RatedAh = 100;

    private static readonly PackGiven Lfp = new(Chemistries.All.Single(c => c.Name == "LFP"), 4, 1, RatedAh, 3.65, 2.5);

    /// <summary>Four groups that rest at one voltage, vanish for two hours and rest at another.</summary>
    private static (DiagnosisColumns Log, ChargeCount Count) Parked(double beforeV, double afterV, double lastCurrentA = 0)
    {
        double[] time = [.. Enumerable.Range(0, 1200).Select(i => (double)(i < 600 ? i : i + 7200))];
        double[] amps = [.. Enumerable.Range(0, 1200).Select(i => i is > 400 and < 600 ? lastCurrentA : 0)];
        double[] volts = [.. Enumerable.Range(0, 1200).Select(i => i < 600 ? beforeV : afterV)];
        DiagnosisColumns log = new(time, amps, [volts, volts, volts, volts], null, RowsAreAverages: false);
        return (log, ChargeCount.Of(time, amps, averages: false, RatedAh));
    }

    [Theory]
    [InlineData(3.27, 3.34)]
    [InlineData(3.34, 3.27)]
    public void A_flat_pack_that_wakes_on_the_other_side_of_the_step_was_charged_or_ridden(double beforeV, double afterV)
    {
        (DiagnosisColumns log, ChargeCount count) = Parked(beforeV, afterV);

        Assert.Equal([600], UnloggedCharge.Of(log, count, Lfp));
        Assert.Empty(UnloggedCharge.Unseen(count, Lfp, [600]));
    }

    // The same flat part, a recovery after load, a little rise: nothing of that shows a charge, and the note says what cannot be seen.
    [Theory]
    [InlineData(3.27, 3.295, 0)]
    [InlineData(3.33, 3.34, 0)]
    [InlineData(3.24, 3.335, 30)]
    public void What_does_not_show_is_not_claimed_but_said(double beforeV, double afterV, double lastCurrentA)
    {
        (DiagnosisColumns log, ChargeCount count) = Parked(beforeV, afterV, lastCurrentA);

        IReadOnlyList<int> seen = UnloggedCharge.Of(log, count, Lfp);

        Assert.Empty(seen);
        Assert.Contains("does not show whether the pack was charged or ridden in a gap", Assert.Single(UnloggedCharge.Unseen(count, Lfp, seen)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_sloping_curve_needs_no_such_note()
    {
        PackGiven nmc = Lfp with { Chemistry = Chemistries.All.Single(c => c.Name == "NMC"), FullV = 4.2, EmptyV = 3.0 };
        (DiagnosisColumns log, ChargeCount count) = Parked(3.5, 4.0);

        Assert.Equal([600], UnloggedCharge.Of(log, count, nmc));
        Assert.Empty(UnloggedCharge.Unseen(count, nmc, []));
    }
}
