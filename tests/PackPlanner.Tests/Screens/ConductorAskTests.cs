using PackPlanner.Core.Packs;

namespace PackPlanner.Tests.Screens;

/// <summary>What a link or cable loses, asked on a screen.</summary>
public class ConductorAskTests
{
    [Fact]
    public void A_strip_is_asked_by_metal_sizes_pieces_and_amperes_and_its_ohms_heat_caution_and_grounds_are_told()
    {
        using Bench bench = new();
        bench.OpenLot();
        bench.Set("steadyA", new PackPlanner.Core.Jobs.JobValue.Number(20));
        bench.Press("6", "k", "Enter");
        bench.Type("10 x 0.2 x 25");
        bench.Press("Enter");
        Assert.Contains("side by side  1", bench.Text());
        bench.Press("Enter");
        Assert.Contains("amperes  20", bench.Text());
        bench.Press("Enter");

        string shown = bench.Text(120, 36);

        // By hand: resistivity times 0.025 m over 2 mm2, times 20 A squared.
        double milliohm = Conductors.NickelOhmMm2PerM * 0.025 / 2 * 1000;
        Assert.Contains(milliohm.ToString("0.000", System.Globalization.CultureInfo.InvariantCulture)[..4], shown);
        Assert.Contains("of heat", shown);
        Assert.Contains("never final", shown);
        Assert.Matches(@"where from\s+Resistivity of nickel", shown);
    }

    [Fact]
    public void It_can_be_asked_where_the_links_are_too_and_by_its_command()
    {
        using Bench bench = new();
        bench.Desk.Store.Demo("trike");
        bench.Press("5", ":");
        bench.Type("link or cable");
        bench.Press("Enter", "Down", "Down", "Down", "Enter", "Down", "Enter");
        bench.Type("2000");
        bench.Press("Enter", "Enter", "Enter");

        // IEC 60228, flexible, 2.5 mm2: 7.98 ohm for a kilometre, so 15.96 milliohm for two metres.
        Assert.Contains("15.96 milliohm", bench.Text(120, 36));
    }

    [Theory]
    [InlineData("10 x 0.2", "3 figures")]
    [InlineData("10 x 0 x 25", "above zero")]
    [InlineData("ten x 0.2 x 25", "not a length")]
    public void Sizes_that_make_no_sense_are_refused(string typed, string why)
    {
        using Bench bench = new();
        bench.OpenLot();
        bench.Press("6", "k", "Enter");
        bench.Type(typed);
        bench.Press("Enter");

        Assert.Contains(why, bench.Desk.Says);
    }
}
