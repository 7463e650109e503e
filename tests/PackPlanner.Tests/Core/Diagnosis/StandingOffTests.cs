using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis;

/// <summary>A group that reads low in nine tenths of a log is named without any model; one that falls behind on the way is not.</summary>
public class StandingOffTests
{
    private static double[] Of(Func<int, int, double> offV, int groups = 7, int pieces = 20, Action<ChargeSlices.Piece[]>? change = null)
    {
        DiagnosisColumns log = SmallPack.Log([.. Enumerable.Repeat(8.0, 2 * pieces)], groups);
        PackModel model = SmallPack.Model(SmallPack.Slices(log), groups);
        ChargeSlices.Piece[] all = model.Slices.Pieces;
        Assert.InRange(all.Length, pieces, 40);
        for (int i = 0; i < all.Length; i++)
        {
            for (int k = 0; k < groups; k++)
                all[i].Volts[k] = 3.7 - (0.01 * i) + (0.002 * (k - (groups / 2))) + offV(k, i);
        }

        change?.Invoke(all);
        return StandingOff.Of(model);
    }

    // The last group is 6 mV above the middle already, the first 6 mV below.
    [Fact]
    public void A_group_that_stands_off_all_the_time_is_named_with_what_it_stands_off_by()
    {
        double[] low = Of((k, _) => k == 1 ? -0.03 : 0), high = Of((k, _) => k == 6 ? 0.03 : 0);

        Assert.Equal(-0.034, low[1], 0.0021);
        Assert.Equal(0.036, high[6], 1e-9);
        Assert.All(Enumerable.Range(0, 6), k => Assert.Equal(0, high[k]));
    }

    // Twenty-five millivolts.
    [Theory]
    [InlineData(0.0251, true)]
    [InlineData(0.0249, false)]
    public void Less_than_25_millivolts_is_not_named(double v, bool named)
    {
        double[] off = Of((k, _) => k == 3 ? 0 : (-0.002 * (k - 3)) + (k == 5 ? v : 0));

        Assert.Equal(named ? v : 0, off[5], 1e-9);
    }

    // In one piece of ten it may read otherwise, in two it may not.
    [Theory]
    [InlineData(10, true)]
    [InlineData(7, false)]
    public void Nine_pieces_of_ten_must_show_it(int every, bool named)
    {
        double[] off = Of((k, i) => k == 6 && i % every != 5 ? 0.05 : 0, pieces: 21);

        Assert.Equal(named, off[6] != 0);
    }

    [Fact]
    public void A_group_that_falls_behind_on_the_way_is_not_meant()
    {
        // Level at first, half way down it stands 60 mV low.
        Assert.Equal(0, Of((k, i) => k == 0 ? -0.006 * i : 0)[0]);
        Assert.NotEqual(0, Of((k, i) => k == 0 ? -0.04 - (0.001 * i) : 0)[0]);
    }

    // All stand off by so much that the one is three spreads and a half beyond them or not.
    [Theory]
    [InlineData(0.0033, 1)]
    [InlineData(0.0035, 0)]
    public void Where_all_scatter_none_is_named(double scatterV, int named)
    {
        double[] off = Of((k, _) => k == 6 ? 0.05 : (k - 3) * scatterV);

        Assert.Equal(named, off.Count(v => v != 0));
    }

    [Fact]
    public void Few_groups_or_few_pieces_tell_nothing()
    {
        Assert.All(Of((k, _) => k == 4 ? 0.06 : 0, groups: 5), v => Assert.Equal(0, v));
        Assert.NotEqual(0, Of((k, _) => k == 5 ? 0.06 : 0, groups: 6)[5]);
        Assert.NotEqual(0, Of((k, _) => k == 6 ? 0.06 : 0, change: pieces => Array.ForEach(pieces[10..], p => p.Readings[0] = 0))[6]);
        Assert.All(Of((k, _) => k == 6 ? 0.06 : 0, change: pieces => Array.ForEach(pieces[9..], p => p.Readings[0] = 0)), v => Assert.Equal(0, v));
    }
}
