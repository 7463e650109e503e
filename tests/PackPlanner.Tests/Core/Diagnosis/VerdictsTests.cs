using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis;

/// <summary>Every limit of a finding on both its sides: what a sound group may be called, and from where on it may not.</summary>
public class VerdictsTests
{
    private static readonly (double, double) Tight = (0, 0);

    internal static GroupEstimate Sound() => new(
        CapacityAh: 10, CapacitySd: 0.03, Share: 1, ShareSd: 0.01, Charge: 0.9, Offset: 0, OffsetSd: 0.003, ResistanceOhm: 0.008, ResistanceSd: 0.06,
        TotalShare: 1, CellsShare: 1, CellsSd: 0.03, JointShare: 0, LeakA: 0, LeakSd: 0.001, TapV: 0);

    private static PackEstimator.Estimate Pack(double charge = 0.9, bool leaks = true, bool known = true)
    {
        DiagnosisColumns log = SmallPack.Log(SmallPack.RideA(), 3);
        PackModel model = SmallPack.Model(SmallPack.Slices(log), 3, leaks, resistance: SmallPack.Resistance([1, 1, 1], [0, 0, 0], known));
        return SmallPack.Estimate(model, SmallPack.Plain(model, [10, 10, 10], [charge, charge, charge]));
    }

    private static List<FindingDetail> Of(GroupEstimate g, PackEstimator.Estimate? pack = null, bool told = true, bool sensor = false, (double, double)? spread = null, double standingV = 0, double usual = 1) =>
        Verdicts.Of(g, pack ?? Pack(), new Identifiability(told, told ? null : "too short", told ? null : "log more", 0.9), sensor, spread ?? Tight, standingV, usual);

    private static FindingKind[] Kinds(List<FindingDetail> findings) => [.. findings.Select(f => f.Kind)];

    [Fact]
    public void A_sound_group_has_no_finding()
    {
        Assert.Empty(Of(Sound()));
    }

    // 93.7 % of the median, and two of its own spreads below it.
    [Theory]
    [InlineData(0.936, 0.01, true)]
    [InlineData(0.938, 0.01, false)]
    [InlineData(0.9, 0.0499, true)]
    [InlineData(0.9, 0.0501, false)]
    public void A_group_holds_little_below_its_limit_and_beyond_its_doubt(double share, double sd, bool found)
    {
        Assert.Equal(found ? [FindingKind.LowCapacity] : [], Kinds(Of(Sound() with { Share = share, ShareSd = sd, CapacityAh = 10 * share })));
    }

    [Fact]
    public void A_group_that_holds_little_is_not_said_to_where_the_log_does_not_tell()
    {
        FindingDetail only = Assert.Single(Of(Sound() with { Share = 0.8, CapacityAh = 8 }, told: false));

        Assert.Equal((FindingKind.CannotTell, Sureness.High, "log more"), (only.Kind, only.Sure, only.SettleBy));
        Assert.Equal("too short", only.Evidence[0]);
    }

    // Three spreads and five spreads are where the words change.
    [Theory]
    [InlineData(0.0339, Sureness.Low)]
    [InlineData(0.0328, Sureness.Medium)]
    [InlineData(0.0203, Sureness.Medium)]
    [InlineData(0.0197, Sureness.High)]
    public void How_sure_follows_from_how_many_spreads_lie_between(double sd, Sureness sure)
    {
        Assert.Equal(sure, Assert.Single(Of(Sound() with { Share = 0.9, ShareSd = sd, CapacityAh = 9 })).Sure);
    }

    // By hand: 100 x 0.9 and that times e to the -/+ 1.645 x 0.02.
    [Fact]
    public void Evidence_of_little_capacity_says_how_much_and_whether_it_stands_level()
    {
        GroupEstimate low = Sound() with { Share = 0.9, ShareSd = 0.02, CapacityAh = 9 };

        Assert.Equal("holds 90 % of the median group's charge (90 % range 87 to 93 %)", Of(low)[0].Evidence[0]);
        Assert.Equal(2, Of(low)[0].Evidence.Count);
        Assert.StartsWith("stands level", Of(low with { Offset = 0.0199 })[0].Evidence[1], StringComparison.Ordinal);
        Assert.StartsWith("starts 2.1 points above", Of(low with { Offset = 0.021 })[0].Evidence[1], StringComparison.Ordinal);
        Assert.StartsWith("starts 3.0 points below", Of(low with { Offset = -0.03 })[0].Evidence[1], StringComparison.Ordinal);
    }

