using PackPlanner.Core.Fitting;

namespace PackPlanner.Tests.Core.Fitting;

/// <summary>Layers of round cells: where they may begin, what of the plane they leave free, and how they are closed up; by hand and against the exact test.</summary>
public class LayersTests
{
    private static Scene Of(NamedSolid[] cavity, params NamedSolid[] keepOuts) => new(Cases.Of(Cases.Round, cavity, keepOuts) with { LinkReachMm = 2 });

    // 5 mm at the ends, 78 mm from one layer to the next: up from the floor, down from the roof, over the post and under the bar.
    [Fact]
    public void Layers_begin_at_floor_roof_and_keep_outs()
    {
        double[] starts = Layers.Starts(Of([Cases.Box(0, 0, 0, 100, 100, 200)], Cases.Box(0, 0, 0, 20, 20, 30), Cases.Tube(new(0, 50, 150), new(100, 50, 152), 10)), Axis.Z, Cases.Round, 72);

        // Floor 5, 83; roof 125, 47; over the post's 30: 35, 113; over the bar's 157 none; under its 145: 70; and up from there none.
        Assert.Equal([5, 35, 47, 70, 83, 113, 125], starts, (a, b) => Math.Abs(a - b) < 1e-6);
        Assert.Equal([5, 47, 125], Layers.Starts(Of([Cases.Box(0, 0, 0, 100, 100, 200)], Cases.Box(0, 0, 0, 20, 20, 30), Cases.Tube(new(0, 50, 150), new(100, 50, 152), 10)), Axis.Z, Cases.Round, 3).Select(s => Math.Round(s, 6)), (a, b) => a == b || (b > 5 && b < 125));
        Assert.Empty(Layers.Starts(Of([Cases.Box(0, 0, 0, 100, 100, 79.9)]), Axis.Z, Cases.Round, 72));
        Assert.Equal([5], Layers.Starts(Of([Cases.Box(0, 0, 0, 100, 100, 80)]), Axis.Z, Cases.Round, 72));
    }

    // Corners of a roof that slopes give starts too.
    [Fact]
    public void Layers_begin_at_corners_of_a_slope()
    {
        double[] starts = Layers.Starts(Of([Cases.Prism(Axis.Y, 0, 100, (0, 0), (200, 0), (200, 180), (0, 100))]), Axis.Z, Cases.Round, 72);

        // Floor 5, 83; under 180: 105, 27; under 100: 25; over 100: 105.
        Assert.Equal([5, 25, 27, 83, 105], starts, (a, b) => Math.Abs(a - b) < 1e-6);
    }

    // Stacks with the slack put below by eighths: 160 high holds two layers with 2 mm to spare.
    [Fact]
    public void Even_stacks_share_out_the_slack()
    {
        double[] starts = [.. Layers.EvenStacks(Of([Cases.Box(0, 0, 0, 100, 100, 160)]), Axis.Z, Cases.Round, 4)];

        Assert.Equal([5, 5.5, 6, 6.5, 7, 83, 83.5, 84, 84.5, 85], starts, (a, b) => Math.Abs(a - b) < 1e-9);
        Assert.Empty(Layers.EvenStacks(Of([Cases.Box(0, 0, 0, 100, 100, 79)]), Axis.Z, Cases.Round, 4));
    }

    public static TheoryData<int> Rooms => [0, 1, 2, 3];

