using PackPlanner.Core.Fitting;

namespace PackPlanner.Tests.Core.Fitting;

public class BoxSplitTests
{
    // By hand: thirteen groups of two cells and 0.2 kg, 3.6 V nominal and 4.2 V full: four, four and five groups.
    [Fact]
    public void Thirteen_groups_go_into_three_boxes_of_four_four_and_five()
    {
        PlacedGroup[] groups = [.. Enumerable.Range(1, 13).Select(g => new PlacedGroup(g, [2 * g - 1, 2 * g], "up", 0.2, new PointMm(0, 0, 0)))];

        IReadOnlyList<PackBox> boxes = BoxSplit.Of(groups, Case(3));

        Assert.Equal([(1, 1, 4, 8), (2, 5, 8, 8), (3, 9, 13, 10)], boxes.Select(box => (box.Box, box.FromGroup, box.ToGroup, box.Cells)));
        Assert.Equal([0.8, 0.8, 1.0], boxes.Select(box => Math.Round(box.CellMassKg!.Value, 9)));
        Assert.Equal([(14.4, 16.8), (14.4, 16.8), (18.0, 21.0)], boxes.Select(box => (Math.Round(box.NominalV!.Value, 9), Math.Round(box.FullV!.Value, 9))));
        Assert.Empty(BoxSplit.Of(groups, Case(1)));
        Assert.Empty(BoxSplit.Of(groups[..2], Case(3)));
        Assert.Equal(3, BoxSplit.Of(groups[..3], Case(3)).Count);
    }

    private static FitCase Case(int boxes) => new(
        [], [], "cell", new CellBody.Cylinder(20, 70, [Axis.Z]), 100, new Clearances(WallMm: 3, EndMm: 0, PlateMm: 4, TerminalMm: 12, CellGapMm: 1, SpacerMm: 2, LayerGapMm: 0),
        Boxes: boxes, NominalV: 3.6, FullV: 4.2);
}
