using System.Text.Json;
using PackPlanner.Formats;
using PackPlanner.Tests.Verbs;

namespace PackPlanner.Tests.Core.Fitting;

public class FitVerbTests
{
    internal const string Tray = """
        {"schema":"packplanner-fit-case","version":1,"id":"tray","cavity":{"parts":[{"box":[0,0,0,260,150,86]}]},"keepOuts":[],
         "cell":{"name":"21700","shape":"cylinder","diameterMm":21.4,"lengthMm":70.6,"massG":70,"axes":["z"]},
         "clearance":{"wallMm":2,"endMm":6,"cellGapMm":0.6,"layerGapMm":8},
         "pack":{"series":10,"parallel":null,"linkReachMm":2.0,"jumpersAllowed":0},"limits":{"cellMassKg":null}}
        """;

    internal const string Slope = """
        {"cavity":{"parts":[{"prism":{"plane":"xz","outline":[[0,0],[360,0],[360,220],[120,220]],"from":0,"to":200}}]},
         "cell":{"name":"LFP","shape":"box","lengthMm":130,"thicknessMm":36,"heightMm":140,"massG":1900,"poses":["upright"]},
         "clearance":{"wallMm":3,"plateMm":6,"terminalMm":22,"cellGapMm":2,"spacerMm":2},
         "pack":{"series":8,"parallel":null,"linkReachMm":5.0,"jumpersAllowed":0}}
        """;

    [Fact]
    public void A_tray_holds_at_least_its_regular_nest_and_its_groups_are_as_large_as_the_count_allows()
    {
        (int exitCode, JsonElement answer) = FitRun.Checked(Tray);

        int count = answer.GetProperty("count").GetInt32();
        Assert.Equal(0, exitCode);
        Assert.Equal(78, answer.GetProperty("regularCount").GetInt32());
        Assert.Equal(87, answer.GetProperty("bound").GetInt32());
        Assert.InRange(count, 78, 87);
        Assert.Equal(count / 10, answer.GetProperty("parallel").GetInt32());
        Assert.InRange(answer.GetProperty("links").GetProperty("busbarRatio").GetDouble(), 0.999, 1.05);
    }

    [Fact]
    public void Ten_large_boxes_stand_under_a_slope_and_eight_of_them_are_linked()
    {
        (int exitCode, JsonElement answer) = FitRun.Checked(Slope);

        Assert.Equal(0, exitCode);
        Assert.Equal(10, answer.GetProperty("count").GetInt32());
        Assert.Equal(1, answer.GetProperty("parallel").GetInt32());
    }

    [Fact]
    public void What_else_is_wrong_is_said_with_each_place()
    {
        string next = Planner.JsonWithInput(Tray.Replace("[0,0,0,260,150,86]", "[0,0,0,0,150,86]", StringComparison.Ordinal)
            .Replace("\"cellGapMm\":0.6", "\"cellGapMm\":-1", StringComparison.Ordinal), "fit", "-").Document.GetProperty("next").GetString()!;

        Assert.Matches(@"\(One more thing is wrong: [^:]+: [^)]+\.\)$", next);
    }

