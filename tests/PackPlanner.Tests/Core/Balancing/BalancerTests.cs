using CsCheck;
using PackPlanner.Core.Balancing;
using PackPlanner.Core.Cells;

namespace PackPlanner.Tests.Core.Balancing;

public class BalancerTests
{
    [Fact]
    public void After_bleeding_or_charging_all_groups_lack_alike()
    {
        Gen.Select(Gen.Double[5, 100], Gen.Double[0.3, 1]).Array[2, 20].Sample(pairs =>
        {
            GroupCharge[] groups = [.. pairs.Select((pair, g) => new GroupCharge(g + 1, pair.Item1, pair.Item2))];
            foreach (bool atTop in new[] { true, false })
            {
                BalancingPlan plan = Balancer.Plan(new BalancingRequest(groups, 0.1, 1, 2, atTop));
                double Depth(int g, double movedAh) => atTop
                    ? (1 - groups[g].Fraction!.Value) * groups[g].CapacityAh!.Value - movedAh
                    : groups[g].Fraction!.Value * groups[g].CapacityAh!.Value + movedAh;
                double[] bled = [.. plan.Groups.Select((group, g) => Depth(g, -group.RemoveAh!.Value))];
                double[] charged = [.. plan.Groups.Select((group, g) => Depth(g, group.AddAh!.Value))];
                Assert.Equal(bled.Max(), bled.Min(), tolerance: 1e-9);
                Assert.Equal(charged.Max(), charged.Min(), tolerance: 1e-9);
                Assert.Equal(0, plan.Groups.Min(group => group.RemoveAh!.Value), tolerance: 1e-12);
                Assert.Equal(0, plan.Groups.Min(group => group.AddAh!.Value), tolerance: 1e-12);
            }
        }, seed: "0000KIcCwDG2", iter: 200);
    }

    [Fact]
    public void The_quicker_way_is_chosen()
    {
        GroupCharge[] groups = [new(1, 100, 0.95), new(2, 100, 1.0), new(3, 100, 1.0)];

        Assert.False(Balancer.Plan(new BalancingRequest(groups, 0.1, 1, 5, true)).ByBleeding);
        Assert.True(Balancer.Plan(new BalancingRequest(groups, 6, 1, 5, true)).ByBleeding);
        Assert.Null(Balancer.Plan(new BalancingRequest(groups, null, 1, null, true)).ByBleeding);
    }

    [Fact]
    public void A_group_alone_among_silent_ones_stands_level_with_nothing()
    {
        BalancingPlan plan = Balancer.Plan(new BalancingRequest([new(1, 100, null), new(2, 100, 0.9)], 0.1, 1, 5, true));

        Assert.Equal("nothing-to-compare", plan.Groups[1].Reason);
        Assert.Null(plan.Groups[1].RemoveAh);
        Assert.Null(plan.Hours);
    }

    // By hand: 100 and 90 Ah, both half full, lack 50 and 45 Ah: 5 Ah at 0.1 A are 50 h. They hold 50 and 45 Ah: 50 h again.
    // At 60 and 50 % they lack 40 and 45 Ah, 50 h; they hold 60 and 45 Ah, 150 h: here the top is quicker.
    [Theory]
    [InlineData(0.5, 0.5, 50, 50)]
    [InlineData(0.6, 0.5, 50, 150)]
    public void Top_and_bottom_are_two_answers(double first, double second, double topHours, double bottomHours)
    {
        BalancingRequest request = new([new(1, 100, first), new(2, 90, second)], 0.1, 1, null, AtTop: true);

        Assert.Equal(topHours, Balancer.Plan(request).Hours!.Value, tolerance: 1e-9);
        Assert.Equal(bottomHours, Balancer.Plan(request with { AtTop = false }).Hours!.Value, tolerance: 1e-9);
    }

    [Fact]
    public void A_group_that_must_not_be_charged_is_left_out_and_sets_no_level()
    {
        BalancingPlan plan = Balancer.Plan(new BalancingRequest([new(1, 100, 0.05, NotToBeCharged: true), new(2, 100, 0.98), new(3, 100, 1.0)], 0.1, 1, 5, true));

        Assert.Equal("not-to-be-charged", plan.Groups[0].Reason);
        Assert.Null(plan.Groups[0].AddAh);
        Assert.Equal(2, plan.Groups[2].RemoveAh!.Value, tolerance: 1e-9);
        Assert.Null(plan.Parallel);
    }

