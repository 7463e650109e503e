using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Outside;

public class DiagnosisRecoveryTests
{
    // Source: [JiangZhang2015] p. 205: 100 Ah at 75 % and 90 Ah at 50 % give 45 Ah and take 25 Ah, 70 Ah in all; balanced 90 Ah.
    [Fact]
    public void Two_unequal_groups_give_70_ampere_hours_and_90_when_balanced()
    {
        Recovery recovery = Recovery.Of([100, 90], [0.75, 0.50]);

        Assert.Equal(70, recovery.UsableAhNow, tolerance: 1e-9);
        Assert.Equal(90, recovery.UsableAhAfterBalance, tolerance: 1e-9);
    }

    // By hand after [JiangZhang2015] eqs 6.10-6.14: left 50, 53.2, 46.06, 52.2, 48.5 Ah; room 50, 41.8, 51.94, 37.8, 48.5 Ah;
    // 46.06 + 37.80 = 83.86 Ah. Median of 90, 95, 97, 98, 100 is 97: replacing the 90 leaves 95 as the smallest.
    [Fact]
    public void Five_groups_are_limited_by_two_different_ones_until_balanced()
    {
        Recovery recovery = Recovery.Of([100, 95, 98, 90, 97], [0.50, 0.56, 0.47, 0.58, 0.50]);

        Assert.Equal(83.86, recovery.UsableAhNow, tolerance: 1e-9);
        Assert.Equal(90, recovery.UsableAhAfterBalance, tolerance: 1e-9);
        Assert.Equal(95, recovery.UsableAhAfterReplacement, tolerance: 1e-9);
        Assert.Equal(4, recovery.ReplacedGroup);
        Assert.Equal(2, recovery.NextBottleneck);
    }

    // By hand: sorted 90, 95, 97, 98, 100; the two smallest become 97, the third smallest is then 97.
    [Fact]
    public void Replacing_two_groups_pays_down_to_the_next_weakest()
    {
        (double usableAh, _) = Recovery.AfterReplacing([100, 95, 98, 90, 97], 2);

        Assert.Equal(97, usableAh, tolerance: 1e-9);
    }
}
