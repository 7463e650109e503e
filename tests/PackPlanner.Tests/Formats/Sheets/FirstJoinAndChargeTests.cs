using System.Globalization;
using System.Text.RegularExpressions;
using PackPlanner.Tests.Formats.JobFiles;
using PackPlanner.Tests.Verbs;

namespace PackPlanner.Tests.Formats.Sheets;

/// <summary>Sheets hold to what their own cautions and columns ask: the cold of the first charge, and cells that are brought to volts alone.</summary>
public class FirstJoinAndChargeTests
{
    // By hand: half of 0.5C of the smaller group's 9.8 Ah is 2.45 A; NMC at 8 degC takes 0.2 A for each Ah, 1.96 A, and below nought nothing.
    [Theory]
    [InlineData("", "2.5", "half of 0.5C")]
    [InlineData("temperatureDegC=8", "2.0", "cells at 8 &#176;C")]
    [InlineData("temperatureDegC=8 chargeTemperatureDegC=20", "2.5", "half of 0.5C")]
    [InlineData("chargeTemperatureDegC=-3", "0.0", "cells at -3 &#176;C")]
    [InlineData("temperatureDegC=8 chargerA=1.5", "1.5", "your charger")]
    [InlineData("temperatureDegC=8 chargerA=9", "2.0", "cells at 8 &#176;C")]
    [InlineData("cellChargeA=1.2", "1.2", "half of the cells")]
    public void The_first_charge_is_held_to_the_least_of_charger_cells_and_cold(string givens, string amperes, string from)
    {
        string sheet = Sheet("first-charge", "A,5,20,3.6\nB,5,20,3.6\nC,4.9,20,3.6\nD,4.9,20,3.6\n", givens);

        Match row = Regex.Match(sheet, "first charge at most</td><td[^>]*>(.*?) A</td><td[^>]*>(.*?)</td>");
        Assert.True(row.Success);
        Assert.Equal(amperes, Regex.Replace(row.Groups[1].Value, "<[^>]*>", ""));
        Assert.StartsWith(from, row.Groups[2].Value, StringComparison.Ordinal);
    }

    // By hand: D lies 0.3 V below three cells at 3.6 V and may take 2.5 A, but 0.3 V / (20 + 20/3 milliohm) is 11 A: it is brought to 3.6 V, and so the group rests there, not at 3.525 V.
    [Theory]
    [InlineData(3.3, 3.60)]
    [InlineData(3.59, 3.60)]
    public void A_group_is_expected_where_its_cells_are_brought(double lowV, double expectedV)
    {
        string low = lowV.ToString(CultureInfo.InvariantCulture);
        string sheet = Sheet("links", $"A,5,20,3.6\nB,5,20,3.6\nC,5,20,3.6\nD,5,20,{low}\n", "series=1 parallel=4");

        Match row = Regex.Match(sheet, "data-head=\"expect V\"[^>]*>(.*?)</td>");
        Assert.True(row.Success);
        Assert.Equal(expectedV, double.Parse(Regex.Replace(row.Groups[1].Value, "<[^>]*>", ""), CultureInfo.InvariantCulture), tolerance: 0.011);
        Assert.Equal(lowV < 3.5, sheet.Contains("bring first, alone\">D to <b class=\"num\">3.60 V</b></td>", StringComparison.Ordinal));
    }

    private static string Sheet(string name, string cells, string givens)
    {
        using Folder folder = new();
        string job = folder.File("a.job.json"), table = folder.File("cells.csv");
        File.WriteAllText(table, "label,capacity_Ah,resistance_mohm,rest_V\n" + cells);
        Assert.Equal(0, Planner.Run(["job", "new", job, "chemistry=NMC", "series=2", "parallel=2", "ratedAh=5", .. givens.Split(' ', StringSplitOptions.RemoveEmptyEntries)]).ExitCode);
        Assert.Equal(0, Planner.Run("job", "add", job, table).ExitCode);
        (int exitCode, string output, _) = Planner.Run("sheet", job, name, "--into", folder.File("out"));
        Assert.True(exitCode == 0, output);
        return File.ReadAllText(folder.File($"out/{name}.html"));
    }
}
