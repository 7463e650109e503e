using PackPlanner.Core.Fitting;
using static PackPlanner.Tests.Core.Fitting.DiscTests;

namespace PackPlanner.Tests.Core.Fitting;

/// <summary>Discs that overlap give way to one another and to walls until none lacks anything, where there is room.</summary>
public class DiscRelaxerTests
{
    private static (bool Settled, double[] X, double[] Y, DiscRelaxer Relaxer) Relax(DiscRegion region, double[] x, double[] y, double[]? stillX = null, double[]? stillY = null, int most = 200)
    {
        DiscRelaxer relaxer = new(region, Distance);
        bool settled = relaxer.Relax(x, y, stillX ?? [], stillY ?? [], most);
        return (settled, x, y, relaxer);
    }

    [Fact]
    public void Two_discs_that_overlap_give_way_by_half_each()
    {
        (bool settled, double[] x, double[] y, DiscRelaxer relaxer) = Relax(Tray(), [55, 65], [40, 40]);

        Assert.True(settled);
        Assert.Equal([50, 70], x, (a, b) => Math.Abs(a - b) < 1e-5);
        Assert.Equal([40, 40], y);
        Assert.InRange(x[1] - x[0], Distance, Distance + 4e-6);
        Assert.InRange(relaxer.WorstMm, 0, 1.5e-6);
    }

    [Fact]
    public void A_disc_that_stands_still_does_not_give_way()
    {
        double[] still = [55];

        (bool settled, double[] x, _, _) = Relax(Tray(), [65], [40], still, [40]);

        Assert.True(settled);
        Assert.Equal(75, x[0], 1e-5);
        Assert.Equal(55, still[0]);
    }

    [Fact]
    public void Discs_on_one_spot_are_parted_along_x_and_one_in_a_wall_comes_out()
    {
        (bool settled, double[] x, double[] y, _) = Relax(Tray(), [60, 60], [40, 40]);
        Assert.True(settled);
        Assert.Equal(Distance, x[0] - x[1], 1e-4);
        Assert.Equal([40, 40], y);

        Assert.True(Relax(Tray(), [5], [3]) is { Settled: true } out1 && Math.Abs(out1.X[0] - 11) < 1e-5 && Math.Abs(out1.Y[0] - 11) < 1e-5);
    }

    // A room of 100 x 0: six discs stand in a row of it, seven do not.
    [Theory]
    [InlineData(6, true)]
    [InlineData(7, false)]
    public void A_row_holds_as_many_as_have_room(int n, bool fits)
    {
        DiscRegion row = Tray(122.001, 22.001);
        double[] x = [.. Enumerable.Range(0, n).Select(i => 12.0 + (i * 98.0 / (n - 1)))], y = [.. Enumerable.Repeat(11.0, n)];

        (bool settled, double[] at, _, DiscRelaxer relaxer) = Relax(row, x, y, most: 400);

        Assert.Equal(fits, settled);
        double overlap = Enumerable.Range(1, n - 1).Max(i => Distance - (at[i] - at[i - 1]));
        Assert.Equal(fits, overlap < 1e-5);
        if (!fits)
        {
            // By hand: 20 mm too much over six gaps and two walls; each lacks its share.
            Assert.Equal(20 / 8.0, relaxer.WorstMm, 0.15);
            Assert.InRange(relaxer.LackOf(3), 2 * 2.0 * 2.0, 2 * 3.0 * 3.0);
        }
        else
        {
            Assert.InRange(relaxer.LackOf(3), 0, 1e-11);
        }
    }

    // Steps are counted: one look at each pair within 1.42 of the distance, and four for each disc.
    [Fact]
    public void Work_counts_pairs_and_discs()
    {
        DiscRelaxer relaxer = new(Tray(), Distance);
        double[] x = [20, 40.001, 69], y = [20, 20, 20];

        Assert.True(relaxer.Relax(x, y, [], [], 50));

        // They stand already: one look. 20 and 29 apart: only the first pair is within 28.4.
        Assert.Equal(1 + (4 * 3), relaxer.Work);
        Assert.True(relaxer.Relax(x, y, [95], [20], 50));
        // 26 more to the one that stands still.
        Assert.Equal(13 + 2 + 12, relaxer.Work);
    }

    [Fact]
    public void Many_discs_at_random_settle_where_there_is_room()
    {
        Random random = new(9);
        DiscRegion region = Odd();
        double[] x = [.. Enumerable.Range(0, 22).Select(_ => 20 + (180 * random.NextDouble()))], y = [.. Enumerable.Range(0, 22).Select(_ => 20 + (100 * random.NextDouble()))];

        (bool settled, _, _, _) = Relax(region, x, y, most: 600);

        Assert.True(settled);
        for (int i = 0; i < 22; i++)
        {
            Assert.InRange(region.Margin(x[i], y[i]), -2e-6, double.PositiveInfinity);
            for (int j = 0; j < i; j++)
                Assert.InRange(Math.Sqrt(Math.Pow(x[i] - x[j], 2) + Math.Pow(y[i] - y[j], 2)), Distance - 2e-6, 1000);
        }
    }
}
