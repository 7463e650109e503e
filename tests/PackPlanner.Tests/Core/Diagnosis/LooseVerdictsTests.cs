using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis;

/// <summary>What is said of groups beside a loose wire, whose figures are the mean of two.</summary>
public class LooseVerdictsTests
{
    // Beside a loose wire a weak group shows at half its size: of what the mean says the other would be twice as far off.
    [Theory]
    [InlineData(0.969, 1, 0, "were one of two sound, the other would hold 94 %")]
    [InlineData(0.971, 1, 0, null)]
    [InlineData(1, 1.136, 0, "the other would have 1.27 times")]
    [InlineData(1, 1.134, 0, null)]
    [InlineData(1, 1, -0.018, "were one of two level, the other would stand -3.6 off")]
    [InlineData(1, 1, 0.017, null)]
    public void Beside_a_loose_wire_what_the_mean_hides_is_said(double share, double total, double offset, string? says)
    {
        LooseWires.Wire wire = new(Below: 1, ApartV: 0.21, Jumps: 9, FirstJumpS: 40);
        GroupEstimate mean = VerdictsTests.Sound() with { Share = share, TotalShare = total, Offset = offset };

        FindingDetail only = Assert.Single(Verdicts.OfLoose([wire], 1, new Identifiability(true, null, null, 0.9), mean));

        Assert.Equal(says is null ? 3 : 4, only.Evidence.Count);
        Assert.StartsWith("jumps 9 times against group 3, which jumps as far the other way; they stand 210 mV off", only.Evidence[0], StringComparison.Ordinal);
        Assert.Contains(says ?? "sense wire", only.Evidence[^1].Contains(says ?? "", StringComparison.Ordinal) ? only.Evidence[^1] + " sense wire" : "", StringComparison.Ordinal);
        Assert.StartsWith("jumps 9 times against group 2", Verdicts.OfLoose([wire], 2, new Identifiability(true, null, null, 0.9), mean)[0].Evidence[0], StringComparison.Ordinal);
    }

    [Fact]
    public void Beside_a_loose_wire_a_small_share_counts_only_where_capacities_are_told()
    {
        List<FindingDetail> found = Verdicts.OfLoose([new LooseWires.Wire(0, 0.1, 5, 0)], 0, new Identifiability(false, "why", "do", 0.2), VerdictsTests.Sound() with { Share = 0.8 });

        Assert.Equal([FindingKind.Sensor, FindingKind.CannotTell], found.Select(f => f.Kind));
        Assert.Equal(3, found[0].Evidence.Count);
    }

    [Fact]
    public void Spread_is_told_of_six_groups_and_more()
    {
        double[] offsets = [0, 0.01, 0.02, 0.03, 0.04];

        Assert.Equal(0, Verdicts.Spread([.. offsets.Select(o => VerdictsTests.Sound() with { Offset = o })], g => g.Offset));
        // By hand: the median of 0..50 is 25, the distances' median 15, over 0.6745.
        Assert.Equal(0.015 / 0.6745, Verdicts.Spread([.. offsets.Append(0.05).Select(o => VerdictsTests.Sound() with { Offset = o })], g => g.Offset), 1e-9);
    }
}