    // A parallel cell that drops out takes capacity and conductance alike: their product stays 1 to 15 %.
    [Theory]
    [InlineData(0.8, 1.25, true)]
    [InlineData(0.8, 1.43, true)]
    [InlineData(0.8, 1.45, false)]
    [InlineData(0.9, 1.151, true)]
    [InlineData(0.9, 1.149, false)]
    public void A_cell_that_dropped_out_shows_in_both(double share, double cells, bool said)
    {
        List<FindingDetail> found = Of(Sound() with { Share = share, CapacityAh = 10 * share, CellsShare = cells });

        Assert.Equal(said, found[0].Evidence.Any(e => e.Contains("a parallel cell has dropped out", StringComparison.Ordinal)));
    }

    // Three points and a half, and 1.2 of its own spreads, and three times what all groups scatter by.
    [Theory]
    [InlineData(0.036, 0.003, 0, true)]
    [InlineData(0.034, 0.003, 0, false)]
    [InlineData(-0.036, 0.003, 0, true)]
    [InlineData(-0.034, 0.003, 0, false)]
    [InlineData(0.05, 0.0416, 0, true)]
    [InlineData(0.05, 0.0418, 0, false)]
    [InlineData(0.05, 0.003, 0.0166, true)]
    [InlineData(0.05, 0.003, 0.0167, false)]
    public void A_group_stands_off_beyond_its_limit_its_doubt_and_the_scatter(double offset, double sd, double spread, bool found)
    {
        Assert.Equal(found ? [FindingKind.Imbalance] : [], Kinds(Of(Sound() with { Offset = offset, OffsetSd = sd, Charge = 0.9 + offset }, spread: (0, spread))));
    }

    [Fact]
    public void Evidence_of_standing_off_says_which_way_and_how_far()
    {
        // By hand: 164.5 x 0.01 = 1.6.
        Assert.StartsWith("5.0 points below the median group at the first row (± 1.6)", Of(Sound() with { Offset = -0.05, OffsetSd = 0.01 })[0].Evidence[0], StringComparison.Ordinal);
        Assert.StartsWith("5.0 points above", Of(Sound() with { Offset = 0.05, OffsetSd = 0.01 })[0].Evidence[0], StringComparison.Ordinal);
        Assert.Equal(Sureness.Medium, Of(Sound() with { Offset = 0.05, OffsetSd = 0.0102 })[0].Sure);
        Assert.Equal(Sureness.High, Of(Sound() with { Offset = 0.05, OffsetSd = 0.0098 })[0].Sure);
    }

    // A group of 8 Ah among 10 Ah at 50 % of charge: balanced when full it stands 12.5 points low here, by hand (1 - 0.5) x (10/8 - 1);
    // balanced when empty 12.5 high. Only what no balance explains accuses it.
    [Theory]
    [InlineData(-0.125, false)]
    [InlineData(0.125, false)]
    [InlineData(0, false)]
    [InlineData(-0.159, false)]
    [InlineData(-0.161, true)]
    [InlineData(0.161, true)]
    [InlineData(0.159, false)]
    public void A_smaller_group_drifts_off_by_itself(double offset, bool found)
    {
        GroupEstimate small = Sound() with { CapacityAh = 8, Share = 0.8, ShareSd = 0.15, Charge = 0.5 + offset, Offset = offset };

        Assert.Equal(found ? [FindingKind.Imbalance] : [], Kinds(Of(small, Pack(charge: 0.5))));
    }

    // Near full the charge that a smaller group is short of there is next to nothing, and when empty it is nearly all of the difference.
    [Fact]
    public void Where_the_log_begins_near_full_a_smaller_group_is_judged_at_the_top()
    {
        GroupEstimate small = Sound() with { CapacityAh = 9.4, Share = 0.94, Offset = -0.0425 };

        // By hand: at full -0.0425 + 0.1 x 0.0638 = -0.0361.
        Assert.Equal([FindingKind.Imbalance], Kinds(Of(small)));
        Assert.Empty(Of(small with { Offset = -0.0410 }));
        // Within five percent of the median no other end is looked at.
        Assert.Equal([FindingKind.Imbalance], Kinds(Of(small with { CapacityAh = 9.53, Share = 0.953, Offset = -0.0360 })));
    }

    // With a tap error at hand a shift of charge must be six points, and four of its spreads.
    [Theory]
    [InlineData(0.061, 0.01, true)]
    [InlineData(0.059, 0.01, false)]
    [InlineData(0.08, 0.0199, true)]
    [InlineData(0.08, 0.0201, false)]
    public void A_group_with_a_wrong_tap_must_stand_further_off(double offset, double sd, bool found)
    {
        FindingKind[] kinds = Kinds(Of(Sound() with { TapV = 0.02, Offset = offset, OffsetSd = sd }, sensor: true));

        Assert.Equal(found ? [FindingKind.Sensor, FindingKind.Imbalance] : [FindingKind.Sensor], kinds);
    }

