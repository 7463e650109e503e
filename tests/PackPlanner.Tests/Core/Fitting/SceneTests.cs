using PackPlanner.Core.Fitting;

namespace PackPlanner.Tests.Core.Fitting;

/// <summary>Walls and keep-outs: what stands clear of them and what does not, a hair to both sides; volumes, margins and ways in by hand.</summary>
public class SceneTests
{
    private static Scene Of(NamedSolid[] cavity, params NamedSolid[] keepOuts) => new(Cases.Of(Cases.Round, cavity, keepOuts));

    // A quarter cut off: the slope from (100, 0) to (0, 100) in the plane across each axis.
    [Theory]
    [InlineData(Axis.X)]
    [InlineData(Axis.Y)]
    [InlineData(Axis.Z)]
    public void A_round_body_stands_in_a_prism_along_its_own_axis(Axis axis)
    {
        Scene scene = Of([Cases.Prism(axis, 0, 90, (0, 0), (100, 0), (0, 100))]);
        // 10 mm from both walls and from the slope: on the diagonal up to 50 - 10 / sqrt(2).
        double most = 50 - (10 / Math.Sqrt(2));

        Assert.True(scene.CylinderIsClear(axis, 0, 90, most, most, 10));
        Assert.False(scene.CylinderIsClear(axis, 0, 90, most + 0.001, most, 10));
        Assert.True(scene.CylinderIsClear(axis, 0, 90, 10, 10, 10));
        Assert.False(scene.CylinderIsClear(axis, 0, 90, 9.999, 10, 10));
        Assert.False(scene.CylinderIsClear(axis, -0.001, 90, 10, 10, 10));
        Assert.False(scene.CylinderIsClear(axis, 0, 90.001, 10, 10, 10));
    }

    // Across the prism the round body counts as its box.
    [Fact]
    public void A_round_body_across_a_prism_counts_as_its_box()
    {
        Scene scene = Of([Cases.Prism(Axis.Y, 0, 200, (0, 0), (100, 0), (0, 100))]);

        Assert.True(scene.CylinderIsClear(Axis.Z, 0, 40, 50, 100, 10));
        Assert.False(scene.CylinderIsClear(Axis.Z, 0, 40.001, 50, 100, 10));
        Assert.True(scene.CylinderIsClear(Axis.Z, 0, 40, 50, 10, 10));
        Assert.False(scene.CylinderIsClear(Axis.Z, 0, 40, 50, 9.999, 10));
    }

    [Fact]
    public void Keep_outs_are_kept_out_of()
    {
        Scene scene = Of([Cases.Box(0, 0, 0, 200, 200, 100)], Cases.Box(90, 90, 0, 110, 110, 50), Cases.Prism(Axis.Y, 0, 200, (150, 80), (200, 80), (200, 100)), Cases.Tube(new(0, 30, 90), new(200, 30, 90), 12));

        // Beside the corner of the post, over it, and at its side.
        Assert.True(scene.CylinderIsClear(Axis.Z, 0, 40, 90 - (10 / Math.Sqrt(2)), 90 - (10 / Math.Sqrt(2)), 10));
        Assert.False(scene.CylinderIsClear(Axis.Z, 0, 40, 90 - (10 / Math.Sqrt(2)) + 0.001, 90 - (10 / Math.Sqrt(2)), 10));
        Assert.True(scene.CylinderIsClear(Axis.Z, 50, 90, 100, 100, 10));
        Assert.False(scene.CylinderIsClear(Axis.Z, 49.999, 90, 100, 100, 10));
        // Below the slope, and into it.
        Assert.True(scene.CylinderIsClear(Axis.Z, 0, 80, 190, 100, 10));
        Assert.False(scene.CylinderIsClear(Axis.Z, 0, 80.001, 190, 100, 10));
        // 6 mm below the bar's middle.
        Assert.True(scene.CylinderIsClear(Axis.Z, 0, 84, 30, 30, 10));
        Assert.False(scene.CylinderIsClear(Axis.Z, 0, 84.001, 30, 30, 10));
        Assert.True(scene.BoxIsClear(new Box3(20, 20, 0, 40, 40, 84)));
        Assert.False(scene.BoxIsClear(new Box3(20, 20, 0, 40, 40, 84.001)));
        Assert.True(scene.BoxIsClear(new Box3(60, 60, 0, 90, 100, 50)));
        Assert.False(scene.BoxIsClear(new Box3(60, 60, 0, 90.001, 100, 50)));
        Assert.False(scene.BoxIsClear(new Box3(-0.001, 60, 0, 80, 100, 50)));
    }