    [Theory]
    [InlineData("", "empty-file", "Export it again")]
    [InlineData("{\"cavity\":", "not-json", "docs/files.md")]
    public void A_case_that_is_no_case_is_refused_with_what_leads_on(string text, string code, string next)
    {
        (int exitCode, JsonElement error) = Planner.JsonWithInput(text, "fit", "-");

        Assert.Equal((ExitCodes.Input, code), (exitCode, error.GetProperty("code").GetString()));
        Assert.Contains(next, error.GetProperty("next").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_case_gives_the_same_bytes_twice()
    {
        string once = Planner.RunWithInput(Slope, "fit", "-", "--json", "--work", "3").Output;
        string again = Planner.RunWithInput(Slope, "fit", "-", "--json", "--work", "3").Output;

        Assert.Equal(once, again);
    }

    [Fact]
    public void A_cell_too_high_for_the_space_is_answered_with_the_axis_and_the_sum()
    {
        (int exitCode, JsonElement answer) = FitRun.Checked(Slope.Replace("\"heightMm\":140", "\"heightMm\":199", StringComparison.Ordinal));

        JsonElement reason = answer.GetProperty("reasons")[0];
        Assert.Equal(4, exitCode);
        Assert.Equal("z", reason.GetProperty("axis").GetString());
        // By hand: 199 + 22 + 3 - 220 = 4.
        Assert.Equal(4, reason.GetProperty("shortMm").GetDouble(), 6);
        Assert.Contains("199 mm of cell + 3 mm at -z + 22 mm at +z = 224 mm, the space is 220 mm", reason.GetProperty("text").GetString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\"box\":[0,0,0,260,150,86]", "\"prism\":{\"plane\":\"xy\",\"outline\":[[0,0],[100,100],[100,0],[0,100]],\"from\":0,\"to\":86}", "crosses")]
    [InlineData("\"box\":[0,0,0,260,150,86]", "\"box\":[0,0,0,260,0,86]", "no volume")]
    [InlineData("\"wallMm\":2", "\"wallMm\":-2", "below zero")]
    [InlineData("\"series\":10", "\"series\":0", "it is 0")]
    [InlineData("\"diameterMm\":21.4", "\"diameterMm\":0", "it is 0 mm")]
    [InlineData("\"axes\":[\"z\"]", "\"axes\":[]", "no direction")]
    [InlineData("\"cavity\"", "\"schema\":\"packplanner-fit-case\",\"version\":9,\"cavity\"", "file version 9, known here: 1")]
    public void A_case_that_contradicts_itself_is_refused_with_where_and_what_to_do(string from, string to, string why)
    {
        (int exitCode, string output, _) = Planner.RunWithInput(Tray.Replace(from, to, StringComparison.Ordinal), "fit", "-", "--json");

        using JsonDocument document = JsonDocument.Parse(output);
        Assert.Equal(3, exitCode);
        Assert.Equal("packplanner/error", document.RootElement.GetProperty("schema").GetString());
        Assert.Contains(why, document.RootElement.GetProperty("message").GetString(), StringComparison.Ordinal);
        Assert.NotEmpty(document.RootElement.GetProperty("next").GetString()!);
    }

    [Fact]
    public void Too_many_in_series_lists_what_fits_without_groups_and_says_how_much_longer_the_space_must_be()
    {
        (int exitCode, JsonElement answer) = FitRun.Checked(Tray.Replace("\"series\":10", "\"series\":100", StringComparison.Ordinal));

        Assert.Equal(4, exitCode);
        Assert.InRange(answer.GetProperty("count").GetInt32(), 78, 87);
        Assert.All(answer.GetProperty("cells").EnumerateArray(), c => Assert.Equal(JsonValueKind.Null, c.GetProperty("group").ValueKind));
        JsonElement reason = answer.GetProperty("reasons")[0];
        Assert.Equal("too-few-places", reason.GetProperty("code").GetString());
        Assert.InRange(reason.GetProperty("shortMm").GetDouble(), 1, 100);
    }

    [Fact]
    public void Keep_outs_that_eat_the_cavity_are_named()
    {
        (int exitCode, JsonElement answer) = FitRun.Checked(
            Tray.Replace("\"keepOuts\":[]", "\"keepOuts\":[{\"id\":\"motor\",\"box\":[10,-5,-5,250,155,90]}]", StringComparison.Ordinal));

        Assert.Equal(4, exitCode);
        Assert.Equal(0, answer.GetProperty("count").GetInt32());
        Assert.Contains("motor", answer.GetProperty("reasons")[0].GetProperty("change").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_mass_limit_lowers_the_number_in_parallel_and_keeps_the_spare_places()
    {
        (int exitCode, JsonElement answer) = FitRun.Checked(Tray.Replace("\"cellMassKg\":null", "\"cellMassKg\":3.0", StringComparison.Ordinal));

        // By hand: 3.0 kg hold 42 cells of 70 g, which are 4 in each of 10 groups.
        Assert.Equal(0, exitCode);
        Assert.Equal(4, answer.GetProperty("parallel").GetInt32());
        Assert.Equal(2.8, answer.GetProperty("cellMassKg").GetDouble(), 9);
        Assert.True(answer.GetProperty("count").GetInt32() >= 78);
    }

    [Fact]
    public void Weighed_parts_openings_boxes_and_taps_are_in_the_answer()
    {
        string text = Tray.Replace("\"massG\":70", "\"massG\":70,\"chemistry\":\"NMC\"", StringComparison.Ordinal)
            .Replace("\"limits\"", "\"boxes\":2,\"parts\":[{\"name\":\"box\",\"kg\":1.5,\"at\":[130,75,20]}],\"openings\":[{\"id\":\"lid\",\"plane\":\"+z\",\"rectangle\":[20,20,200,120]}],\"limits\"", StringComparison.Ordinal);
        (int exitCode, JsonElement answer) = FitRun.Checked(text);

        Assert.Equal(0, exitCode);
        Assert.Equal(answer.GetProperty("cellMassKg").GetDouble() + 1.5, answer.GetProperty("packMassKg").GetDouble(), 9);
        Assert.Equal(11, answer.GetProperty("taps").GetArrayLength());
        Assert.Equal(0, answer.GetProperty("taps")[0].GetProperty("nominalV").GetDouble());
        Assert.Equal(2, answer.GetProperty("boxes").GetArrayLength());
        JsonElement lid = answer.GetProperty("openings")[0];
        Assert.False(lid.GetProperty("packPasses").GetBoolean());
        Assert.True(lid.GetProperty("cellPasses").GetBoolean());
        Assert.Equal(answer.GetProperty("used").GetInt32(), lid.GetProperty("orderIn").GetArrayLength());
        Assert.DoesNotContain(0, lid.GetProperty("orderIn").EnumerateArray().Select(n => n.GetInt32()));
    }
}
