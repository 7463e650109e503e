using PackPlanner.Tests.House;

namespace PackPlanner.Tests.SampleData;

/// <summary>The invented files are what their generator makes; with ACCEPT_GOLDEN=1 they are written again.</summary>
public class SampleDataTests
{
    [Theory]
    [InlineData("trike/cells.csv")]
    [InlineData("tractor/ride-may.csv")]
    [InlineData("tractor/ride-october.csv")]
    public void An_invented_file_is_what_its_generator_makes(string name)
    {
        string made = name switch
        {
            "trike/cells.csv" => TrikeLot.Csv(),
            "tractor/ride-may.csv" => TractorRides.May(),
            _ => TractorRides.October(),
        };
        string file = Repository.At(["sample-data", .. name.Split('/')]);
        if (Environment.GetEnvironmentVariable("ACCEPT_GOLDEN") == "1")
            File.WriteAllText(file, made);

        Assert.Equal(made, File.ReadAllText(file).ReplaceLineEndings("\n"));
    }
}