    // 0.9 mA for each ampere-hour, 9 mA here, and two spreads and a half.
    [Theory]
    [InlineData(0.0091, 0.001, true)]
    [InlineData(0.0089, 0.001, false)]
    [InlineData(0.02, 0.0079, true)]
    [InlineData(0.02, 0.0081, false)]
    public void A_leak_counts_beyond_its_limit_and_its_doubt(double leakA, double sd, bool found)
    {
        GroupEstimate leaky = Sound() with { LeakA = leakA, LeakSd = sd };

        Assert.Equal(found ? [FindingKind.SelfDischarge] : [], Kinds(Of(leaky)));
        Assert.Empty(Of(leaky, Pack(leaks: false)));
    }

    [Fact]
    public void Evidence_of_a_leak_is_in_milliampere()
    {
        FindingDetail leak = Assert.Single(Of(Sound() with { LeakA = 0.02, LeakSd = 0.0045 }));

        // By hand: 1645 x 0.0045 = 7.4; 0.02 / 0.0045 = 4.4 spreads.
        Assert.Equal("loses 20 mA more than the median group, at rest as under load (± 7)", leak.Evidence[0]);
        Assert.Equal(Sureness.Medium, leak.Sure);
    }

    // A quarter and a bit more than the usual, or four times the scatter.
    [Theory]
    [InlineData(1.271, 0, 1, true)]
    [InlineData(1.269, 0, 1, false)]
    [InlineData(1.5, 0.124, 1, true)]
    [InlineData(1.5, 0.126, 1, false)]
    [InlineData(1.53, 0, 1.2, true)]
    [InlineData(1.52, 0, 1.2, false)]
    public void Resistance_is_high_beyond_the_limit_and_the_scatter(double total, double spread, double usual, bool found)
    {
        Assert.Equal(found ? [FindingKind.HighResistance] : [], Kinds(Of(Sound() with { TotalShare = total, CellsShare = total }, spread: (spread, 0), usual: usual)));
    }

    [Fact]
    public void Resistance_is_not_judged_where_no_current_ever_stepped()
    {
        Assert.Empty(Of(Sound() with { TotalShare = 2, CellsShare = 2 }, Pack(known: false)));
    }

    // Of what is too much the slow part would be nearly as much in cells: below 45 % of it, it is a joint.
    [Theory]
    [InlineData(1.224, FindingKind.Connection)]
    [InlineData(1.226, FindingKind.HighResistance)]
    public void A_joint_is_told_from_cells_by_the_slow_part(double cells, FindingKind kind)
    {
        Assert.Equal([kind], Kinds(Of(Sound() with { TotalShare = 1.5, CellsShare = cells })));
    }

    [Fact]
    public void Evidence_of_resistance_is_in_milliohm_above_the_median_or_the_neighbours()
    {
        GroupEstimate high = Sound() with { ResistanceOhm = 0.012, TotalShare = 1.5, CellsShare = 1.0, CellsSd = 0.05 };

        // By hand: 12 - 12 / 1.5 = 4 milliohm; 0.225 / 0.05 = 4.5 spreads.
        FindingDetail joint = Assert.Single(Of(high));
        Assert.Equal("4.00 milliohm above the median group (1.50 times)", joint.Evidence[0]);
        Assert.Equal(Sureness.Medium, joint.Sure);
        Assert.Contains("the slow part is 1.00 times", joint.Evidence[1], StringComparison.Ordinal);
        // By hand: against neighbours at 1.1 the excess is 0.3636, and 12 x 0.3636 / 1.3636 = 3.2 milliohm.
        Assert.Equal("3.20 milliohm above its neighbours in the string (1.36 times; 1.50 times the median group)", Of(high, usual: 1.1)[0].Evidence[0]);
    }

    [Fact]
    public void A_wrong_tap_says_by_how_much_and_which_way()
    {
        FindingDetail high = Assert.Single(Of(Sound() with { TapV = 0.0151 }, sensor: true)), low = Assert.Single(Of(Sound() with { TapV = -0.0149 }, sensor: true));

        Assert.Equal(("reads 15 mV too high at every current and charge", Sureness.High), (high.Evidence[0], high.Sure));
        Assert.Equal(("reads 15 mV too low at every current and charge", Sureness.Medium), (low.Evidence[0], low.Sure));
    }

    [Fact]
    public void Standing_off_is_said_only_where_nothing_else_was_found()
    {
        FindingDetail standing = Assert.Single(Of(Sound(), standingV: -0.03));

        Assert.Equal((FindingKind.Imbalance, Sureness.Low), (standing.Kind, standing.Sure));
        Assert.StartsWith("reads at least 30 mV below the middle group", standing.Evidence[0], StringComparison.Ordinal);
        Assert.StartsWith("reads at least 40 mV above", Of(Sound(), standingV: 0.04)[0].Evidence[0], StringComparison.Ordinal);
        Assert.Equal([FindingKind.SelfDischarge], Kinds(Of(Sound() with { LeakA = 0.05 }, standingV: -0.03)));
    }
}
