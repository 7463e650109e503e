using PackPlanner.Core.Fitting;

namespace PackPlanner.Tests.Core.Fitting;

public class SightLinesTests
{
    private static readonly FitCase Case = new(
        [
            new NamedSolid("box", new Solid.Box(new PointMm(0, 0, 0), new PointMm(100, 50, 40))),
            // A wedge behind it, seen from the front: its top falls from 40 at the left to 0 at the right.
            new NamedSolid("wedge", new Solid.Prism(Axis.Y, [new(0, 0), new(100, 0), new(0, 40)], 50, 80)),
        ],
        [new NamedSolid("tube", new Solid.Tube(new PointMm(0, 25, 20), new PointMm(100, 25, 20), 10))],
        "cell", new CellBody.Cylinder(10, 20, [Axis.Z]), null, new Clearances());

    [Theory]
    [InlineData(50, 10, 0, 40, true, false)]
    [InlineData(50, 25, 0, 40, true, true)]
    // Under the tube, which reaches from 15 to 25 in height.
    [InlineData(50, 25, 0, 14, true, false)]
    [InlineData(50, 29.9, 0, 40, true, true)]
    [InlineData(50, 30.1, 0, 40, true, false)]
    [InlineData(101, 10, 0, 40, false, false)]
    // In the wedge the roof stands at 40 - 0.4 x: at x = 50 it is 20.
    [InlineData(50, 60, 0, 40, true, false)]
    [InlineData(50, 60, 21, 40, false, false)]
    [InlineData(50, 81, 0, 40, false, false)]
    public void A_line_from_above_meets_what_stands_under_it(double x, double y, double low, double high, bool inside, bool blocked) =>
        Assert.Equal((inside, blocked), new SightLines(Case).At(Axis.Z, x, y, low, high));

    [Fact]
    public void The_extent_is_that_of_all_parts_together() =>
        Assert.Equal([(0, 100), (0, 80), (0, 40)], new[] { Axis.X, Axis.Y, Axis.Z }.Select(new SightLines(Case).Extent));
}