    [Fact]
    public void A_layout_names_what_is_too_near_to_a_wall_or_to_one_another()
    {
        Scene scene = Of([Cases.Box(-13, -13, -5, 200, 200, 75)]);
        Body[] bodies = Cases.Grid(3, 2);

        Assert.Empty(LayoutCheck.Broken(scene, bodies));
        bodies[1] = bodies[1] with { Centre = bodies[1].Centre with { X = 21.01 } };
        Assert.Equal([1, 2], LayoutCheck.Broken(scene, bodies));
        bodies[1] = bodies[1] with { Centre = new PointMm(21, -0.01, 35) };
        Assert.Equal([1], LayoutCheck.Broken(scene, bodies));
        bodies[1] = bodies[1] with { Centre = new PointMm(21, 0, 35.01) };
        Assert.Equal([1], LayoutCheck.Broken(scene, bodies));
    }

    [Fact]
    public void Prisms_turn_and_know_their_extent()
    {
        Prism3 box = Prism3.From(new Solid.Box(new PointMm(1, 2, 3), new PointMm(11, 22, 33)))!, clockwise = Prism3.From(new Solid.Prism(Axis.Y, [new(0, 0), new(0, 30), new(40, 0)], 5, 15))!;

        Assert.Equal([(1, 11), (2, 22), (3, 33)], Axes3.All.Select(box.Extent));
        foreach (Axis axis in Axes3.All)
        {
            Assert.Equal(axis, box.Along(axis).Extrusion);
            Assert.Equal([(1, 11), (2, 22), (3, 33)], Axes3.All.Select(box.Along(axis).Extent));
            Assert.Same(box.Along(axis), box.Along(axis));
        }

        Assert.Equal(6000, box.VolumeMm3, 1e-9);
        Assert.Equal([(0, 40), (5, 15), (0, 30)], Axes3.All.Select(clockwise.Extent));
        Assert.True(Geometry2.TwiceArea(clockwise.U, clockwise.V) > 0);
        Assert.Equal(6000, clockwise.VolumeMm3, 1e-9);
        Assert.Same(clockwise, clockwise.Along(Axis.X));
        Assert.Null(Prism3.From(new Solid.Tube(default, default, 5)));
    }

    [Fact]
    public void Volume_of_a_cavity_is_what_its_parts_hold_together_less_its_keep_outs()
    {
        Assert.Equal(100 * 80 * 60, CavityVolume.OfMm3(Of([Cases.Box(0, 0, 0, 100, 80, 60)])), 1e-6);
        // Two parts that overlap by half, a block that cuts an eighth, a bar through.
        Assert.Equal(150 * 80 * 60, CavityVolume.OfMm3(Of([Cases.Box(0, 0, 0, 100, 80, 60), Cases.Box(50, 0, 0, 150, 80, 60)])), 0.01 * 720000);
        Assert.Equal(480000 * 7 / 8.0, CavityVolume.OfMm3(Of([Cases.Box(0, 0, 0, 100, 80, 60)], Cases.Box(50, 40, 30, 120, 90, 90))), 0.005 * 480000);
        Assert.Equal(480000 - (Math.PI * 100 * 100), CavityVolume.OfMm3(Of([Cases.Box(0, 0, 0, 100, 80, 60)], Cases.Tube(new(-20, 40, 30), new(120, 40, 30), 20))), 0.005 * 480000);
    }

