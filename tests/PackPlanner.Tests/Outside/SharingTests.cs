using PackPlanner.Core.Sharing;

namespace PackPlanner.Tests.Outside;

/// <summary>Worked examples of current sharing, each a sum that fits on paper.</summary>
public class SharingTests
{
    // Source: [Kirchhoff], by hand: 100 A over 10 and 12 mΩ divide 12 to 10, so 1200/22 and 1000/22.
    [Fact]
    public void A_hundred_amperes_over_ten_and_twelve_milliohm()
    {
        GroupShare share = CurrentSharing.AtFirstInstant(Group([10, 12], 0, 1, 1), 100);

        Assert.Equal(54.5455, share.CurrentA[0], tolerance: 1e-4);
        Assert.Equal(45.4545, share.CurrentA[1], tolerance: 1e-4);
    }

    // Source: [Kirchhoff], by hand: 1/30 + 1/33 + 1/36 + 1/45 = 1/8.8; each cell takes 40 A x 8.8 / R.
    [Fact]
    public void Four_unlike_cells_act_as_8_point_8_milliohm()
    {
        GroupShare share = CurrentSharing.AtFirstInstant(Group([30, 33, 36, 45], 0, 1, 1), 40);

        Assert.Equal([11.7333, 10.6667, 9.7778, 7.8222], share.CurrentA.Select(a => Math.Round(a, 4)));
        Assert.Equal(3.6 - 40 * 0.0088, share.TerminalV, tolerance: 1e-12);
        Assert.Equal(11.7333 / 10, share.TimesEqual!.Value, tolerance: 1e-4);
    }

    // Source: [Kirchhoff], by hand: the far cell has 32 mΩ in its path: 20 x 32/62 and 20 x 30/62; at rest 0.1 V / 62 mΩ.
    [Fact]
    public void Two_cells_with_one_milliohm_in_either_bar()
    {
        CellBranch[] cells = [new("1", 4.1, 30), new("2", 4.0, 30)];

        GroupShare loaded = CurrentSharing.AtFirstInstant(Group([30, 30], 1, 1, 1), 20);
        GroupShare atRest = CurrentSharing.AtFirstInstant(ParallelCells.Alike(1, cells, 1, 1, 1), 0);

        Assert.Equal(10.3226, loaded.CurrentA[0], tolerance: 1e-4);
        Assert.Equal(9.6774, loaded.CurrentA[1], tolerance: 1e-4);
        Assert.Equal(1.6129, atRest.CurrentA[0], tolerance: 1e-4);
        Assert.Equal(1.6129, atRest.CirculatingA, tolerance: 1e-4);
        Assert.Null(atRest.TimesEqual);
    }

    // Source: [Kirchhoff]; ladder solved apart with exact fractions.
    [Fact]
    public void Take_offs_at_opposite_ends_even_out_what_one_end_does_not()
    {
        GroupShare sameEnd = CurrentSharing.AtFirstInstant(Group([30, 30, 30, 30], 0.5, 1, 1), 40);
        GroupShare opposite = CurrentSharing.AtFirstInstant(Group([30, 30, 30, 30], 0.5, 1, 4), 40);

        Assert.Equal([11.1114, 10.1484, 9.5237, 9.2165], sameEnd.CurrentA.Select(a => Math.Round(a, 4)));
        Assert.Equal([10.1639, 9.8361, 9.8361, 10.1639], opposite.CurrentA.Select(a => Math.Round(a, 4)));
    }

    // Source: [Kirchhoff]; ladder solved apart with exact fractions.
    [Fact]
    public void Ten_cells_of_two_milliohm_need_diagonal_take_offs()
    {
        double[] cells = [.. Enumerable.Repeat(2.0, 10)];

        GroupShare sameEnd = CurrentSharing.AtFirstInstant(Group(cells, 0.05, 1, 1), 200);
        GroupShare opposite = CurrentSharing.AtFirstInstant(Group(cells, 0.05, 1, 10), 200);

        Assert.Equal(41.0497, sameEnd.CurrentA[0], tolerance: 1e-4);
        Assert.Equal(9.7764, sameEnd.CurrentA[9], tolerance: 1e-4);
        Assert.Equal(25.4131, opposite.CurrentA[0], tolerance: 1e-4);
        Assert.Equal(25.4131, opposite.CurrentA[9], tolerance: 1e-4);
        Assert.Equal(16.5194, opposite.CurrentA[4], tolerance: 1e-4);
    }

    private static ParallelCells Group(double[] milliohm, double linkMilliohm, int positiveAt, int negativeAt) => ParallelCells.Alike(
        1, [.. milliohm.Select((r, i) => new CellBranch($"{i + 1}", 3.6, r))], linkMilliohm, positiveAt, negativeAt);
}
