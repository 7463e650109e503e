using PackPlanner.Core.Fitting;

namespace PackPlanner.Tests.Core.Fitting;

/// <summary>Places worth trying for boxes: all that a full layer needs are among them, and none is not clear.</summary>
public class SlabCandidatesTests
{
    // A cavity of one layer of two by five boxes: every candidate is clear, each stands at a wall or a sum away, and the ten of the full layer are among them.
    [Fact]
    public void Candidates_hold_every_place_of_the_full_layer()
    {
        Scene scene = new(Cases.Of(Cases.Brick, [Cases.Box(0, 0, 0, 200, 267, 170)]));
        SlabClass slab = SlabClass.Of(Attitude.Of(scene.Case), Axis.Z).Single();

        List<Body> places = SlabCandidates.Of(scene, slab, 3, 5000, 1_000_000, out long looks);

        Assert.All(places, p => Assert.True(scene.BoxIsClear(p.Attitude.Skin(p.Centre))));
        Assert.Equal(places.Count, places.Distinct().Count());
        Assert.True(looks >= places.Count);
        for (int i = 0; i < 5; i++)
        {
            foreach (double y in new[] { 3 + 65, 3 + 131 + 65.0 })
                Assert.Contains(places, p => p.Attitude.ThicknessAlong == Axis.X && Math.Abs(p.Centre.X - (6 + 18 + (38 * i))) < 1e-6 && Math.Abs(p.Centre.Y - y) < 1e-6 && p.Centre.Z == 73);
        }

        Assert.InRange(SlabCandidates.Of(scene, slab, 3, 50, 1_000_000, out _).Count, 40, 50);
        Assert.True(SlabCandidates.Of(scene, slab, 3, 5000, 400, out long few).Count < places.Count && few < looks);
    }

    // On a slope a box rests with its corner: where it is pushed along x from y = 3 it touches at the hypotenuse.
    [Fact]
    public void Candidates_rest_on_slopes()
    {
        Scene scene = new(Cases.Of(Cases.Brick, [Cases.Prism(Axis.Z, 0, 170, (0, 0), (400, 0), (0, 400))]));
        SlabClass slab = SlabClass.Of(Attitude.Of(scene.Case), Axis.Z).Single();

        List<Body> places = SlabCandidates.Of(scene, slab, 3, 5000, 1_000_000, out _);

        // By hand: thickness along x, its skin from y 0 to 136 ends at x = 400 - 136: its middle 6 + 18 before that.
        Assert.Contains(places, p => p.Attitude.ThicknessAlong == Axis.X && Math.Abs(p.Centre.X - (264 - 24)) < 1e-6 && Math.Abs(p.Centre.Y - 68) < 1e-6);
    }
}
