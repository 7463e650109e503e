using PackPlanner.Core.Fitting;

namespace PackPlanner.Tests.Core.Fitting;

/// <summary>How cells may stand, what they keep from walls and from each other, and when two are neighbours: at every limit, on both sides.</summary>
public class BodiesTests
{
    private static Attitude Of(CellBody cell, int i = 0) => Attitude.Of(Cases.Of(cell, [Cases.Box(0, 0, 0, 9, 9, 9)]))[i];

    [Theory]
    [InlineData(Axis.X)]
    [InlineData(Axis.Y)]
    [InlineData(Axis.Z)]
    public void A_round_cell_keeps_ends_and_sides(Axis axis)
    {
        Attitude a = Of(Cases.Round with { Axes = [axis] });

        Assert.Equal((axis, -1), (a.RoundAlong, a.TerminalFace));
        foreach (Axis other in Axes3.All)
        {
            Assert.Equal(other == axis ? 70 : 20, a.Size(other));
            foreach (bool positive in new[] { false, true })
                Assert.Equal(other == axis ? (5, 8) : (3, 1), (a.Wall(Attitude.Face(other, positive)), a.Want(Attitude.Face(other, positive))));
        }
    }

    // Upright and inverted two ways each; on edge a terminal to four sides, its large faces upright; on its face level.
    [Theory]
    [InlineData(BoxPose.Upright, 2)]
    [InlineData(BoxPose.Inverted, 2)]
    [InlineData(BoxPose.OnEdge, 4)]
    [InlineData(BoxPose.OnFace, 4)]
    public void A_box_stands_in_every_way_of_its_pose(BoxPose pose, int ways)
    {
        IReadOnlyList<Attitude> all = Attitude.Of(Cases.Of(Cases.Brick with { Poses = [pose] }, [Cases.Box(0, 0, 0, 9, 9, 9)]));

        Assert.Equal(ways, all.Count);
        Assert.All(all, a =>
        {
            Axis height = (Axis)(a.TerminalFace / 2);
            Assert.Equal((140, 36, 130), (a.Size(height), a.Size(a.ThicknessAlong), a.Size(a.LengthAlong)));
            Assert.Equal(pose is BoxPose.Upright or BoxPose.Inverted, height == Axis.Z);
            Assert.Equal(pose == BoxPose.OnFace, a.ThicknessAlong == Axis.Z);
            Assert.Equal(pose == BoxPose.Upright, a.TerminalFace == 5);
            for (int face = 0; face < 6; face++)
            {
                bool large = face / 2 == (int)a.ThicknessAlong, terminal = face == a.TerminalFace;
                Assert.Equal(terminal ? (20, 20) : large ? (6, 2) : (3, 1), (a.Wall(face), a.Want(face)));
            }
        });
        Assert.Equal(ways, all.Select(a => (a.TerminalFace, a.ThicknessAlong)).Distinct().Count());
    }

    [Fact]
    public void Faces_have_their_names_and_skins_their_clearances()
    {
        Assert.Equal(["-x", "+x", "-y", "+y", "-z", "+z"], Enumerable.Range(0, 6).Select(Attitude.FaceName));
        Attitude a = Of(Cases.Brick);
        Assert.Equal((Axis.X, Axis.Y), (a.ThicknessAlong, a.LengthAlong));
        Assert.Equal(new Box3(82, 135, 230, 118, 265, 370), a.Body(new PointMm(100, 200, 300)));
        Assert.Equal(new Box3(76, 132, 227, 124, 268, 390), a.Skin(new PointMm(100, 200, 300)));
        Assert.Equal(new PointMm(100, 200, 308.5), a.Skin(new PointMm(100, 200, 300)).Centre);
    }

    [Fact]
    public void Boxes_know_gaps_and_move_along_one_axis()
    {
        Box3 a = new(0, 0, 0, 10, 20, 30), b = new(12, 15, 30, 20, 40, 50);

        Assert.Equal([2, -5, 0], Axes3.All.Select(axis => Box3.Gap(a, b, axis)));
        Assert.Equal([2, -5, 0], Axes3.All.Select(axis => Box3.Gap(b, a, axis)));
        Assert.Equal([10, 20, 30], Axes3.All.Select(a.Size));
        Assert.Equal(new Box3(5, 0, 0, 15, 20, 30), a.Moved(Axis.X, 5));
        Assert.Equal(new Box3(0, 5, 0, 10, 25, 30), a.Moved(Axis.Y, 5));
        Assert.Equal(new Box3(0, 0, 5, 10, 20, 35), a.Moved(Axis.Z, 5));
        foreach (Axis axis in Axes3.All)
        {
            PointMm place = Axes3.Place(axis, 1, 2, 3);
            Assert.Equal((1, 2, 3), (place[axis], place[Axes3.Others(axis).First], place[Axes3.Others(axis).Second]));
            Assert.Equal(axis.ToString(), Axes3.Letter(axis), ignoreCase: true);
            Assert.Equal(9, place.With(axis, 9)[axis]);
        }
    }

    private static bool Apart(double x, double y, double z, CellBody cell, double forgive = 0) =>
        PairRules.Apart(new Body(default, Of(cell)), new Body(new PointMm(x, y, z), Of(cell)), Cases.Clear, forgive);

