using PackPlanner.Core.Jobs;

namespace PackPlanner.Tests.Screens;

/// <summary>Places of a pack without a space: a plain block from the size of a cell.</summary>
public class PlainBlockOnScreenTests
{
    [Fact]
    public void A_sorter_without_a_space_gets_places_taps_and_a_placement_sheet_from_the_size_of_a_cell()
    {
        using Bench bench = new();
        bench.OpenLot(series: 4, parallel: 2);
        bench.Press("5");
        Assert.Contains("a: type the size of a cell", bench.Desk.Step.Picture.Next);

        bench.Press("a");
        bench.Type("21.2 x 70.2");
        bench.Press("Enter");

        Assert.Contains("A plain block", bench.Desk.Step.Picture.Answer);
        Assert.Contains("8 cells in 1 layer, 4 groups", bench.Desk.Step.Picture.Answer);
        Assert.Contains("+01", bench.Text());
        Assert.Contains("room left over, mm", bench.Text());
        Assert.Contains("hardest-worked at ", bench.Text());
        Assert.Contains("cells, 70.2 mm", bench.Text(120, 36));
        bench.Press("Tab");
        Assert.Contains("B4", bench.Text());
        bench.Press("8");
        bench.Text();
        Assert.Null(PackPlanner.Formats.Sheets.SheetCatalogue.All.First(sheet => sheet.Name == "place").WhyNot(bench.Desk.Answers.SheetInput!));

        // Beside the list, and by Enter, stands what the sheet will say.
        bench.Press("Down", "Down", "Down", "Down");
        Assert.Matches(@"B4 +\d+\.\d\d .*pack plus", bench.Text(120, 36));
        bench.Press("Enter");
        Assert.Matches(@"B4 +\d+\.\d\d .*________", bench.Text());
        bench.Press("Esc");

        // A space, once described, takes the block's place.
        Assert.Null(bench.Desk.Job!.FitCase);
        Assert.Equal(21.2, bench.Desk.Job.Givens.NumberOf("cellDiameterMm"));
        bench.Press("5", "u");
        Assert.Null(bench.Desk.Job.Givens.NumberOf("cellDiameterMm"));
    }

    [Fact]
    public void Nearer_places_show_labels_and_a_group_can_be_turned_over()
    {
        using Bench bench = new();
        bench.OpenLot(series: 4, parallel: 2);
        bench.Set("cellDiameterMm", new JobValue.Number(21.2));
        bench.Set("cellLengthMm", new JobValue.Number(70.2));
        bench.Set("blockColumns", new JobValue.Number(4));
        bench.Press("5", "z");
        Assert.Matches(@"\+01 T\d\d\d", bench.Text());
        bench.Press("z");
        Assert.Matches(@"4\.\d\d\d", bench.Text());
        bench.Press("Z", "Z", "Z");
        Assert.DoesNotContain("+01 ", bench.Text());
        bench.Press("z", "g");
        Assert.Contains("-01", bench.Text());
        Assert.Contains(1, bench.Desk.Job!.Placement.Turned);
    }
}