    // What a region allows is what the exact test allows, whichever way the parts run.
    [Theory]
    [MemberData(nameof(Rooms))]
    public void The_places_of_a_layer_are_those_of_the_exact_test(int room)
    {
        Scene scene = room switch
        {
            0 => Of([Cases.Box(0, 0, 0, 160, 120, 100)], Cases.Box(70, 50, 0, 90, 70, 40), Cases.Tube(new(20, 0, 30), new(40, 120, 60), 14)),
            1 => Of([Cases.Prism(Axis.Y, 0, 120, (0, 0), (160, 0), (160, 140), (60, 60), (0, 120))], Cases.Prism(Axis.X, 60, 160, (20, 0), (60, 0), (60, 30))),
            2 => Of([Cases.Prism(Axis.Z, 0, 100, (0, 0), (160, 0), (120, 110), (10, 120))], Cases.Prism(Axis.Z, 0, 50, (70, 30), (100, 40), (80, 70))),
            _ => Of([Cases.Prism(Axis.X, 0, 160, (0, 0), (120, 20), (110, 130), (60, 95), (0, 100))], Cases.Prism(Axis.Y, 20, 60, (0, 0), (60, 0), (0, 60))),
        };
        DiscRegion region = Layers.At(scene, Axis.Z, Cases.Round, 12);
        Random random = new(room);
        int clear = 0;

        for (int n = 0; n < 3000; n++)
        {
            double x = (170 * random.NextDouble()) - 5, y = (130 * random.NextDouble()) - 5;
            bool exact = scene.CylinderIsClear(Axis.Z, 7, 87, x, y, 13), told = region.Margin(x, y) >= 0;
            // Near the edge of a keep-out across the cells the exact test rounds corners off, the layer keeps its box.
            Assert.True(!told || exact || region.Margin(x, y) < 1e-6, $"{x}, {y}: allowed though it is not clear");
            Assert.True(told || !exact, $"{x}, {y}: clear and not allowed");
            clear += exact ? 1 : 0;
        }

        Assert.InRange(clear, 100, 2900);
        Assert.All(region.Pieces, p => Assert.Equal(12, p.BodyStart));
    }

    [Fact]
    public void A_layer_out_of_the_part_has_no_places()
    {
        Scene scene = Of([Cases.Box(0, 0, 0, 160, 120, 100)]);

        Assert.True(Layers.At(scene, Axis.Z, Cases.Round, 25.1).IsEmpty);
        Assert.False(Layers.At(scene, Axis.Z, Cases.Round, 25).IsEmpty);
        Assert.True(Layers.At(scene, Axis.Z, Cases.Round, 4.9).IsEmpty);
        Assert.True(Layers.At(Of([Cases.Prism(Axis.Y, 0, 25.9, (0, 0), (160, 0), (160, 100), (0, 100))]), Axis.Z, Cases.Round, 5).IsEmpty);
    }

    // By hand: a tray of 268 x 150 x 86 with 13 mm to the middle of a cell and 21 between: 12 and 11 in a row along x, 18.19 mm between rows: 7 rows.
    [Fact]
    public void Nests_are_looked_over_for_the_fullest()
    {
        DiscRegion region = Layers.At(Of([Cases.Box(0, 0, 0, 257, 136, 86)]), Axis.Z, Cases.Round, 5);

        List<(Nest Nest, int Count)> best = NestSweep.Best(region, new RegionRaster(region, 21), 21, 10, stretched: true, keep: 3, CancellationToken.None);

        // 231 x 110 between the middles: 12 by 6 square, or 7 rows of 12 and 11: 81.
        Assert.Equal(81, best[0].Count);
        Assert.True(best[0].Nest.Staggered);
        Assert.Equal(3, best.Count);
        Assert.Equal(best.OrderByDescending(b => b.Count), best);
        (Nest Nest, int Count) square = NestSweep.Best(region, new RegionRaster(region, 21), 21, 10, stretched: false, keep: 99, CancellationToken.None).Where(b => !b.Nest.Staggered).MaxBy(b => b.Count);
        Assert.Equal(72, square.Count);
    }

    // Rows closed up: 5 rows of staggered cells in 84.5 mm need them a little nearer together than 21.0 allows, so the pitch is stretched.
    [Fact]
    public void A_nest_is_stretched_where_one_more_row_gets_in()
    {
        // Between the middles 252 x 71: four rows of 18.19 are 54.6, five 72.75; stretched by 3 % five rows are 71 mm.
        DiscRegion region = Layers.At(Of([Cases.Box(0, 0, 0, 278, 97, 86)]), Axis.Z, Cases.Round, 5);

        (Nest nest, int count) = NestSweep.Best(region, new RegionRaster(region, 21), 21, 10, stretched: true, keep: 1, CancellationToken.None)[0];

        // Pitch 2 sqrt(21^2 - 17.75^2) = 22.44 at least, and 252 / 11 = 22.9 at most: 12 and 11 in a row.
        Assert.Equal((12 * 3) + (11 * 2), count);
        Assert.InRange(nest.PitchMm, 2 * Math.Sqrt((21 * 21) - (17.75 * 17.75)) - 1e-6, 252 / 11.0);
        Assert.True(NestSweep.Best(region, new RegionRaster(region, 21), 21, 10, stretched: false, keep: 1, CancellationToken.None)[0].Count < count);
    }

