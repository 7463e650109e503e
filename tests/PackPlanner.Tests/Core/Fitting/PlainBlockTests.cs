using PackPlanner.Core.Fitting;

namespace PackPlanner.Tests.Core.Fitting;

public class PlainBlockTests
{
    private static readonly FitCase Model = new(
        [], [], "18650", new CellBody.Cylinder(18.6, 65.3, [Axis.Z]), 47, new Clearances(CellGapMm: 0.6), LinkReachMm: 1, NominalV: 3.6, FullV: 4.2);

    [Fact]
    public void Thirteen_groups_of_seven_stand_in_rows_and_columns_with_fourteen_taps()
    {
        FitAnswer block = PlainBlock.Place(13, 7, Model).Answer;

        Assert.Equal(91, block.Cells.Count);
        Assert.Equal(7, block.Parallel);
        Assert.Equal(14, block.Taps.Count);
        Assert.Equal(46.8, block.Taps[13].NominalV!.Value, 9);
        Assert.All(block.LinkPairs, pairs => Assert.True(pairs > 0));
        Assert.Equal(1.0, block.BusbarRatio!.Value, 6);
        Assert.Contains(block.Cautions, c => c.Code == "caution-20a");
    }

    [Fact]
    public void A_block_told_to_fold_after_four_groups_keeps_every_link()
    {
        FitAnswer block = PlainBlock.Place(10, 2, Model, columns: 4).Answer;

        Assert.Empty(block.Jumpers);
        // By hand: four columns of 18.6 mm with 0.6 mm between them are 76.2 mm wide.
        Assert.Equal(76.2, block.Cells.Max(c => c.Centre.X) + 9.3, 9);
    }
}
