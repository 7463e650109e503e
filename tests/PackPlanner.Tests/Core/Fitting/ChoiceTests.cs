using PackPlanner.Core.Fitting;

namespace PackPlanner.Tests.Core.Fitting;

/// <summary>Choosing as many places as go together, packing rectangles, and bounds for boxes: against trying everything, or by hand.</summary>
public class ChoiceTests
{
    private static ulong[] Clashes(int n, Func<int, int, bool> clash)
    {
        int words = ClashBits.Words(n);
        ulong[] bits = new ulong[n * words];
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < n; j++)
                bits[(i * words) + (j >> 6)] |= i == j || clash(i, j) ? 1UL << (j & 63) : 0;
        }

        return bits;
    }

    private static int Most(int n, Func<int, int, bool> clash)
    {
        int best = 0;
        void Go(int from, List<int> kept)
        {
            best = Math.Max(best, kept.Count);
            for (int i = from; i < n && kept.Count + n - i > best; i++)
            {
                if (!kept.Any(k => clash(k, i)))
                    Go(i + 1, [.. kept, i]);
            }
        }

        Go(0, []);
        return best;
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void As_many_go_together_as_trying_everything_finds(int seed)
    {
        Random random = new(seed);
        bool[,] drawn = new bool[22, 22];
        for (int i = 0; i < 22; i++)
        {
            for (int j = 0; j < i; j++)
                drawn[i, j] = drawn[j, i] = random.Next(4) == 0;
        }

        int[] found = new IndependentSet(Clashes(22, (i, j) => drawn[i, j]), 22, seed: 1).Search([[.. Enumerable.Range(0, 22)]], 3000, int.MaxValue, CancellationToken.None);

        Assert.Equal(Most(22, (i, j) => drawn[i, j]), found.Length);
        Assert.All(found, i => Assert.DoesNotContain(found, j => drawn[i, j]));
        Assert.Equal(found.Order().Distinct(), found);
    }

    // A ring of 130: 65 go together. An order that takes every second finds them at once, one that takes every third has 43 at first.
    [Fact]
    public void Orders_are_filled_and_two_are_put_in_for_one()
    {
        bool Ring(int i, int j) => (i - j + 130) % 130 is 1 or 129;
        IndependentSet set = new(Clashes(130, Ring), 130, seed: 1);
        int[] byTwo = [.. Enumerable.Range(0, 130).OrderBy(i => i % 2)], byThree = [.. Enumerable.Range(0, 130).OrderBy(i => i % 3)];

        Assert.Equal(Enumerable.Range(0, 65).Select(i => 2 * i), set.Search([byTwo], 0, int.MaxValue, CancellationToken.None));
        // 43 and two for one over and over.
        Assert.Equal(65, set.Search([byThree], 0, int.MaxValue, CancellationToken.None).Length);
        // A star: the middle clashes with all; put in first it is exchanged for the two and then all the others.
        bool Star(int i, int j) => i == 0 || j == 0;
        Assert.Equal(69, new IndependentSet(Clashes(70, Star), 70, 1).Search([[.. Enumerable.Range(0, 70)]], 0, int.MaxValue, CancellationToken.None).Length);
    }

    // Word for word the pairs that stand too near, whatever the attitudes.
    [Fact]
    public void Clashes_are_the_pairs_that_stand_too_near()
    {
        IReadOnlyList<Attitude> ways = Attitude.Of(Cases.Of(Cases.Brick with { Poses = [BoxPose.Upright, BoxPose.OnEdge] }, [Cases.Box(0, 0, 0, 9, 9, 9)]));
        Random random = new(3);
        Body[] bodies = [.. Enumerable.Range(0, 150).Select(_ => new Body(new PointMm(10 * random.Next(60), 10 * random.Next(60), 0), ways[random.Next(ways.Count)]))];

        ulong[] bits = ClashBits.Of(bodies, Axis.X, Axis.Y);

        Assert.Equal(3, ClashBits.Words(150));
        Assert.Equal([1, 1, 2], new[] { 1, 64, 65 }.Select(ClashBits.Words));
        bool Near(Body a, Body b, Axis axis) => Box3.Gap(a.Box, b.Box, axis) < PairRules.Wanted(a, b, axis) - (Geometry2.RoundingMm / 2);
        for (int i = 0; i < 150; i++)
        {
            for (int j = 0; j < 150; j++)
                Assert.Equal(i == j || (Near(bodies[i], bodies[j], Axis.X) && Near(bodies[i], bodies[j], Axis.Y)), (bits[(i * 3) + (j >> 6)] >> (j & 63) & 1) != 0);
            Assert.Equal(0UL, bits[(i * 3) + 2] >> 22);
        }
    }

    private static (int Kind, double X, double Y)[]? Packed(double width, double height, int wanted, out bool complete, params (double W, double H)[] kinds)
    {
        RectanglePacker packer = new(width, height, [.. kinds.Select(k => (k.W, k.H, 0.0, 0.0, 0.0, 0.0))]);
        complete = packer.Search(wanted, 1_000_000, CancellationToken.None, out (int Kind, double X, double Y)[]? found);
        foreach ((int kind, double x, double y) in found ?? [])
        {
            Assert.True(x >= 0 && y >= 0 && x + kinds[kind].W <= width + 1e-6 && y + kinds[kind].H <= height + 1e-6);
            Assert.Single(found!, o => x < o.X + kinds[o.Kind].W - 1e-6 && o.X < x + kinds[kind].W - 1e-6 && y < o.Y + kinds[o.Kind].H - 1e-6 && o.Y < y + kinds[kind].H - 1e-6);
        }

        return found;
    }

    // Known answers: dominoes on boards; 3 x 2 in 5 x 5 (four, round the middle); 5 x 3 in 13 x 8 and what area alone would allow but no way gives.
    [Theory]
    [InlineData(8, 8, 2, 1, 32, true)]
    [InlineData(5, 5, 3, 2, 4, true)]
    [InlineData(5, 5, 2, 1, 12, true)]
    [InlineData(5, 5, 2, 1, 13, false)]
    [InlineData(6, 6, 4, 1, 8, true)]
    [InlineData(6, 6, 4, 1, 9, false)]
    [InlineData(7, 7, 3, 2, 8, true)]
    [InlineData(7, 5, 3, 2, 5, true)]
    [InlineData(10, 10, 4, 1, 24, true)]
    [InlineData(10, 10, 4, 1, 25, false)]
    [InlineData(9.99, 4, 5, 2, 4, false)]
    [InlineData(10, 4, 5, 2, 4, true)]
    public void Rectangles_are_packed_where_they_can_be_and_none_is_proved_where_not(double width, double height, double a, double b, int wanted, bool can)
    {
        (int Kind, double X, double Y)[]? found = Packed(width, height, wanted, out bool complete, (a, b), (b, a));

        Assert.True(complete);
        Assert.Equal(can ? wanted : null, found?.Length);
    }

    [Fact]
    public void A_search_that_runs_out_of_steps_proves_nothing()
    {
        RectanglePacker packer = new(10, 10, [(4, 1, 0, 0, 0, 0), (1, 4, 0, 0, 0, 0)]);

        Assert.False(packer.Search(25, 5, CancellationToken.None, out (int, double, double)[]? none));
        Assert.Null(none);
        Assert.Equal(25, packer.AreaBound);
        // One more than its area is told without a step.
        Assert.True(packer.Search(26, 0, CancellationToken.None, out none));
        Assert.Null(none);
    }

    // A kind that keeps more from a wall than the others stands further off.
    [Theory]
    [InlineData(20, 4, true)]
    [InlineData(19.9, 4, false)]
    [InlineData(20, 3.9, false)]
    public void Kinds_keep_their_own_distance_from_walls(double width, double height, bool fits)
    {
        RectanglePacker packer = new(width, height, [(17, 2, 2, 1, 1.5, 0.5)]);

        Assert.True(packer.Search(1, 1000, CancellationToken.None, out (int Kind, double X, double Y)[]? found));

        Assert.Equal(fits ? [(0, 2.0, 1.5)] : null, found);
    }

    [Fact]
    public void Slabs_are_told_apart_by_what_matters_along_their_axis()
    {
        IReadOnlyList<Attitude> ways = Attitude.Of(Cases.Of(Cases.Brick with { Poses = [BoxPose.Upright, BoxPose.OnFace] }, [Cases.Box(0, 0, 0, 9, 9, 9)]));
        List<SlabClass> up = SlabClass.Of(ways, Axis.Z);

        // Upright 140 high with the terminal above; on its face 36.
        Assert.Equal([(140, 2, 3, 20), (36, 4, 6, 6)], up.Select(s => (s.Thickness, s.Attitudes.Count, s.WallBelow, s.WallAbove)));
        Assert.Equal([20, 2, 20, 2], new[] { up[0].GapTo(up[0]), up[1].GapTo(up[1]), up[0].GapTo(up[1]), up[1].GapTo(up[0]) });
    }

    // One class: layers times area. 400 long: (400 - 12 + 2) / 38 = 10 slabs; across, one of 140 and 20 above in 170 and two of 130 in 270.
    [Theory]
    [InlineData(400, 270, 170, 20)]
    [InlineData(389.9, 270, 170, 18)]
    [InlineData(400, 266, 170, 10)]
    [InlineData(400, 267, 163, 20)]
    [InlineData(400, 267, 162.9, 0)]
    public void The_bound_for_boxes_counts_layers_and_area(double x, double y, double z, int most)
    {
        Scene scene = new(Cases.Of(Cases.Brick, [Cases.Box(0, 0, 0, x, y, z)]));
        // Both upright attitudes lie in the plane: only along z are they one class; with one attitude each axis counts.
        Attitude[] one = [.. Attitude.Of(scene.Case).Where(a => a.ThicknessAlong == Axis.X)];

        (int? bound, string method) = BoxBound.Of(scene, one);

        Assert.Equal((most, "layers times area"), (bound, method));
        Assert.Equal((int)((x - 12 + 2) / 38 + 1e-9), BoxBound.Layers(scene.Parts[0], SlabClass.Of(one, Axis.X).Single()));
    }

    // Many directions: by volume, each box with the least gap to each side.
    [Fact]
    public void Boxes_in_several_poses_are_bounded_by_volume()
    {
        Scene scene = new(Cases.Of(Cases.Brick with { Poses = [BoxPose.Upright, BoxPose.OnEdge, BoxPose.OnFace] }, [Cases.Box(0, 0, 0, 400, 300, 300)]));

        (int? bound, string method) = BoxBound.Of(scene, Attitude.Of(scene.Case));

        // By hand: nearest to a wall 3 mm, nearest to another 1 mm: 395 x 295 x 295 over 37 x 131 x 141.
        Assert.Equal("volume", method);
        Assert.Equal((int)(395.0 * 295 * 295 / (37 * 131 * 141)), bound);
    }

    [Fact]
    public void Sums_of_steps_are_all_there_up_to_the_length()
    {
        Assert.Equal([0, 3, 5, 6, 8, 9, 10], SlabStarts.Sums([3, 5], 10, 400));
        Assert.Equal([0, 3, 5, 6, 8, 9], SlabStarts.Sums([3, 5], 9.999, 400));
        Assert.InRange(SlabStarts.Sums([3, 5], 1000, 20).Count, 20, 22);
    }

    // From below and from above, one box and its gap further, and where a keep-out ends.
    [Fact]
    public void Slabs_begin_at_walls_keep_outs_and_sums_away()
    {
        Scene scene = new(Cases.Of(Cases.Brick, [Cases.Box(0, 0, 0, 200, 200, 500)], [Cases.Box(0, 0, 0, 20, 20, 30), Cases.Tube(new(100, 0, 400), new(100, 200, 410), 20)]));
        List<SlabClass> classes = SlabClass.Of(Attitude.Of(scene.Case), Axis.Z);

        SortedSet<double> starts = SlabStarts.Of(scene, classes.Single(), classes, 40);

        // Up: 3, 163, 323; over the block 33, 193; down from the top: 340, 180, 20; below the bar's 390: 230, 70; over the block's foot none.
        Assert.All(new double[] { 3, 163, 323, 33, 193, 340, 180, 20, 230, 70 }, s => Assert.Contains(s, starts));
        Assert.All(starts, s => Assert.InRange(s, 3 - 1e-6, 340 + 1e-6));
        SortedSet<double> few = SlabStarts.Of(scene, classes.Single(), classes, 4);
        Assert.Equal((4, 3, 340), (few.Count, few.Min, few.Max));
    }
}
