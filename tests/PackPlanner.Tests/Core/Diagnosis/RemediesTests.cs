using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis;

/// <summary>A fitted pack run down to its loaded cut-off in tiny steps by the test, against what the repairs are said to give.</summary>
public class RemediesTests
{
    private static (PackEstimator.Estimate Pack, GroupEstimate[] Groups) Pack(double[] capacity, double[] charge, double[] joints, double amps = 5)
    {
        DiagnosisColumns log = SmallPack.Log([.. Enumerable.Repeat(0.0, 30), .. Enumerable.Repeat(amps, 200), .. Enumerable.Repeat(0.0, 10), .. Enumerable.Repeat(-4.0, 20)], capacity.Length);
        PackModel model = SmallPack.Model(SmallPack.Slices(log), capacity.Length, resistance: SmallPack.Resistance([.. capacity.Select(_ => 1.0)], joints));
        PackEstimator.Estimate pack = SmallPack.Estimate(model, SmallPack.Plain(model, capacity, charge), log);
        return (pack, GroupEstimates.Of(pack, Identifiability.Of(pack, false), false));
    }

    private static List<FindingDetail>[] Findings(int groups, int? at = null, FindingKind kind = FindingKind.Imbalance)
    {
        List<FindingDetail>[] all = [.. Enumerable.Range(0, groups).Select(_ => new List<FindingDetail>())];
        if (at is int k)
            all[k].Add(new FindingDetail(kind, [], Sureness.High, ""));
        return all;
    }

    /// <summary>Down in steps of a thousandth of an ampere-hour until one group meets the cut-off: ampere-hours, watt-hours, and which.</summary>
    private static (double Ah, double Wh, int Ends) Down(PackEstimator.Estimate pack, double[] capacity, double[] top, double[] joint, double amps)
    {
        const double step = 0.001;
        double wh = 0;
        for (int i = 0; ; i++)
        {
            for (int k = 0; k < capacity.Length; k++)
            {
                if (pack.Fit.SteadyVolts(k, top[k] - (i * step / capacity[k]), amps, double.NaN, joint[k]) < pack.EmptyV)
                    return (i * step, wh, k + 1);
            }

            for (int k = 0; k < capacity.Length; k++)
                wh += step * pack.Fit.SteadyVolts(k, top[k] - ((i + 0.5) * step / capacity[k]), amps, double.NaN, joint[k]);
        }
    }

    [Fact]
    public void As_it_stands_balanced_and_with_the_weakest_replaced()
    {
        double[] capacity = [9.0, 7.5, 9.2, 9.1], charge = [0.9, 0.92, 0.85, 0.95], none = [1, 1, 1, 1], level = [1, 1, 1, 1];
        (PackEstimator.Estimate pack, GroupEstimate[] groups) = Pack(capacity, charge, [0.1, 0.1, 0.1, 0.1]);
        // The group with the least room, (1 - 0.95) x 9.1 Ah, is full first.
        double[] top = [.. capacity.Zip(charge, (c, z) => z + (0.05 * 9.1 / c))];

        (LoadedRecovery loaded, IReadOnlyList<Remedy> remedies) = Remedies.Of(pack, groups, Findings(4, 2));

        Assert.Equal(5, loaded.CurrentA, 0.02);
        (double ah, double wh, int ends) = Down(pack, capacity, top, none, loaded.CurrentA);
        Assert.Equal(ah, loaded.UsableAhNow, 0.002);
        Assert.Equal(wh, loaded.UsableWhNow, 0.1);
        Assert.Equal(2, ends);
        (double balancedAh, double balancedWh, int weakest) = Down(pack, capacity, level, none, loaded.CurrentA);
        Assert.Equal((balancedAh, 2), (loaded.UsableAhAfterBalance, weakest), (a, b) => Math.Abs(a.Item1 - b.Item1) < 0.002 && a.Item2 == b.Item2);
        Assert.StartsWith("Balance the pack", remedies[0].Do, StringComparison.Ordinal);
        Assert.Equal(balancedWh, remedies[0].UsableWh, 0.1);
        Assert.Equal(100 * ((balancedAh / ah) - 1), remedies[0].GainPercent, 0.06);
        Assert.Equal(2, remedies[0].NextBottleneck);

        // The median of 7.5, 9, 9.1 and 9.2 is 9.05.
        double[] mended = [9.0, 9.05, 9.2, 9.1];
        (double replacedAh, _, int next) = Down(pack, mended, level, none, loaded.CurrentA);
        Assert.Equal(replacedAh, loaded.UsableAhAfterReplacement, 0.002);
        Assert.Equal("Replace group 2 by one as good as the median group, and balance.", remedies[1].Do);
        Assert.Equal((replacedAh, next), (remedies[1].UsableAh, remedies[1].NextBottleneck), (a, b) => Math.Abs(a.Item1 - b.Item1) < 0.002 && a.Item2 == b.Item2);
    }

