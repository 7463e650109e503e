using PackPlanner.Core.Fitting;

namespace PackPlanner.Tests.Core.Fitting;

/// <summary>Steps of packing discs: map, grid, descent, bound; each against plain counting or by hand.</summary>
public class DiscTests
{
    internal const double Distance = 20;

    private static Border2 Inside(double[] u, double[] v, double clearance = 11) => new(u, v, clearance, keepInside: true);

    internal static DiscRegion Tray(double length = 122, double width = 82, params Border2[] outside) => new([new RegionPiece(Inside([0, length, length, 0], [0, 0, width, width]), outside, [], 0)]);

    internal static DiscRegion Odd() => new(
    [
        new RegionPiece(Inside([0, 160, 160, 60, 60, 0], [0, 0, 70, 70, 150, 150]), [new Border2([90, 110, 110, 90], [25, 25, 45, 45], 11, keepInside: false)],
            [new TubeBorder2(new Tube3(new(20, 100, 0), new(40, 120, 90), 6), Axis.Z, 0, 70, 11)], 0),
        new RegionPiece(Inside([100, 220, 220, 100], [40, 40, 120, 120]), [], [], 5),
    ]);

    [Fact]
    public void The_map_allows_what_the_margin_allows_everywhere()
    {
        DiscRegion region = Odd();
        RegionRaster raster = new(region, Distance);
        Random random = new(6);
        int allowed = 0;

        for (int n = 0; n < 5000; n++)
        {
            double x = (260 * random.NextDouble()) - 20, y = (190 * random.NextDouble()) - 20;
            bool exact = region.Margin(x, y) >= -1e-7;
            Assert.Equal(exact, raster.Allows(region, x, y));
            allowed += exact ? 1 : 0;
        }

        // Sampled area against the map's own.
        Assert.Equal(allowed / 5000.0 * 260 * 190, raster.AreaMm2(), 0.06 * raster.AreaMm2());
        // A tray of 122 x 82 with 11 mm all round leaves 100 x 60, whose squares of 1.25 mm fit it.
        Assert.Equal(6000, new RegionRaster(Tray(), Distance).AreaMm2(), 0.04 * 6000);
    }

    // A ten-millionth of a millimetre is forgiven at the border.
    [Theory]
    [InlineData(11 - 9e-8, true)]
    [InlineData(11 - 2e-7, false)]
    public void The_border_of_the_map_is_exact(double x, bool allowed)
    {
        Assert.Equal(allowed, new RegionRaster(Tray(), Distance).Allows(Tray(), x, 40));
        Assert.Equal(allowed, new RegionRaster(Tray(), Distance).Allows(Tray(), 122 - x, 40));
        Assert.Equal(allowed, new RegionRaster(Tray(), Distance).Allows(Tray(), 60, x));
        Assert.Equal(allowed, new RegionRaster(Tray(), Distance).Allows(Tray(), 60, 82 - x));
    }

    [Fact]
    public void A_region_reaches_over_all_its_pieces_and_is_as_free_as_the_freest()
    {
        DiscRegion region = Odd();

        Assert.Equal((11, 209, 11, 139), (region.MinX, region.MaxX, region.MinY, region.MaxY));
        Assert.False(region.IsEmpty);
        foreach ((double x, double y) in new[] { (130.0, 60.0), (20, 20), (150, 100), (300, 300) })
            Assert.Equal(Math.Max(region.Pieces[0].Margin(x, y), region.Pieces[1].Margin(x, y)), region.Margin(x, y));
        Assert.Same(region.Pieces[1], region.PieceAt(180, 80));
        Assert.Same(region.Pieces[0], region.PieceAt(20, 20));
        // Pushed out of the piece that asks for less.
        double gx = 0, gy = 0, px = 0, py = 0;
        double energy = region.Push(95, 95, 0, ref gx, ref gy);
        Assert.Equal(Math.Min(region.Pieces[0].Push(95, 95, 0, ref px, ref py), region.Pieces[1].Push(95, 95, 0, ref px, ref py)), energy);
        Assert.True(energy > 0);
        Assert.Equal(0, region.Push(180, 80, 0, ref gx, ref gy));
    }

    [Theory]
    [InlineData(22, 22, false)]
    [InlineData(21.99, 30, true)]
    [InlineData(30, 21.99, true)]
    public void A_region_narrower_than_a_cell_is_empty(double length, double width, bool empty)
    {
        Assert.Equal(empty, Tray(length, width).IsEmpty);
        Assert.True(new DiscRegion([]).IsEmpty);
    }

    [Fact]
    public void Keys_tell_regions_apart()
    {
        string[] keys = [Tray().Key, Tray(122.5).Key, Tray(122, 82, new Border2([1, 2, 2], [1, 1, 2], 1, false)).Key, Odd().Key, new DiscRegion([new RegionPiece(Inside([0, 122, 122, 0], [0, 0, 82, 82], 12), [], [], 0)]).Key];

        Assert.Equal(keys.Length, keys.Distinct().Count());
        Assert.Equal(Tray().Key, Tray().Key);
    }

