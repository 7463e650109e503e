using System.Text.Json;
using PackPlanner.Tests.Core.Fitting;

namespace PackPlanner.Tests.Outside;

public class FittingTests
{
    // Source: [OeisA337020]: most circles of unit area in a square of area n. As a cavity: diameter 20, side 20 sqrt(n pi / 4).
    [Theory]
    [InlineData(11, 8)]
    [InlineData(12, 9)]
    [InlineData(15, 10)]
    [InlineData(16, 11)]
    [InlineData(17, 12)]
    [InlineData(18, 13)]
    [InlineData(20, 15)]
    [InlineData(21, 16)]
    [InlineData(24, 18)]
    [InlineData(26, 20)]
    [InlineData(28, 21)]
    [InlineData(29, 22)]
    [InlineData(31, 24)]
    [InlineData(32, 25)]
    [InlineData(35, 27)]
    [InlineData(38, 30)]
    public void A_square_holds_as_many_round_cells_as_the_best_known_packing(int area, int most)
    {
        double side = 20 * Math.Sqrt(area * Math.PI / 4);
        (_, JsonElement answer) = FitRun.Checked(FitRun.RoundCells(side, side, 30, 20, 30));

        Assert.Equal(most, answer.GetProperty("count").GetInt32());
    }

    // Source: [Silva2016] on instances of this kind; optima solved with a general constraint solver for this project.
    [Theory]
    [InlineData(42, 31, 9, 4, 35)]
    [InlineData(57, 34, 7, 4, 69)]
    [InlineData(43, 26, 7, 3, 53)]
    [InlineData(40, 25, 7, 3, 47)]
    [InlineData(53, 51, 9, 7, 42)]
    public void A_pallet_of_boxes_is_filled_to_the_solved_optimum_and_proved(int x, int y, int a, int b, int most)
    {
        string text = $$$"""
            {"cavity":{"parts":[{"box":[0,0,0,{{{x}}},{{{y}}},5]}]},
             "cell":{"shape":"box","lengthMm":{{{a}}},"thicknessMm":{{{b}}},"heightMm":5,"massG":10,"poses":["upright"]}}
            """;
        (_, JsonElement answer) = FitRun.Checked(text, "--work", "150");

        Assert.Equal(most, answer.GetProperty("count").GetInt32());
        Assert.True(answer.GetProperty("proven").GetBoolean());
    }

    // By hand, rows of staggered or square discs: 12 rows of 16 and 15 = 186; 91 with rows along the short side; 130; 92; 45.
    // 93 / 18.6 is exactly 5, so a square nest of 25 must not be lost to rounding. floor((150 + 1) / (18.6 + 1)) = 7 in one row.
    [Theory]
    [InlineData(300, 200, 18.6, 0, 186)]
    [InlineData(220, 140, 18.6, 0, 91)]
    [InlineData(300, 200, 21.7, 0, 130)]
    [InlineData(400, 250, 33.0, 0, 92)]
    [InlineData(150, 100, 18.6, 0, 45)]
    [InlineData(93, 93, 18.6, 0, 25)]
    [InlineData(150, 18.6, 18.6, 1.0, 7)]
    public void A_box_holds_at_least_the_rows_counted_by_hand(double x, double y, double diameter, double gap, int rows)
    {
        string text = FitRun.RoundCells(x, y, 65, diameter, 65, FormattableString.Invariant($",\"clearance\":{{\"cellGapMm\":{gap}}}"));
        (_, JsonElement answer) = FitRun.Checked(text, "--quick");

        Assert.InRange(answer.GetProperty("regularCount").GetInt32(), rows, answer.GetProperty("bound").GetInt32());
    }

    // Best known packings of equal circles, from memory: 19 in a circle need R/r 4.8637 and 20 need 5.122, here 110/21.7 = 5.069;
    // 17 in a square need side/r 8.532 and 18 need 8.656, here 80/9.3 = 8.602.
    [Fact]
    public void A_round_tube_holds_nineteen_and_a_square_seventeen()
    {
        const int Sides = 96;
        double outer = 55 / Math.Cos(Math.PI / Sides);
        string corners = string.Join(',', Enumerable.Range(0, Sides).Select(i =>
            FormattableString.Invariant($"[{outer * Math.Cos(2 * Math.PI * i / Sides)},{outer * Math.Sin(2 * Math.PI * i / Sides)}]")));
        string tube = FitRun.RoundCells(1, 1, 1, 21.7, 70).Replace("{\"box\":[0,0,0,1,1,1]}", $"{{\"prism\":{{\"plane\":\"xy\",\"outline\":[{corners}],\"from\":0,\"to\":70}}}}", StringComparison.Ordinal);

        (_, JsonElement inTube) = FitRun.Checked(tube);
        (_, JsonElement inSquare) = FitRun.Checked(FitRun.RoundCells(80, 80, 65, 18.6, 65));

        Assert.Equal(19, inTube.GetProperty("count").GetInt32());
        Assert.Equal(17, inSquare.GetProperty("count").GetInt32());
    }

    // By hand, from data-sheet sizes: sixteen cells of 72 x 173.7 mm in two rows of eight are 576 x 347.4 mm; 16 x 5.42 kg = 86.72 kg.
    [Fact]
    public void Sixteen_large_cells_fill_their_footprint_exactly()
    {
        const string Text = """
            {"cavity":{"parts":[{"box":[0,0,0,576,347.4,204.6]}]},
             "cell":{"shape":"box","lengthMm":173.7,"thicknessMm":72,"heightMm":204.6,"massG":5420,"poses":["upright"],"chemistry":"LFP"},
             "pack":{"series":16,"linkReachMm":2}}
            """;
        (int exitCode, JsonElement answer) = FitRun.Checked(Text);

        Assert.Equal(0, exitCode);
        Assert.Equal(16, answer.GetProperty("count").GetInt32());
        Assert.True(answer.GetProperty("proven").GetBoolean());
        Assert.Equal(86.72, answer.GetProperty("cellMassKg").GetDouble(), 9);
        Assert.Equal(51.2, answer.GetProperty("taps")[16].GetProperty("nominalV").GetDouble(), 9);
    }
}
