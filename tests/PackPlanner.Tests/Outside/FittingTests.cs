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
}
