using PackPlanner.Core.Fitting;

namespace PackPlanner.Tests.Core.Fitting;

/// <summary>Slabs of boxes stacked and closed up, and discs packed one more at a time: small rooms whose answer is known by hand.</summary>
public class StackTests
{
    private static SlabStack Stack(FitCase fitCase, Axis along)
    {
        Scene scene = new(fitCase);
        SlabStack stack = new(scene, Attitude.Of(fitCase), along, CancellationToken.None);
        stack.LookQuickly(3_000_000);
        Assert.Empty(LayoutCheck.Broken(scene, stack.Bodies()));
        Assert.Equal(stack.Count, stack.Bodies().Count);
        return stack;
    }

    // Two layers of ten: 3 + 140 + 20 + 140 + 20 high.
    [Theory]
    [InlineData(323, 20)]
    [InlineData(322.9, 10)]
    public void Slabs_are_stacked_as_high_as_the_cavity_allows(double height, int boxes)
    {
        SlabStack stack = Stack(Cases.Of(Cases.Brick, [Cases.Box(0, 0, 0, 200, 267, height)]), Axis.Z);

        Assert.Equal(boxes, stack.Count);
        Assert.True(stack.Work > 0);
        Assert.Equal((Axis.Z, 2), (stack.Along, stack.Attitudes.Count));
    }

    // A post through the lower half takes its boxes there; the upper half keeps all.
    [Fact]
    public void A_keep_out_takes_its_slab_only()
    {
        SlabStack stack = Stack(Cases.Of(Cases.Brick, [Cases.Box(0, 0, 0, 200, 267, 340)], [Cases.Box(0, 0, 0, 60, 267, 150)]), Axis.Z);

        // Below: from 60 + 6 to 194 with 38 each: three slabs of two; above ten.
        Assert.Equal(10 + 6, stack.Count);
    }

    // 395 x 295 holds boxes standing both ways; complete search of one layer proves how many.
    [Fact]
    public void A_layer_is_searched_completely_and_what_it_holds_is_proved()
    {
        FitCase c = Cases.Of(Cases.Brick, [Cases.Box(0, 0, 0, 200, 180, 170)]);
        SlabStack stack = Stack(c, Axis.Z);
        int quick = stack.Count;

        stack.LookWell(300_000, int.MaxValue);

        int proven = Assert.Single(stack.Proven).Value;
        Assert.InRange(stack.Count, quick, proven);
        // By hand: 200 - 12 + 2 over 38: five side by side along x, 131 deep; the strip of 49 left along y holds one more lying across, 36 + 2.
        Assert.InRange(stack.Count, 6, 6);
        Assert.Empty(LayoutCheck.Broken(new Scene(c), stack.Bodies()));
    }

    // Two boxes left against opposite walls become neighbours; by hand 38 mm apart instead of 338.
    [Fact]
    public void Boxes_are_closed_up_into_a_corner()
    {
        Scene scene = new(Cases.Of(Cases.Brick, [Cases.Box(0, 0, 0, 400, 160, 180)]) with { LinkReachMm = 3 });
        Attitude a = Attitude.Of(scene.Case).First(w => w.ThicknessAlong == Axis.X);
        Layout apart = new([new Body(new PointMm(24, 70, 73), a), new Body(new PointMm(376, 90, 80), a)], "slabs", null, false), fewer = new([new Body(new PointMm(24, 70, 73), a)], "slabs", null, false);

        IReadOnlyList<Layout> ranked = BoxClosing.Ranked(scene, [apart, fewer], CancellationToken.None);

        PointMm[] best = [.. ranked[0].Bodies.Select(b => b.Centre).OrderBy(p => p.X)];
        Assert.Equal(38, best[1].X - best[0].X, 1e-5);
        Assert.All(best, p => Assert.Contains(Math.Round(p.Y, 4), new[] { 68.0, 92 }));
        Assert.All(best, p => Assert.Contains(Math.Round(p.Z, 4), new[] { 73.0, 90 }));
        Assert.Equal(best[0].Y, best[1].Y, 1e-5);
        Assert.Equal(best[0].Z, best[1].Z, 1e-5);
        Assert.Single(ranked[^1].Bodies);
        Assert.All(ranked, l => Assert.Empty(LayoutCheck.Broken(scene, l.Bodies)));
        // What cannot be linked ranks last of its size, and one box alone is left as it is.
        Assert.Equal(apart.Bodies, ranked[^2].Bodies);
        Assert.Same(fewer, BoxClosing.Ranked(scene, [fewer], CancellationToken.None).Single());
    }

