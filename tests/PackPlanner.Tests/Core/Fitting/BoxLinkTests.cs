using System.Text.Json;
using PackPlanner.Core.Fitting;

namespace PackPlanner.Tests.Core.Fitting;

public class BoxLinkTests
{
    [Fact]
    public void Eight_boxes_in_two_columns_cross_from_one_to_the_other_once()
    {
        (_, JsonElement answer) = FitRun.Checked(FitVerbTests.Slope);

        // By hand: five slabs of 36 mm with 2 mm between them, two boxes of 130 mm with 2 mm between them in each. Seven links join eight boxes;
        // no column holds more than five, so at least one link of 132 mm is among them, and six of 38 mm.
        Assert.Equal(((6 * 38) + 132) / (7.0 * 38), answer.GetProperty("links").GetProperty("busbarRatio").GetDouble(), 6);
    }

    [Theory]
    [InlineData("""{"box":[0,0,0,500,150,200]},{"box":[0,0,0,160,420,200]}""", "\"upright\",\"onEdge\"", 16, 1.5)]
    public void Boxes_in_several_poses_are_closed_up_so_that_plates_stay_short(string parts, string poses, int series, double most)
    {
        string text = $$$"""
            {"cavity":{"parts":[{{{parts}}}]},
             "cell":{"shape":"box","lengthMm":130,"thicknessMm":30,"heightMm":110,"massG":900,"poses":[{{{poses}}}]},
             "clearance":{"wallMm":3,"plateMm":6,"terminalMm":22,"cellGapMm":2,"spacerMm":2},"pack":{"series":{{{series}}},"linkReachMm":2}}
            """;
        (int exitCode, JsonElement answer) = FitRun.Checked(text, "--work", "2");

        Assert.Equal(0, exitCode);
        Assert.InRange(answer.GetProperty("links").GetProperty("busbarRatio").GetDouble(), 1, most);
    }

    [Fact]
    public void A_bar_beside_a_cell_and_one_across_it_are_as_far_as_they_look()
    {
        // By hand: a cell of radius 10 from z 0 to 100 at the origin. A bar along z at x 30: 20 away. A bar across at z 120 passing over it:
        // 20 above. A bar that slants past the top edge, through (20, 0, 110) at right angles to the way to the edge (10, 0, 100): sqrt(200).
        Tube3 beside = new(new PointMm(30, 0, -50), new PointMm(30, 0, 150), 5);
        Tube3 above = new(new PointMm(-50, 0, 120), new PointMm(50, 0, 120), 5);
        Tube3 slanting = new(new PointMm(-80, 0, 210), new PointMm(120, 0, 10), 5);

        Assert.Equal(20, beside.ToCylinder(Axis.Z, 0, 100, 0, 0, 10, out _), 9);
        Assert.Equal(20, above.ToCylinder(Axis.Z, 0, 100, 0, 0, 10, out _), 9);
        Assert.Equal(Math.Sqrt(200), slanting.ToCylinder(Axis.Z, 0, 100, 0, 0, 10, out double at), 7);
        Assert.Equal(0.5, at, 4);
    }
}