    [Theory]
    [InlineData(21, 0, 0, true)]
    [InlineData(20.999, 0, 0, false)]
    [InlineData(0, 0, 78, true)]
    [InlineData(0, 0, 77.999, false)]
    [InlineData(0, 0, -78, true)]
    [InlineData(12.6, 16.8, 0, true)]
    [InlineData(12.59, 16.8, 0, false)]
    public void Round_cells_keep_their_gap_beside_or_their_layer_gap_above(double x, double y, double z, bool apart)
    {
        Assert.Equal(apart, Apart(x, y, z, Cases.Round));
        Assert.True(Apart(x, y, z, Cases.Round, forgive: 0.02));
    }

    // Large faces 2 mm, sides 1 mm, the terminal 20 mm from what stands above it.
    [Theory]
    [InlineData(38, 0, 0, true)]
    [InlineData(37.99, 0, 0, false)]
    [InlineData(0, 131, 0, true)]
    [InlineData(0, -130.99, 0, false)]
    [InlineData(0, 0, 160, true)]
    [InlineData(0, 0, 159.99, false)]
    [InlineData(0, 0, -160, true)]
    [InlineData(0, 0, -159.99, false)]
    public void Boxes_keep_what_their_faces_want(double x, double y, double z, bool apart)
    {
        Assert.Equal(apart, Apart(x, y, z, Cases.Brick));
    }

    [Fact]
    public void Cells_that_cross_are_held_apart_as_boxes_and_are_no_neighbours()
    {
        Body upright = new(default, Of(Cases.Round)), lying = new(new PointMm(0, 0, 53), Of(Cases.Round with { Axes = [Axis.X] })), close = lying with { Centre = new PointMm(0, 0, 52.9) };

        // 35 + 10 and 8 mm of the end that looks at it.
        Assert.True(PairRules.Apart(upright, lying, Cases.Clear, 0));
        Assert.False(PairRules.Apart(upright, close, Cases.Clear, 0));
        Assert.False(PairRules.Neighbours(upright, lying, Cases.Clear, 20));
    }

    private static bool Linked(double x, double y, double z, CellBody cell, double reach = 2) =>
        PairRules.Neighbours(new Body(default, Of(cell)), new Body(new PointMm(x, y, z), Of(cell)), Cases.Clear, reach);

    // Beside: diameter, gap, reach and a hundredth, at most a quarter of the length higher; above: the layer gap and reach, at most a quarter of the diameter aside.
    [Theory]
    [InlineData(23.009, 0, 0, true)]
    [InlineData(23.011, 0, 0, false)]
    [InlineData(21, 0, 17.4, true)]
    [InlineData(21, 0, 17.51, false)]
    [InlineData(0, 0, 80.009, true)]
    [InlineData(0, 0, 80.011, false)]
    [InlineData(0, 4.99, 78, true)]
    [InlineData(0, 5.01, 78, false)]
    public void Round_cells_are_neighbours_within_reach(double x, double y, double z, bool linked)
    {
        Assert.Equal(linked, Linked(x, y, z, Cases.Round));
    }

    // A quarter of the smaller face must stand before the other.
    [Theory]
    [InlineData(40.009, 0, 0, true)]
    [InlineData(40.011, 0, 0, false)]
    [InlineData(38, 97.4, 0, true)]
    [InlineData(38, 97.6, 0, false)]
    [InlineData(38, 0, 104.9, true)]
    [InlineData(38, 0, 105.1, false)]
    [InlineData(0, 133.009, 0, true)]
    [InlineData(0, 133.011, 0, false)]
    [InlineData(0, 0, 162.009, true)]
    [InlineData(0, 0, 162.011, false)]
    [InlineData(36.5, 131.5, 0, false)]
    public void Boxes_are_neighbours_face_to_face(double x, double y, double z, bool linked)
    {
        Assert.Equal(linked, Linked(x, y, z, Cases.Brick));
    }

    [Fact]
    public void Nearness_is_found_without_looking_at_all()
    {
        Body[] bodies = Cases.Grid(9, 8);
        NeighbourGraph graph = NeighbourGraph.Of(bodies, Cases.Clear, 9.5);

        for (int i = 0; i < bodies.Length; i++)
            Assert.Equal(Enumerable.Range(0, bodies.Length).Where(j => j != i && PairRules.Neighbours(bodies[i], bodies[j], Cases.Clear, 9.5)), graph.Near[i]);
        // Within 30.5 mm: four sides and four corners at 29.7.
        Assert.Equal(8, graph.Near[40].Length);
        Assert.Equal((72, 21.0), (graph.Count, graph.SmallestMm));
        Assert.Equal(21 * Math.Sqrt(5), graph.Distance(0, 19), 1e-9);
        Assert.Null(NeighbourGraph.Of(bodies[..1], Cases.Clear, 2).SmallestMm);
        Assert.Equal(70 + 8 + 2 + 0.1, BodyGrid.Reach([bodies[0].Attitude], 2), 1e-9);
    }

    [Fact]
    public void Pieces_are_what_hangs_together()
    {
        NeighbourGraph graph = Cases.Graph(5, 2);

        (int[] piece, List<int> sizes) = graph.Pieces(i => i % 5 != 2);

        Assert.Equal([4, 4], sizes);
        Assert.Equal([0, 0, -1, 1, 1, 0, 0, -1, 1, 1], piece);
    }
}
