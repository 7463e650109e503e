using PackPlanner.Core.Fitting;

namespace PackPlanner.Tests.Core.Fitting;

/// <summary>The proven limit under keep-outs: smaller by what they certainly cost, and never smaller than what a search finds.</summary>
public class BlockedBoundTests
{
    private const double Clearance = 11;

    private static Blocked2 Rectangle(double x0, double y0, double x1, double y1) => new([x0, x1, x1, x0], [y0, y0, y1, y1]);

    private static int Tray(double x, double y, params Blocked2[] blocked) => DiscBound.OneLayer([0, x, x, 0], [0, 0, y, y], Clearance, DiscTests.Distance, blocked);

    // From wall to wall a keep-out makes the tray shorter by itself; what is left of 300 x 200 beside 40 is a tray of 260.
    [Fact]
    public void A_keep_out_from_wall_to_wall_leaves_the_limit_of_the_shorter_tray()
    {
        Assert.Equal(Tray(260, 200), Tray(300, 200, Rectangle(0, 0, 40, 200)));
        Assert.Equal(Tray(260, 200), Tray(300, 200, Rectangle(260, -5, 310, 205)));
        // In the middle it leaves two.
        Assert.Equal(2 * Tray(130, 200), Tray(300, 200, Rectangle(130, 0, 170, 200)));
        // Turned along with the tray by a quarter.
        Assert.Equal(Tray(200, 260), Tray(200, 300, Rectangle(0, 0, 200, 40)));
    }

    // In a square of 100 x 100 less 20 - 11 all round, 82 x 82, five by five points stand 20 apart: none nearer than 20 to a place outside.
    [Fact]
    public void A_keep_out_amid_the_floor_costs_the_points_that_stand_in_it() =>
        Assert.InRange(Tray(300, 300, Rectangle(100, 100, 200, 200)), 1, Tray(300, 300) - 25);

    [Fact]
    public void A_keep_out_that_is_elsewhere_or_smaller_than_a_gap_takes_nothing()
    {
        Assert.Equal(Tray(300, 200), Tray(300, 200, Rectangle(400, 0, 500, 200)));
        Assert.Equal(Tray(300, 200), Tray(300, 200, Rectangle(150, 100, 151, 101)));
    }

    // One layer of cells 70 high with 5 mm at each end, in 80 to 160 mm: a box of half the height is passed above where two layers go.
    [Theory]
    [InlineData(95, 40, true)]
    [InlineData(95, 14, false)]
    [InlineData(158, 158, true)]
    [InlineData(300, 40, false)]
    public void A_keep_out_counts_for_layers_that_cannot_pass_it(double height, double top, bool all)
    {
        int Bound(double boxTop)
        {
            Scene scene = new(Cases.Of(Cases.Round, [Cases.Box(0, 0, 0, 300, 200, height)], [Cases.Box(0, 0, 0, 60, 200, boxTop)]));
            return new CylinderSearch(scene, Cases.Round, Attitude.Of(scene.Case)[0], CancellationToken.None).Bound();
        }

        Assert.Equal(all, Bound(top) == Bound(1000));
        Assert.True(Bound(top) <= Bound(0.001));
    }

    // Trays with boxes, bars at any angle and slanting blocks, drawn from seeds, looked at as nests and freely: nothing that was found is above the limit.
    [Fact]
    public void No_search_finds_more_than_the_limit()
    {
        Random random = new(20);
        int lower = 0;
        for (int n = 0; n < 60; n++)
        {
            double x = 60 + (180 * random.NextDouble()), y = 60 + (140 * random.NextDouble()), z = random.Next(3) == 0 ? 165 : 82 + (20 * random.NextDouble());
            FitCase bare = Cases.Of(Cases.Round, [random.Next(4) == 0 ? Cases.Prism(Axis.Z, 0, z, (0, 0), (x, 0), (x, y), (x / 2, y), (x / 2, y / 2), (0, y / 2)) : Cases.Box(0, 0, 0, x, y, z)],
                [.. Enumerable.Range(0, 1 + random.Next(3)).Select(_ => KeepOut(random, x, y, z))]);
            FitAnswer answer = LayoutSearch.Search(bare, new FitEffort(n % 10 == 0 ? 2 : 0), null, CancellationToken.None);

            Assert.True(answer.Cells.Count <= answer.Bound, $"case {n}: {answer.Cells.Count} places, limit {answer.Bound}");
            lower += answer.Bound < LayoutSearch.Search(bare with { KeepOuts = [] }, FitEffort.Quick, null, CancellationToken.None).Bound ? 1 : 0;
        }

        // Most keep-outs of such sizes can be proved to cost places.
        Assert.InRange(lower, 30, 60);
    }

    private static NamedSolid KeepOut(Random random, double x, double y, double z)
    {
        double At(double size) => size * ((1.2 * random.NextDouble()) - 0.1);
        (double u, double v, double w, double wide) = (At(x), At(y), At(z), 10 + (60 * random.NextDouble()));
        return random.Next(5) switch
        {
            0 => Cases.Box(u, v, 0, u + wide, v + (40 * random.NextDouble()) + 5, z),
            1 => Cases.Box(0, v, Math.Min(w, z - 20), x, v + wide, z),
            2 => Cases.Tube(new PointMm(-5, v, w), new PointMm(x + 5, At(y), At(z)), wide),
            3 => Cases.Tube(new PointMm(u, v, -5), new PointMm(u, v, z + 5), wide),
            _ => Cases.Prism(Axis.Z, 0, z, (u, v), (u + wide, v + (wide / 3)), (u + (wide / 2), v + wide)),
        };
    }
}