    // Pushed down a slope: the box rests where its lower corner meets it, to a millionth.
    [Fact]
    public void A_box_is_pushed_up_to_a_slope()
    {
        Scene scene = new(Cases.Of(Cases.Brick, [Cases.Prism(Axis.Y, 0, 300, (100, 0), (400, 0), (400, 180), (0, 180), (0, 100))]) with { LinkReachMm = 3 });
        Attitude a = Attitude.Of(scene.Case).First(w => w.ThicknessAlong == Axis.X);
        Layout apart = new([new Body(new PointMm(200, 70, 73), a), new Body(new PointMm(370, 70, 73), a)], "slabs", null, false);

        double[] lowest = [.. BoxClosing.Ranked(scene, [apart], CancellationToken.None).Select(l => l.Bodies.Min(b => b.Centre.X))];

        // Its skin from z 0 on: at the floor the slope ends at x = 100: 100 + 6 + 18.
        Assert.Contains(lowest, x => Math.Abs(x - 124) < 1e-4);
    }

    // Seven discs of 20 in a hexagon of side 20 around its middle: from six at random places in it.
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void One_more_disc_is_found_where_it_has_room(int seed)
    {
        double[] angle = [.. Enumerable.Range(0, 6).Select(i => i * Math.PI / 3)];
        double side = 20.02 + (11 / Math.Cos(Math.PI / 6));
        DiscRegion region = new([new RegionPiece(new Border2([.. angle.Select(t => side * Math.Cos(t))], [.. angle.Select(t => side * Math.Sin(t))], 11, keepInside: true), [], [], 0)]);
        DiscPacker packer = new(region, 20, seed);
        packer.Adopt([(0, 0)]);
        Assert.Equal([(0, 0)], packer.Places);

        packer.Improve(60_000, 7, CancellationToken.None);

        Assert.Equal(7, packer.Count);
        Assert.All(packer.Places, p => Assert.InRange(region.Margin(p.X, p.Y), -2e-6, 100));
        for (int i = 0; i < 7; i++)
        {
            for (int j = 0; j < i; j++)
                Assert.InRange(Math.Sqrt(Math.Pow(packer.Places[i].X - packer.Places[j].X, 2) + Math.Pow(packer.Places[i].Y - packer.Places[j].Y, 2)), 20 - 2e-6, 45);
        }
    }

    // The best of several searches is told, never fewer than the start; enough is enough.
    [Fact]
    public void Free_packing_keeps_the_best_and_tells_of_it()
    {
        DiscRegion region = DiscTests.Tray(66, 66);
        List<int> told = [];

        (double X, double Y)[] best = FreePacking.Improve(region, 20, [[(33, 33)]], 400_000, 100, told.Add, CancellationToken.None);
        (double X, double Y)[] enough = FreePacking.Improve(region, 20, [[(33, 33)]], 400_000, 3, null, CancellationToken.None);

        // 44 between the middles: three by three stand 22 apart.
        Assert.Equal(9, best.Length);
        Assert.Equal(told.Order(), told);
        Assert.Equal(9, told[^1]);
        Assert.InRange(enough.Length, 3, 8);
        Assert.Equal([(33, 33)], FreePacking.Improve(region, 20, [[(33, 33)]], 400_000, 1, null, CancellationToken.None));
    }
}