    // Two weak groups: replacing both gives more than half a percent, a third would not.
    [Fact]
    public void Groups_are_replaced_one_after_another_while_each_gives_something()
    {
        (PackEstimator.Estimate pack, GroupEstimate[] groups) = Pack([9, 7, 9, 7.5, 9.01], [1, 1, 1, 1, 1], [0, 0, 0, 0, 0]);

        string[] said = [.. Remedies.Of(pack, groups, Findings(5)).Remedies.Select(r => r.Do)];

        Assert.Equal(["Replace group 2 by one as good as the median group, and balance.", "Replace groups 2, 4 by one as good as the median group each, and balance."], said);
    }

    [Fact]
    public void Three_groups_are_the_most_and_all_but_one_of_a_small_pack()
    {
        (PackEstimator.Estimate many, GroupEstimate[] groups) = Pack([5, 6, 7, 8, 9, 9.2, 9.1, 9.3, 9.2], [.. Enumerable.Repeat(1.0, 9)], new double[9]);
        (PackEstimator.Estimate two, GroupEstimate[] pair) = Pack([7, 9], [1, 1], [0, 0]);

        Assert.Equal(3, Remedies.Of(many, groups, Findings(9)).Remedies.Count);
        Assert.Contains("groups 1, 2, 3 ", Remedies.Of(many, groups, Findings(9)).Remedies[2].Do, StringComparison.Ordinal);
        Assert.Single(Remedies.Of(two, pair, Findings(2)).Remedies);
    }

    // Balancing is offered where a group stands off or leaks, or where it gives more than a hundredth.
    [Theory]
    [InlineData(0.995, null, false)]
    [InlineData(0.98, null, true)]
    [InlineData(1, FindingKind.Imbalance, true)]
    [InlineData(1, FindingKind.SelfDischarge, true)]
    [InlineData(1, FindingKind.LowCapacity, false)]
    public void Balancing_is_offered_where_it_helps(double charge, FindingKind? found, bool offered)
    {
        (PackEstimator.Estimate pack, GroupEstimate[] groups) = Pack([9, 9, 9], [1, charge, 1], [0, 0, 0]);

        IReadOnlyList<Remedy> remedies = Remedies.Of(pack, groups, found is { } kind ? Findings(3, 1, kind) : Findings(3)).Remedies;

        Assert.Equal(offered, remedies[0].Do.StartsWith("Balance", StringComparison.Ordinal));
    }

    [Fact]
    public void A_mended_joint_has_no_resistance_left()
    {
        double[] capacity = [9, 9, 9];
        (PackEstimator.Estimate pack, GroupEstimate[] groups) = Pack(capacity, [1, 1, 1], [0, 12, 0], amps: 9);

        (LoadedRecovery loaded, IReadOnlyList<Remedy> remedies) = Remedies.Of(pack, groups, Findings(3, 1, FindingKind.Connection));

        Assert.Equal("Mend the joint at group 2.", remedies[0].Do);
        Assert.Equal(Down(pack, capacity, [1, 1, 1], [1, 0, 1], loaded.CurrentA).Ah, remedies[0].UsableAh, 0.002);
        Assert.True(remedies[0].UsableAh > loaded.UsableAhNow + 0.01);
    }

    // A fiftieth of the capacity in an hour is no discharge, and a log that hardly has one tells no mean: a third of the capacity stands for it.
    [Theory]
    [InlineData(5, 5)]
    [InlineData(0.21, 1.605)]
    [InlineData(0.19, 3)]
    public void The_current_of_a_ride_is_the_mean_of_its_discharge(double amps, double mean)
    {
        double[] current = [.. Enumerable.Range(0, 200).Select(i => i % 50 == 49 ? -6 : i % 2 == 0 && amps < 1 ? 3 : amps)];
        DiagnosisColumns log = SmallPack.Log(current, 2);
        PackModel model = SmallPack.Model(SmallPack.Slices(log), 2);
        PackEstimator.Estimate pack = SmallPack.Estimate(model, SmallPack.Plain(model, [9, 9], [1, 1]), log);

        Assert.Equal(mean, pack.MeanDischargeA, 0.05);
    }

    // 72 s, two hundredths of an hour, of discharge are the least.
    [Theory]
    [InlineData(7, 10 / 3.0)]
    [InlineData(8, 6)]
    public void A_moment_of_discharge_tells_no_mean(int rows, double mean)
    {
        DiagnosisColumns log = SmallPack.Log([.. Enumerable.Repeat(0.0, 40), .. Enumerable.Repeat(6.0, rows), .. Enumerable.Repeat(0.0, 40)], 2);
        PackModel model = SmallPack.Model(SmallPack.Slices(log), 2);

        Assert.Equal(mean, SmallPack.Estimate(model, SmallPack.Plain(model, [9, 9], [1, 1]), log).MeanDischargeA, 1e-9);
    }
}
