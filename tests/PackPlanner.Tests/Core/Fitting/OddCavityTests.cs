using System.Text.Json;

namespace PackPlanner.Tests.Core.Fitting;

public class OddCavityTests
{
    private const string Clear = "\"clearance\":{\"wallMm\":2,\"endMm\":6,\"cellGapMm\":0.6,\"layerGapMm\":8}";

    [Theory]
    [InlineData("frame", """{"prism":{"plane":"xz","outline":[[0,0],[420,0],[360,210],[40,180]],"from":0,"to":160}}""", "", "y", 13, 1.0)]
    [InlineData("frame with a seat tube", """{"prism":{"plane":"xz","outline":[[0,0],[300,0],[380,300],[60,260]],"from":0,"to":90}}""", """{"id":"seat tube","tube":{"from":[150,-5,120],"to":[190,95,140],"diameterMm":30}}""", "y", 14, 0.98)]
    [InlineData("inward corner", """{"prism":{"plane":"xy","outline":[[0,0],[400,0],[400,200],[280,200],[280,90],[120,90],[120,200],[0,200]],"from":0,"to":95}}""", "", "z", 14, 0.98)]
    [InlineData("two boxes as an L", """{"box":[0,0,0,300,120,90]},{"box":[0,0,0,120,260,90]}""", "", "z", 10, 0.98)]
    [InlineData("sloped floor", """{"prism":{"plane":"xz","outline":[[0,0],[400,60],[400,200],[0,170]],"from":0,"to":150}}""", "", "z", 10, 0.95)]
    [InlineData("lying across the frame", """{"prism":{"plane":"yz","outline":[[0,0],[200,0],[230,120],[100,190],[0,120]],"from":0,"to":170}}""", "", "x", 12, 0.98)]
    [InlineData("tube along the floor", """{"box":[0,0,0,300,160,170]}""", """{"tube":{"from":[-10,80,150],"to":[310,80,150],"diameterMm":34}}""", "z", 13, 0.95)]
    [InlineData("slanting tube through two layers", """{"box":[0,0,0,320,160,165]}""", """{"tube":{"from":[-10,20,0],"to":[330,140,165],"diameterMm":34}}""", "z", 13, 1.0)]
    public void Every_rule_holds_and_groups_are_nearly_as_large_as_the_count_allows(
        string name, string parts, string keepOuts, string axis, int series, double share)
    {
        Assert.NotEmpty(name);
        string text = $$$"""
            {"cavity":{"parts":[{{{parts}}}]},"keepOuts":[{{{keepOuts}}}],
             "cell":{"shape":"cylinder","diameterMm":18.6,"lengthMm":65.3,"massG":47,"axes":["{{{axis}}}"]},{{{Clear}}},
             "pack":{"series":{{{series}}},"linkReachMm":2}}
            """;
        (int exitCode, JsonElement answer) = FitRun.Checked(text, "--work", "4");

        int count = answer.GetProperty("count").GetInt32();
        Assert.Equal(0, exitCode);
        Assert.True(answer.GetProperty("parallel").GetInt32() >= Math.Floor(share * (count / series)));
        Assert.InRange(answer.GetProperty("links").GetProperty("busbarRatio").GetDouble(), 0.999, 1.15);
    }

    [Fact]
    public void A_tube_that_cuts_the_pack_in_two_is_bridged_by_one_cable()
    {
        const string Text = """
            {"cavity":{"parts":[{"box":[0,0,0,200,150,95]},{"box":[260,0,0,420,150,95]}]},
             "cell":{"shape":"cylinder","diameterMm":21.4,"lengthMm":70.6,"massG":70,"axes":["z"]},
             "clearance":{"wallMm":2,"endMm":6,"cellGapMm":0.6},"pack":{"series":10,"linkReachMm":2,"jumpersAllowed":1}}
            """;
        (int exitCode, JsonElement answer) = FitRun.Checked(Text, "--work", "4");
        (int without, JsonElement broken) = FitRun.Checked(Text.Replace("\"jumpersAllowed\":1", "\"jumpersAllowed\":0", StringComparison.Ordinal), "--work", "0");

        Assert.Equal(0, exitCode);
        Assert.Equal(1, answer.GetProperty("links").GetProperty("jumpers").GetArrayLength());
        // Without a cable the string has to stay in the larger room.
        Assert.Equal(0, without);
        Assert.True(broken.GetProperty("parallel").GetInt32() < answer.GetProperty("parallel").GetInt32());
    }
}
