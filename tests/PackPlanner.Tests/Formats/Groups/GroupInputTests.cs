using System.Text;
using PackPlanner.Formats;
using PackPlanner.Formats.Groups;
using PackPlanner.Formats.Tables;
using PackPlanner.Tests.House;

namespace PackPlanner.Tests.Formats.Groups;

public class GroupInputTests
{
    // The rows of a log are moments, not groups of a pack.
    [Theory]
    [InlineData("packplanner cells", "tests/PackPlanner.Tests/Data/cell-2013/cell-discharge-bitrode-1c.csv.gz")]
    [InlineData("packplanner diagnose", "sample-data/tractor/ride-may.csv")]
    public void A_log_is_refused_and_the_verb_that_reads_it_is_named(string verb, string log)
    {
        Refusal why = Assert.IsType<Outcome<GroupInput>.Refused>(GroupInput.Open([Repository.At(log)], new ReadOptions())).Why;

        Assert.Equal("log-not-groups", why.Code);
        Assert.Contains(verb, why.Problem.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void A_table_on_standard_input_is_read_row_by_row()
    {
        const string Typed = "group,capacityAh,resistanceMilliohm\n1,10,5\n2,9.5,5\n";
        GroupInput read = Assert.IsType<Outcome<GroupInput>.Given>(GroupInput.Open(["-"], new ReadOptions { StandardInput = () => new MemoryStream(Encoding.UTF8.GetBytes(Typed)) })).Value;

        Assert.Equal([10.0, 9.5], read.Rows.Select(row => row.CapacityAh));
    }
}