    // What every cell could still move towards each side, by hand: 3 mm beside and 5 mm at the ends are kept.
    [Fact]
    public void Margins_are_what_all_cells_may_still_move()
    {
        Scene scene = Of([Cases.Box(0, 0, 0, 100, 60, 90)], Cases.Box(80, 0, 0, 100, 60, 90));
        Body[] bodies = [.. Cases.Grid(2, 1).Select(b => b with { Centre = new PointMm(b.Centre.X + 20, b.Centre.Y + 25.5, 42) })];

        Assert.Equal([7, 26, 12.5, 21.5, 2, 8], Margins.Of(scene, bodies), (a, b) => Math.Abs(a - b) < 1e-4);
        Assert.Equal(new double[6], Margins.Of(scene, []));
    }

    [Theory]
    [InlineData(50, 40, true, true, null)]
    [InlineData(20.5, 41.5, true, true, null)]
    [InlineData(40.9, 19.9, false, false, 0.1)]
    [InlineData(40.9, 20, false, true, 0.1)]
    [InlineData(20, 30, false, true, 11.0)]
    public void A_way_in_lets_the_block_or_its_cells_through(double wide, double high, bool pack, bool cell, double? shortMm)
    {
        // Two cells in a row: 41 x 20 seen from above; one cell 20 x 20.
        Body[] bodies = Cases.Grid(2, 1);
        Scene scene = new(Cases.Of(Cases.Round, [Cases.Box(-13, -13, -5, 200, 200, 90)]) with { Openings = [new Opening("lid", Axis.Z, null, new(0, 0), new(wide, high))] });

        WayIn way = WaysInCheck.Of(scene, bodies).Single();

        Assert.Equal((pack, cell), (way.PackPasses, way.CellPasses));
        Assert.Equal(shortMm ?? 0, way.PackShortMm ?? 0, 1e-9);
        Assert.Equal(cell ? [1, 2] : [], way.OrderIn);
        // Above the cells 90 - 70.
        Assert.Equal(20, way.TerminalRoomMm!.Value, 1e-9);
        Assert.Contains(pack ? "it passes whole" : cell ? "one by one" : "a single cell does not pass either", way.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Cells_go_in_the_furthest_first_and_room_is_the_least_over_all()
    {
        Body[] bodies = [.. Cases.Grid(1, 1), .. Cases.Grid(1, 1).Select(b => b with { Centre = new PointMm(0, 0, 120) })];
        Opening lid = new("lid", Axis.Z, true, new(0, 0), new(60, 60));
        Scene scene = new(Cases.Of(Cases.Round, [Cases.Box(-13, -13, -5, 200, 200, 190)]) with { Openings = [lid, lid with { Positive = false }] });

        IReadOnlyList<WayIn> ways = WaysInCheck.Of(scene, bodies);

        Assert.Equal([1, 2], ways[0].OrderIn);
        Assert.Equal([2, 1], ways[1].OrderIn);
        Assert.Equal([35, 5], ways.Select(w => w.TerminalRoomMm!.Value));
    }

    [Fact]
    public void Taps_stand_between_their_groups()
    {
        PlacedGroup[] groups = [.. Enumerable.Range(1, 3).Select(g => new PlacedGroup(g, [g], "+z", 0.07, new PointMm(20 * g, 0, 35)))];

        IReadOnlyList<SenseTap> taps = SenseTaps.Of(groups, Cases.Of(Cases.Round, []) with { NominalV = 3.6, FullV = 4.2 });

        Assert.Equal([(0, 1, "minus"), (1, 1, "plus"), (2, 2, "plus"), (3, 3, "plus")], taps.Select(t => (t.Tap, t.OnGroup, t.Pole)));
        Assert.Equal([20, 30, 50, 60], taps.Select(t => t.At.X));
        Assert.Equal([0, 3.6, 7.2, 10.8], taps.Select(t => Math.Round(t.NominalV!.Value, 9)));
        Assert.Equal([0, 4.2, 8.4, 12.6], taps.Select(t => Math.Round(t.FullV!.Value, 9)));
        Assert.Empty(SenseTaps.Of([], Cases.Of(Cases.Round, [])));
    }
}
