using System.Globalization;
using System.Text;
using System.Text.Json;
using PackPlanner.Tests.Formats.JobFiles;

namespace PackPlanner.Tests.Verbs;

/// <summary>What files become in a job, and what the log of one cell becomes wherever cells are read.</summary>
public class JobAddingTests
{
    // A full cell at rest, then 2 A down to 3.0 V, 5,000 rows of one second: 4,900 s at 2 A are 2.722 Ah.
    private static string Log()
    {
        StringBuilder text = new("time_s,voltage_V,current_A\n");
        for (int s = 0; s < 5000; s++)
        {
            double current = s < 100 ? 0 : 2;
            double volts = s < 100 ? 4.18 : 4.1 - (1.1 * (s - 100) / 4899);
            text.Append(CultureInfo.InvariantCulture, $"{s},{volts:0.0000},{current:0.000}\n");
        }

        return text.ToString();
    }

    private static JsonElement Done(params string[] args)
    {
        (int exitCode, JsonElement answer) = Planner.Json(args);
        Assert.True(exitCode == 0, answer.ToString());
        return answer;
    }

    [Fact]
    public void The_log_of_one_cell_is_one_cell_of_a_job()
    {
        using Folder folder = new();
        string job = folder.File("trike.job.json");
        File.WriteAllText(folder.File("03.11.2026_K01.csv"), Log());
        File.WriteAllText(folder.File("03.11.2026_K02.csv"), Log());
        Done("job", "new", job, "chemistry=NMC");

        JsonElement added = Done("job", "add", job, folder.File("03.11.2026_K01.csv"), folder.File("03.11.2026_K02.csv"));

        Assert.Equal(2, added.GetProperty("counts").GetProperty("cells").GetInt32());
        Assert.Equal(10000, added.GetProperty("rowsUsed").GetInt32());
        Done("job", "export", job, "--into", folder.File("out"));
        string[] lines = File.ReadAllLines(folder.File("out/cells.csv"));
        Assert.Equal(["03.11.2026_K01", "03.11.2026_K02"], lines[1..].Select(line => line.Split(',')[0]));
        Assert.All(lines[1..], line => Assert.Equal(2.722, double.Parse(line.Split(',')[1], CultureInfo.InvariantCulture), 0.005));
    }

    [Theory]
    [InlineData("K01.csv", "K01")]
    [InlineData("03.11.2026_K01.csv", "03.11.2026_K01")]
    [InlineData("K1.2", "K1.2")]
    [InlineData("K7.TXT", "K7")]
    public void The_log_of_one_cell_is_labelled_after_its_file(string file, string label)
    {
        using Folder folder = new();
        File.WriteAllText(folder.File(file), Log());

        JsonElement cell = Assert.Single(Done("cells", folder.File(file)).GetProperty("cells").EnumerateArray());

        Assert.Equal(label, cell.GetProperty("cell").GetString());
        Assert.Equal(2.722, cell.GetProperty("capacityAh").GetDouble(), 0.005);
    }

    [Fact]
    public void The_log_of_one_cell_on_standard_input_is_one_cell()
    {
        (int exitCode, string output, _) = Planner.RunWithInput(Log(), "cells", "-", "--json");

        using JsonDocument answer = JsonDocument.Parse(output);
        Assert.Equal(0, exitCode);
        JsonElement cell = Assert.Single(answer.RootElement.GetProperty("cells").EnumerateArray());
        Assert.Equal(2.722, cell.GetProperty("capacityAh").GetDouble(), 0.005);
    }

    [Theory]
    [InlineData("""{"chemistry":"NMC","reserve":10}""", "field reserve", "is 10, and a share from 0 to 100 % was expected, written as 0 to 1")]
    [InlineData("""{"ratedAh":-5}""", "field ratedAh", "is -5, and it cannot be below zero")]
    [InlineData("""{"series":100000,"parallel":30000}""", "field series", "a whole number from 1 to 10000 was expected")]
    [InlineData("""{"parallel":2.5}""", "field parallel", "a whole number from 1 to 10000 was expected")]
    [InlineData("""{"temperatureDegC":400}""", "field temperatureDegC", "a temperature from -60 to 100 degC was expected")]
    public void Givens_from_a_file_are_held_to_the_range_of_typed_ones(string givens, string field, string why)
    {
        using Folder folder = new();
        string job = folder.File("trike.job.json");
        File.WriteAllText(folder.File("given.json"), givens);
        Done("job", "new", job);
        byte[] before = File.ReadAllBytes(job);

        (int exitCode, JsonElement error) = Planner.Json("job", "add", job, folder.File("given.json"));

        Assert.Equal((3, "bad-field"), (exitCode, error.GetProperty("code").GetString()));
        Assert.Contains(field, error.GetProperty("where").GetString(), StringComparison.Ordinal);
        Assert.Contains(why, error.GetProperty("message").GetString(), StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllBytes(job));
    }

    [Theory]
    [InlineData("""{"schema":"packplanner/energy","version":1,"series":13,"nominalV":3.6,"ratedAh":45.0,"nominalWh":2106}""", "packplanner energy")]
    [InlineData("""{"schema":"packplanner/cells","version":1,"repeatability":0.015,"cells":[],"counts":{}}""", "packplanner cells")]
    [InlineData("""{"schema":"packplanner/diagnose","version":1,"groups":[{"group":1,"capacityAh":{"value":9}}]}""", "packplanner diagnose")]
    [InlineData("""{"schema":"packplanner/size","version":1,"need":{}}""", "packplanner size")]
    public void An_answer_is_not_taken_for_what_the_user_knows(string answer, string named)
    {
        using Folder folder = new();
        string job = folder.File("trike.job.json");
        File.WriteAllText(folder.File("answer.json"), answer);
        Done("job", "new", job);
        byte[] before = File.ReadAllBytes(job);

        (int exitCode, JsonElement error) = Planner.Json("job", "add", job, folder.File("answer.json"));

        Assert.Equal(3, exitCode);
        Assert.Equal("answer-not-a-given", error.GetProperty("code").GetString());
        Assert.Contains(named, error.GetProperty("message").GetString(), StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllBytes(job));
    }
}
