using PackPlanner.Core.Fitting;

namespace PackPlanner.Tests.Core.Fitting;

/// <summary>The shortcuts of the search for boxes against the plain rules that they stand for.</summary>
public class SlabMaskTests
{
    private static readonly Clearances Clear = new(WallMm: 3, EndMm: 0, PlateMm: 4, TerminalMm: 12, CellGapMm: 1, SpacerMm: 2, LayerGapMm: 0);

    private static readonly NamedSolid[][] Cavities =
    [
        [Prism(Axis.Y, [(0, 40), (60, 0), (380, 0), (470, 50), (520, 160), (470, 270), (330, 330), (140, 320), (20, 220)], 0, 260)],
        [Prism(Axis.Z, [(0, 0), (300, 0), (300, 90), (180, 100), (200, 240), (40, 200)], 10, 200)],
        [Prism(Axis.X, [(0, 0), (200, 30), (180, 210), (90, 120), (10, 200)], -40, 260)],
        [new NamedSolid("a", new Solid.Box(new PointMm(0, 0, 0), new PointMm(300, 140, 180))), new NamedSolid("b", new Solid.Box(new PointMm(100, 0, 0), new PointMm(220, 260, 220)))],
    ];

    private static readonly NamedSolid[] KeepOuts =
    [
        new NamedSolid("slanting", new Solid.Tube(new PointMm(-20, 60, 40), new PointMm(340, 200, 190), 28)),
        new NamedSolid("upright", new Solid.Tube(new PointMm(150, 60, -20), new PointMm(160, 70, 300), 24)),
        new NamedSolid("post", new Solid.Box(new PointMm(60, 100, 0), new PointMm(90, 140, 160))),
        Prism(Axis.X, [(20, 20), (60, 30), (30, 70)], 200, 260),
    ];

    [Theory]
    [InlineData(0, 0)]
    [InlineData(0, 2)]
    [InlineData(1, 4)]
    [InlineData(2, 1)]
    [InlineData(2, 3)]
    [InlineData(3, 0)]
    [InlineData(3, 4)]
    public void The_map_never_says_other_than_the_exact_test(int cavity, int keepOuts)
    {
        Scene scene = new(Case(cavity, keepOuts));
        Random random = new(cavity + (10 * keepOuts));
        int decided = 0, clear = 0, asked = 0;
        foreach (Axis along in Axes3.All)
        {
            foreach (SlabClass slab in SlabClass.Of(Attitude.Of(scene.Case), along))
            {
                (double low, double high) = scene.Parts[0].Extent(along);
                double start = low + slab.WallBelow + (random.Next(3) * Math.Max(0, high - low - slab.Thickness - slab.WallBelow - slab.WallAbove) / 2);
                Box3 any = slab.Attitudes[0].Skin(Axes3.Place(along, start + (slab.Thickness / 2), 0, 0));
                SlabMask mask = new(scene, along, any.Low(along), any.High(along));
                for (int k = 0; k < 4000; k++)
                {
                    Box3 skin = Skin(scene, slab, start, random);
                    bool exact = scene.BoxIsClear(skin);
                    bool? told = mask.IsClear(skin);
                    Assert.True(told is null || told == exact, $"{skin}: told {told}, is {exact}");
                    (asked, decided, clear) = (asked + 1, decided + (told is null ? 0 : 1), clear + (exact ? 1 : 0));
                }
            }
        }

        // A map that never knows would agree as well; and there must be room to be found.
        Assert.True(decided > 0.6 * asked, $"{decided} of {asked} decided");
        Assert.True(clear > 0);
    }

    [Fact]
    public void Clashes_found_eight_at_a_time_are_those_of_every_pair()
    {
        Scene scene = new(Case(1, 1));
        foreach (Axis along in Axes3.All)
        {
            (Axis first, Axis second) = Axes3.Others(along);
            foreach (SlabClass slab in SlabClass.Of(Attitude.Of(scene.Case), along))
            {
                List<Body> bodies = SlabCandidates.Of(scene, slab, scene.Parts[0].Extent(along).Low + slab.WallBelow, most: 300, mostLooks: long.MaxValue, out _);
                ulong[] bits = ClashBits.Of(bodies, first, second);
                int words = ClashBits.Words(bodies.Count);
                for (int i = 0; i < bodies.Count; i++)
                {
                    for (int j = 0; j < bodies.Count; j++)
                    {
                        bool clash = !IsPast(bodies[i], bodies[j], first) && !IsPast(bodies[i], bodies[j], second);
                        Assert.Equal(clash, (bits[(i * words) + (j / 64)] >> (j % 64) & 1) != 0);
                    }
                }
            }
        }
    }

    [Fact]
    public void A_look_held_to_little_work_costs_little_and_still_finds_boxes()
    {
        FitCase fitCase = Case(1, 1) with { Cell = new CellBody.Box(70, 22, 50, [BoxPose.Upright]) };
        int full = BoxSearch.QuickCount(new Scene(fitCase), 10_000_000, CancellationToken.None, out long whole);
        int held = BoxSearch.QuickCount(new Scene(fitCase), 100_000, CancellationToken.None, out long spent);

        Assert.InRange(spent, 1, 600_000);
        Assert.True(whole > 4 * spent);
        Assert.InRange(held, full / 2, full);
    }

    private static bool IsPast(in Body a, in Body b, Axis axis) => Box3.Gap(a.Box, b.Box, axis) >= PairRules.Wanted(a, b, axis) - (Geometry2.RoundingMm / 2);

    /// <summary>A skin anywhere, or flush with a wall or a hair beside flush, where a map is likeliest to be wrong.</summary>
    private static Box3 Skin(Scene scene, SlabClass slab, double start, Random random)
    {
        (Axis first, Axis second) = Axes3.Others(slab.Along);
        Attitude attitude = slab.Attitudes[random.Next(slab.Attitudes.Count)];
        return attitude.Skin(Axes3.Place(slab.Along, start + (slab.Thickness / 2), At(first), At(second)));

        double At(Axis axis)
        {
            double low = scene.Parts.Min(p => p.Extent(axis).Low), high = scene.Parts.Max(p => p.Extent(axis).High), half = attitude.Size(axis) / 2;
            double flushLow = low + attitude.Wall(Attitude.Face(axis, false)) + half, flushHigh = high - attitude.Wall(Attitude.Face(axis, true)) - half;
            double hair = random.Next(5) switch { 0 => 5e-4, 1 => -5e-4, 2 => 2e-6, 3 => -8e-7, _ => 0 };
            return random.Next(6) switch { 0 => flushLow + hair, 1 => flushHigh + hair, _ => low - 20 + (random.NextDouble() * (high - low + 40)) };
        }
    }

    private static FitCase Case(int cavity, int keepOuts) => new(
        Cavities[cavity], KeepOuts[..keepOuts], "box", new CellBody.Box(70, 22, 50, [BoxPose.Upright, BoxPose.OnEdge, BoxPose.OnFace]), null, Clear);

    private static NamedSolid Prism(Axis extrusion, (double U, double V)[] outline, double from, double to) =>
        new("prism", new Solid.Prism(extrusion, [.. outline.Select(p => new OutlinePointMm(p.U, p.V))], from, to));
}
