using System.Text.RegularExpressions;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats;
using PackPlanner.Formats.Demos;
using PackPlanner.Formats.Sheets;

namespace PackPlanner.Tests.Formats.Sheets;

public class RepairSheetTests
{
    // The invented tractor: a joint at 4, a loose wire between 8 and 9, a weak cell 11.
    [Fact]
    public void A_loose_wire_is_one_thing_to_settle_and_every_finding_has_a_place_to_confirm()
    {
        JobHistory job = Assert.IsType<Outcome<JobHistory>.Given>(DemoJobs.Of("tractor")).Value;
        SheetInput input = Assert.IsType<Outcome<SheetInput>.Given>(SheetInput.Of(job, new DateOnly(2026, 11, 24), TestContext.Current.CancellationToken)).Value;

        string[] blocks = [.. RepairSheet.Pages(input).Where(page => page.Title.StartsWith("Repair", StringComparison.Ordinal)).SelectMany(page => page.Blocks).Select(block => block.Body)];

        Assert.Single(blocks, block => block.Contains("wire between groups 8 and 9 of 16: sense lead", StringComparison.Ordinal));
        Assert.Single(blocks, block => block.Contains("sense lead", StringComparison.Ordinal));
        Assert.Single(blocks, block => block.Contains("group 4 of 16: joint or link", StringComparison.Ordinal));
        Assert.Single(blocks, block => block.Contains("group 11 of 16: low capacity", StringComparison.Ordinal));
        Assert.All(blocks, block => Assert.Equal(block.Contains("wire between", StringComparison.Ordinal) ? 2 : 1, Regex.Count(block, "confirm the place")));
    }

    [Fact]
    public void Why_there_is_no_repair_sheet_blames_the_chemistry_only_where_it_is_unknown()
    {
        Job job = Assert.IsType<Outcome<JobHistory>.Given>(DemoJobs.Of("tractor")).Value.Now;
        SheetInput unjudged = new() { Job = job, Revision = 0, Date = new DateOnly(2026, 11, 24) };
        Sheet repair = SheetCatalogue.All.Single(sheet => sheet.Name == "repair");

        Assert.Contains("the log is not judged", repair.WhyNot(unjudged));
        Assert.Contains("chemistry", repair.WhyNot(unjudged with { Job = job with { Givens = JobGivens.None } }));
    }
}