    // By hand: 20 Ah and 0.01 of charge are 0.2 Ah, 0.329 Ah at 90 %; of the difference of two such groups 0.465 Ah.
    [Fact]
    public void What_is_moved_is_as_sure_as_both_groups_together()
    {
        BalancingPlan plan = Balancer.Plan(new BalancingRequest([new(1, 20, 1.0, 0.01), new(2, 20, 0.96, 0.01)], 0.06, 1, null, true));

        Assert.Equal(0.46524, plan.Groups[0].SpreadAh!.Value, tolerance: 1e-5);
        Assert.Equal((0.8 - 0.46524) / 0.06, plan.Range!.Low, tolerance: 1e-3);
        Assert.Equal((0.8 + 0.46524) / 0.06, plan.Range.High, tolerance: 1e-3);
        Assert.Null(Balancer.Plan(new BalancingRequest([new(1, 20, 1.0), new(2, 20, 0.96, 0.01)], 0.06, 1, null, true)).Range);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void The_ranges_agree_with_a_seeded_monte_carlo_run(bool atTop)
    {
        GroupCharge[] groups =
        [
            new(1, 100, 0.95, 0.004) { CapacitySigmaAh = 1 }, new(2, 98, 0.93, 0.005) { CapacitySigmaAh = 1 },
            new(3, 90, 0.80, 0.006) { CapacitySigmaAh = 1 }, new(4, 101, 0.98, 0.003) { CapacitySigmaAh = 1 },
        ];
        BalancingRequest request = new(groups, 0.1, 1, 5, atTop);
        Random random = new(20261125);
        BalancingPlan[] drawn = [.. Enumerable.Range(0, 10_000).Select(_ => Balancer.Plan(request with
        {
            Groups =
            [
                .. groups.Select(group => group with
                {
                    Fraction = group.Fraction + group.FractionSpread * MathNet.Numerics.Distributions.Normal.Sample(random, 0, 1),
                    CapacityAh = group.CapacityAh + group.CapacitySigmaAh * MathNet.Numerics.Distributions.Normal.Sample(random, 0, 1),
                }),
            ],
        }))];

        BalancingPlan plan = Balancer.Plan(request);

        Near(plan.BleedRange!, [.. drawn.Select(each => each.BleedHours!.Value)]);
        Near(plan.ChargeRange!, [.. drawn.Select(each => each.ChargeHours!.Value)]);
        Near(plan.Groups[0].ChargeRange!, [.. drawn.Select(each => each.Groups[0].ChargeHours!.Value)]);
        Near(plan.Groups[0].BleedRange!, [.. drawn.Select(each => each.Groups[0].BleedHours!.Value)]);
    }

    private static void Near(HoursRange range, double[] drawn)
    {
        Array.Sort(drawn);
        double tolerance = 0.08 * (range.High - range.Low) / 2;
        Assert.Equal(drawn[drawn.Length / 20], range.Low, tolerance);
        Assert.Equal(drawn[^(drawn.Length / 20)], range.High, tolerance);
    }

    [Fact]
    public void Where_nothing_is_told_there_are_no_hours()
    {
        BalancingPlan plan = Balancer.Plan(new BalancingRequest([new(1, 100, null), new(2, 100, null)], 0.1, 1, 5, true));

        Assert.All(plan.Groups, group => Assert.Equal("cannot-tell", group.Reason));
        Assert.Null(plan.BleedHours);
        Assert.Null(plan.ByBleeding);
    }

    [Theory]
    [InlineData("LFP", 3.15, false)]
    [InlineData("LFP", 3.16, true)]
    [InlineData("LFP", 3.39, true)]
    [InlineData("LFP", 3.40, false)]
    [InlineData("NMC", 3.30, false)]
    public void The_curve_is_silent_on_the_plateau_only(string chemistry, double restV, bool silent) =>
        Assert.Equal(silent, CurveTells.FractionAt(Chemistries.Find(chemistry)!, restV) is null);
}
