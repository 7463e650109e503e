using System.Text.Json;
using PackPlanner.Tests.Verbs;

namespace PackPlanner.Tests.Core.Fitting;

public sealed class PlacedGroupsTests : IDisposable
{
    private const string Matched = """{"groups":[{"group":1,"cells":["A1","A2"],"capacityAh":5.0,"resistanceMilliohm":12},{"group":2,"cells":["B1","B2"],"capacityAh":5.1,"resistanceMilliohm":12},{"group":3,"cells":["C1","C2"],"capacityAh":5.2,"resistanceMilliohm":12}]}""";
    private const string Case = """
        {"cavity":{"parts":[{"box":[0,0,0,74,50,86]}]},"cell":{"name":"21700","shape":"cylinder","diameterMm":21.4,"lengthMm":70.6,"massG":70},
         "clearance":{"wallMm":2,"endMm":6,"cellGapMm":0.6},"pack":{"linkReachMm":2}}
        """;

    private readonly string folder = Directory.CreateTempSubdirectory().FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    private string Written(string name, string text)
    {
        string path = Path.Combine(folder, name);
        File.WriteAllText(path, text);
        return path;
    }

    private string Placed()
    {
        string groups = Written("groups.json", Matched), fitCase = Written("case.json", Case);
        (int exitCode, string output, string notes) = Planner.Run("fit", fitCase, "--groups", groups, "--json", "--work", "1");
        Assert.True(exitCode == 0, output + notes);
        return Written("fit.json", output);
    }

    [Fact]
    public void The_cells_of_each_group_go_to_the_places_of_that_group()
    {
        using JsonDocument answer = JsonDocument.Parse(File.ReadAllText(Placed()));

        Assert.Equal(3, answer.RootElement.GetProperty("series").GetInt32());
        Assert.Equal(2, answer.RootElement.GetProperty("parallel").GetInt32());
        JsonElement[] used = [.. answer.RootElement.GetProperty("cells").EnumerateArray().Where(c => c.GetProperty("group").ValueKind == JsonValueKind.Number)];
        Assert.Equal(["A1", "A2", "B1", "B2", "C1", "C2"], used.Select(c => c.GetProperty("label").GetString()!).Order());
        Assert.All(used, c => Assert.Equal("ABC"[c.GetProperty("group").GetInt32() - 1], c.GetProperty("label").GetString()![0]));
    }

    [Fact]
    public void A_case_that_asks_for_other_numbers_than_the_groups_is_refused()
    {
        string groups = Written("groups.json", Matched);
        (int exitCode, string output, _) = Planner.RunWithInput(Case.Replace("\"linkReachMm\"", "\"series\":4,\"linkReachMm\"", StringComparison.Ordinal), "fit", "-", "--groups", groups, "--json");

        Assert.Equal(3, exitCode);
        Assert.Contains("groups-contradict-case", output, StringComparison.Ordinal);
    }

    [Fact]
    public void Energy_takes_a_link_of_two_strips_as_half_of_one()
    {
        string fit = Placed(), groups = Path.Combine(folder, "groups.json");
        double strips = File.ReadAllText(fit) is { } text && JsonDocument.Parse(text).RootElement.GetProperty("links").GetProperty("pairs") is { } pairs
            ? pairs.EnumerateArray().Average(p => 1.0 / p.GetInt32()) : double.NaN;

        double Heat(params string[] more) => Planner.Json(["energy", groups, "--chemistry", "NMC", "--load", "10A", "--link", "2mohm", .. more])
            .Document.GetProperty("heatW").GetProperty("links").GetDouble();

        Assert.InRange(strips, 0.3, 0.99);
        Assert.Equal(strips, Heat("--places", fit) / Heat(), 6);
    }

    [Fact]
    public void Energy_refuses_places_of_another_pack()
    {
        string fit = Placed(), others = Written("others.json", """{"groups":[{"capacityAh":5},{"capacityAh":5}]}""");
        (int exitCode, string output, _) = Planner.Run("energy", others, "--chemistry", "NMC", "--link", "1mohm", "--places", fit, "--json");

        Assert.Equal(3, exitCode);
        Assert.Contains("places-of-another-pack", output, StringComparison.Ordinal);
    }

    [Fact]
    public void Share_says_what_an_answer_of_match_lacks()
    {
        (int exitCode, string output, _) = Planner.Run("share", Written("groups.json", """{"schema":"packplanner/match","groups":[{"group":1,"cells":["A1","A2"]}]}"""), "--load", "10A", "--json");

        Assert.Equal(3, exitCode);
        Assert.Contains("labels-only", output, StringComparison.Ordinal);
    }

    [Fact]
    public void Share_takes_the_cells_in_the_order_in_which_they_stand_and_refuses_a_cell_without_a_place()
    {
        string fit = Placed();
        const string Rows = "cell,group,resistance_mohm,rest_v\nA1,1,20,4.1\nA2,1,30,4.1\nB1,2,20,4.1\nB2,2,20,4.1\nC1,3,20,4.1\nC2,3,20,4.1\n";
        string table = Written("cells.csv", Rows), strange = Written("strange.csv", Rows.Replace("B2", "Z9", StringComparison.Ordinal));

        (int exitCode, JsonElement answer) = Planner.Json("share", table, "--load", "10A", "--link", "1mohm", "--places", fit, "--chemistry", "NMC");
        (int refused, string output, _) = Planner.Run("share", strange, "--load", "10A", "--link", "1mohm", "--places", fit, "--chemistry", "NMC", "--json");

        Assert.Equal(0, exitCode);
        Assert.Equal(3, answer.GetProperty("groups").GetArrayLength());
        // By hand: the two cells of a group stand at the nearest distance, so that each piece of bar is 1 milliohm, one on either bar; both
        // ways round the currents of A1 (20) and A2 (30) with take-offs at opposite ends are 10 x 31/52 and 10 x 21/52.
        JsonElement[] first = [.. answer.GetProperty("groups")[0].GetProperty("cells").EnumerateArray()];
        Assert.Equal(10 * 31.0 / 52, first.Single(c => c.GetProperty("cell").GetString() == "A1").GetProperty("currentA").GetDouble(), 3);
        // A table without groups, as it came from the tester, is grouped by the places; a spare without one is left out.
        string[] ungrouped = [.. (Rows + "S1,,20,4.1\n").Split('\n').Select(line => line.Split(',') is [var cell, _, var milliohm, var volts] ? $"{cell},{milliohm},{volts}" : line)];
        JsonElement same = Planner.Json("share", Written("tester.csv", string.Join('\n', ungrouped)), "--load", "10A", "--link", "1mohm", "--places", fit, "--chemistry", "NMC").Document;
        Assert.True(JsonElement.DeepEquals(answer.GetProperty("groups"), same.GetProperty("groups")));
        Assert.Contains("S1", same.GetProperty("understood").ToString(), StringComparison.Ordinal);
        Assert.Equal(3, refused);
        Assert.Contains("Z9 has no place", output, StringComparison.Ordinal);
    }
}