    private static (CylinderSearch Search, Scene Scene) Search(Scene scene, bool linkable = false)
    {
        CylinderSearch search = new(scene, Cases.Round, Attitude.Of(scene.Case)[0], CancellationToken.None);
        search.Nests(thorough: false, linkable);
        return (search, scene);
    }

    [Fact]
    public void Layers_are_stacked_for_the_most_cells()
    {
        // Two layers of 6 by 6 places, the lower with a post in a corner that takes one.
        (CylinderSearch search, Scene scene) = Search(Of([Cases.Box(0, 0, 0, 131, 131, 160)], Cases.Box(0, 0, 0, 14, 14, 60)));
        Layout layout = search.Regular();

        Assert.Equal((2, 71), (search.Regions.Count, search.RegularCount));
        Assert.Equal(71, layout.Bodies.Count);
        Assert.Empty(LayoutCheck.Broken(scene, layout.Bodies));
        // The post stands in the lower layer alone, and is too thin to be proved to take a place.
        Assert.True(search.Bound() >= 71);
        Assert.False(search.LayersApart);
        Assert.Equal(("square", true), (layout.Kind, layout.Regular));
        Assert.Equal([40, 118], layout.Bodies.Select(b => b.Centre.Z).Distinct().Order());
        // The layers that stand under one another all the way have one nest.
        Layout[] inLine = [.. search.InLine()];
        Assert.Equal(2, inLine.Length);
        Assert.All(inLine, l => Assert.Empty(LayoutCheck.Broken(scene, l.Bodies)));
    }

    [Fact]
    public void Layers_too_far_apart_for_a_link_are_told_and_others_chosen()
    {
        // The roof layer keeps over the post of 90: 5 + 70 + 8 and 20 more.
        Scene scene = Of([Cases.Box(0, 0, 0, 131, 131, 200)], Cases.Box(0, 0, 83, 131, 131, 95));

        Assert.True(Search(scene).Search.LayersApart);
        Assert.False(Search(Of([Cases.Box(0, 0, 0, 131, 131, 170)]), linkable: true).Search.LayersApart);
        Assert.Equal(36 * 2, Search(Of([Cases.Box(0, 0, 0, 131, 131, 200)]), linkable: true).Search.RegularCount);
    }

    // The upper layer hangs 30 mm too high; each of its cells comes down to where links reach, but for one over a tube.
    [Fact]
    public void Layers_are_closed_up()
    {
        Scene scene = Of([Cases.Box(-13, -13, 0, 100, 100, 220)], Cases.Tube(new(-13, 0, 128), new(-2, 0, 128), 10));
        Body[] bodies = [.. Cases.Grid(3, 2, z: 40), .. Cases.Grid(3, 2, z: 175)];
        Layout given = new(bodies, "square", 0, Regular: true);

        Layout[] ways = [.. LayerShift.ClosedUp(scene, given)];

        Assert.InRange(ways.Length, 2, 4);
        Assert.All(ways, way =>
        {
            Assert.False(way.Regular);
            Assert.Equal(12, way.Bodies.Count);
            Assert.Empty(LayoutCheck.Broken(scene, way.Bodies));
        });
        // Down by the whole 57 mm that they hang too high: 175 - 57 = 118; the one over the tube by half millimetres as far as it can.
        double[] heights = [.. ways[0].Bodies.Select(b => b.Centre.Z).Order()];
        Assert.Equal(6, heights.Count(z => z == 40));
        Assert.Equal(5, heights.Count(z => Math.Abs(z - 118) < 1e-9));
        Assert.Equal(12, ways[0].Bodies.Count);
        Assert.Empty(LayerShift.ClosedUp(scene, new Layout(Cases.Grid(3, 2, z: 40), "square", 0, true)));
    }
}
