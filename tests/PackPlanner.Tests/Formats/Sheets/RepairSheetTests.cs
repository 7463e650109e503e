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
}
