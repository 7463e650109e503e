using PackPlanner.Core.Jobs;
using PackPlanner.Formats.Sheets;
using static PackPlanner.Tests.Formats.Sheets.SheetCases;

namespace PackPlanner.Tests.Formats.Sheets;

/// <summary>Labels of cells with names of any length.</summary>
public class LabelSheetTests
{
    // What stands under the figures keeps its lines, whatever the label takes: it is not inside of what may be cut; and the longer a label, the smaller its type.
    [Theory]
    [InlineData("K1", "big")]
    [InlineData("BOX-17-CELL-1", "long")]
    [InlineData("HALL-WEST-BATTERY-01-NO-1", "longest")]
    public void A_label_keeps_tray_revision_and_job_whatever_its_length(string label, string size)
    {
        Job job = new() { Title = "a job", Givens = Given(1, 1), AddedRows = [Cell(label, 3.6) with { Tray = "box 12 in the rack" }] };

        string body = string.Concat(LabelSheet.Pages(Input(JobHistory.Of(job))).Select(page => page.Body));

        Assert.Contains($"<span class=\"cell\"><span class=\"{size}\">{label}</span>", body, StringComparison.Ordinal);
        Assert.Matches("mΩ</span><span class=\"whose\">tray box 12 in the rack</span><span class=\"whose\">rev [0-9]+, a job</span></div>", body);
    }
}
