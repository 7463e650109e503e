using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis;

public class ResistanceTrendTests
{
    private static GroupEstimate[] Groups(IEnumerable<double> shares) =>
        [.. shares.Select(share => new GroupEstimate(10, 0.03, 1, 0.01, 0.9, 0, 0.003, 0.005 * share, 0.06, share, share, 0.03, 0, 0, 0.01, 0))];

    // Both ends cooler by so much that they read 30 % more; every group scatters by one percent; group 7 has a bad joint.
    private static double[] Cooler(double fault) =>
        [.. Enumerable.Range(0, 20).Select(k => (1 + (0.3 * Math.Abs((2.0 * k / 19) - 1)) + (0.01 * ((k % 3) - 1))) * (k == 6 ? 1 + fault : 1))];

    [Fact]
    public void Where_resistance_follows_the_string_a_group_is_judged_against_its_neighbours()
    {
        double[] shares = Cooler(fault: 0.7);

        ResistanceTrend trend = ResistanceTrend.Of(Groups(shares));

        Assert.InRange(trend.Spread, 0.002, 0.03);
        Assert.InRange(shares[6] / trend.Share[6], 1.6, 1.8);
        Assert.All(Enumerable.Range(0, 20).Where(k => k != 6), k => Assert.InRange(shares[k] / trend.Share[k], 0.93, 1.07));
        Assert.Contains(trend.Notes, note => note.Contains("cooler", StringComparison.Ordinal));
    }

    [Fact]
    public void Scatter_without_order_is_no_trend_and_what_it_hides_is_said()
    {
        Random random = new(3);

        ResistanceTrend trend = ResistanceTrend.Of(Groups(Enumerable.Range(0, 20).Select(_ => 1 + (0.4 * (random.NextDouble() - 0.5)))));

        Assert.All(trend.Share, share => Assert.Equal(1, share));
        Assert.InRange(trend.Spread, 0.07, 0.2);
        Assert.Contains(trend.Notes, note => note.Contains("scatter", StringComparison.Ordinal));
    }

    [Fact]
    public void A_sound_pack_has_neither_trend_nor_note()
    {
        ResistanceTrend trend = ResistanceTrend.Of(Groups(Enumerable.Range(0, 14).Select(k => 1 + (0.01 * Math.Sin(5 * k)))));

        Assert.All(trend.Share, share => Assert.Equal(1, share));
        Assert.Empty(trend.Notes);
    }
}