    [Fact]
    public void The_grid_finds_every_disc_within_reach()
    {
        Random random = new(8);
        foreach (int n in new[] { 1, 7, 200 })
        {
            double[] xs = [.. Enumerable.Range(0, n).Select(_ => 300 * random.NextDouble())], ys = [.. Enumerable.Range(0, n).Select(_ => 100 * random.NextDouble())];
            xs[0] = 5000;
            DiscGrid grid = new();
            int[] found = [];
            grid.Fill(xs, ys, 25);
            for (int q = 0; q < 60; q++)
            {
                double x = (340 * random.NextDouble()) - 20, y = (140 * random.NextDouble()) - 20;
                int n9 = grid.Around(x, y, ref found);
                HashSet<int> near = [.. found[..n9]];
                Assert.All(Enumerable.Range(0, n).Where(i => Math.Pow(xs[i] - x, 2) + Math.Pow(ys[i] - y, 2) < 625), i => Assert.Contains(i, near));
            }
        }

        // Without strays only what lies in the nine squares around is told: none that is three reaches away.
        DiscGrid even = new();
        int[] about = [];
        double[] line = [.. Enumerable.Range(0, 40).Select(i => i * 25.0)];
        even.Fill(line, new double[40], 25);
        int count = even.Around(500, 0, ref about);
        Assert.Equal([19, 20, 21], about[..count].Order());
    }

    // In a bowl whose curvature differs along the axes, the memory of as many steps as there are axes leads straight to the bottom.
    [Fact]
    public void The_memory_of_a_descent_leads_to_the_bottom_of_a_bowl()
    {
        double[] curve = [1, 3, 9], at = [5, -4, 3];
        double[] Slope(double[] x) => [.. x.Select((value, i) => curve[i] * value)];
        DescentMemory memory = new();
        memory.Clear(3);
        Assert.True(memory.IsEmpty);
        double[] direction = new double[3];
        memory.Turn(Slope(at), direction, 3);
        // With nothing to go by: a quarter of the slope, downhill.
        Assert.Equal(Slope(at).Select(s => -0.25 * s), direction);
        for (int step = 0; step < 12; step++)
        {
            double[] slope = Slope(at);
            memory.Turn(slope, direction, 3);
            // The lowest point along the direction.
            double length = -DescentMemory.Dot(slope, direction, 3) / curve.Select((c, i) => c * direction[i] * direction[i]).Sum();
            double[] next = [.. at.Select((value, i) => value + (length * direction[i]))];
            memory.Remember(at, next, slope, Slope(next), 3);
            Assert.False(memory.IsEmpty);
            at = next;
            if (step == 2)
                Assert.All(at, value => Assert.Equal(0, value, 1e-9));
            if (at.Sum(Math.Abs) < 1e-12)
                break;
        }

        memory.Clear(2);
        Assert.True(memory.IsEmpty);
    }

    // One step along one axis: in that axis the next goes straight to where the slope is nought, the others by the same curvature.
    [Fact]
    public void One_step_remembered_tells_the_curvature()
    {
        DescentMemory memory = new();
        memory.Clear(2);
        memory.Remember([0, 0], [1, 0], [-8, 0], [-4, 0], 2);
        double[] direction = new double[2];

        memory.Turn([-4, 2], direction, 2);

        Assert.Equal([1, -0.5], direction);
        // A step over which the slope did not rise tells nothing.
        memory.Remember([1, 0], [2, 0], [-4, 0], [-5, 0], 2);
        memory.Turn([-4, 2], direction, 2);
        Assert.Equal([1, -0.5], direction);
    }

    // n <= 2A / (sqrt(3) d^2) + p / (2d) + 1, by hand for a room of 100 x 60, of an L of its two halves, and of what is too narrow.
    [Fact]
    public void The_bound_is_that_of_area_and_perimeter()
    {
        Assert.Equal((int)((2 * 6000 / (Math.Sqrt(3) * 400)) + (320 / 40.0) + 1), DiscBound.OneLayer([0, 122, 122, 0], [0, 0, 82, 82], 11, Distance));
        // One disc just fits, none, and six in a row: 2 x 100 / 40 + 1.
        Assert.Equal(1, DiscBound.OneLayer([0, 22, 22, 0], [0, 0, 22, 22], 11, Distance));
        Assert.Equal(0, DiscBound.OneLayer([0, 21.9, 21.9, 0], [0, 0, 22, 22], 11, Distance));
        Assert.Equal(6, DiscBound.OneLayer([0, 122, 122, 0], [0, 0, 22, 22], 11, Distance));
        // A hexagon of side 40 around its middle: 19 discs stand in it, and the bound is exact there.
        double[] angle = [.. Enumerable.Range(0, 6).Select(i => i * Math.PI / 3)];
        double side = 40 + (11 / Math.Cos(Math.PI / 6));
        Assert.Equal(19, DiscBound.OneLayer([.. angle.Select(a => side * Math.Cos(a))], [.. angle.Select(a => side * Math.Sin(a))], 11, Distance));
    }

    // An L of two arms each 222 x 62: whole it is bounded by its hull; cut in two at its inner corner by far less.
    [Fact]
    public void A_part_with_an_inner_corner_is_bounded_by_its_pieces()
    {
        int bound = DiscBound.OneLayer([0, 222, 222, 62, 62, 0], [0, 0, 62, 62, 222, 222], 11, Distance);

        // By hand: cut from the inner corner to the nearest corner it sees, the outer one, along 87.7 mm: each piece a trapezium, its wall sides 11 mm in.
        int hull = (int)((2 * ((200 * 200) - (141.0 * 141 / 2)) / (Math.Sqrt(3) * 400)) + (900 / 40.0));
        Assert.InRange(bound, 56, hull - 5);
        // Whatever way it is turned or walked, the bound stays.
        Assert.Equal(bound, DiscBound.OneLayer([222, 0, 0, 160, 160, 222], [222, 222, 160, 160, 0, 0], 11, Distance));
        Assert.Equal(bound, DiscBound.OneLayer([62, 62, 0, 0, 222, 222], [62, 222, 222, 0, 0, 62], 11, Distance));
    }
}
