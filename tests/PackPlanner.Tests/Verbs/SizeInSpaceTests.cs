using System.Text.Json;

namespace PackPlanner.Tests.Verbs;

/// <summary>Sizing with a space given: what goes in bounds the choice.</summary>
public class SizeInSpaceTests
{
    [Fact]
    public void A_space_brings_a_choice_down_to_what_really_goes_in()
    {
        // By hand: 260 x 150 mm takes 78 cells in a staggered nest, so ten groups of seven or eight, never of ten.
        JsonElement design = SizeAnswers.DesignOf("""
            {"cell":{"shape":"cylinder","diameterMm":21.4,"lengthMm":70.6,"axes":["z"],"nominalV":3.6,"fullV":4.2,"cutoffV":3.0,"capacityAh":5,"massG":70,"resistanceMilliohm":18},
             "pack":{"series":10,"parallel":10,"linkReachMm":2},"need":{"whPerKm":14,"speedKmh":25,"rangeKm":10},"electrics":{"linkResistanceMilliohm":4},
             "cavity":{"parts":[{"box":[0,0,0,260,150,86]}]},"clearance":{"wallMm":2,"endMm":6,"cellGapMm":0.6,"layerGapMm":8}}
            """);

        Assert.InRange(design.GetProperty("places").GetInt32(), 70, 87);
        Assert.Equal(design.GetProperty("places").GetInt32() / 10, design.GetProperty("parallel").GetInt32());
        Assert.Equal("places", design.GetProperty("binding").GetProperty("limit").GetString());
        Assert.Equal(10, design.GetProperty("binding").GetProperty("withoutParallel").GetInt32());
    }

    // Two models without a name: the large one takes few places, the small one many.
    [Fact]
    public void Unnamed_models_keep_their_own_body_in_the_space()
    {
        string Need(string cells, string wall = "wallMm") => $$$"""
            {"cells":[{{{cells}}}],
             "pack":{"series":4,"parallel":40,"linkReachMm":2},"need":{"whPerKm":14,"speedKmh":25,"rangeKm":10},"electrics":{"linkResistanceMilliohm":4},
             "cavity":{"parts":[{"box":[0,0,0,260,150,86]}]},"clearance":{"{{{wall}}}":2,"endMm":6,"cellGapMm":0.6,"layerGapMm":8}}
            """;
        string Cell(string name, double diameterMm, double ah) => FormattableString.Invariant(
            $"{{{name}\"shape\":\"cylinder\",\"diameterMm\":{diameterMm},\"lengthMm\":70.6,\"axes\":[\"z\"],\"nominalV\":3.6,\"fullV\":4.2,\"cutoffV\":3.0,\"capacityAh\":{ah},\"massG\":70,\"resistanceMilliohm\":18}}");
        int[] Places(string cells) => [.. SizeAnswers.Of(Need(cells)).GetProperty("options").EnumerateArray().Select(option => option.GetProperty("places").GetInt32())];

        int[] unnamed = Places($"{Cell("", 40, 25)},{Cell("", 21.4, 5)}");

        Assert.NotEmpty(unnamed);
        Assert.Equal(Places($"{Cell("\"name\":\"large\",", 40, 25)},{Cell("\"name\":\"small\",", 21.4, 5)}"), unnamed);
        Assert.Contains(SizeAnswers.Of(Need(Cell("", 40, 25), "wallCm")).GetProperty("understood").EnumerateArray(),
            line => line.GetString()!.StartsWith("Field clearance.wallCm is not known", StringComparison.Ordinal));
    }

    [Fact]
    public void Stopped_at_once_it_tries_one_choice_in_the_space_and_names_those_left_out()
    {
        const string Need = """
            {"cells":[{"name":"a","shape":"cylinder","diameterMm":21.4,"lengthMm":70.6,"axes":["z"],"nominalV":3.6,"fullV":4.2,"cutoffV":3.0,"capacityAh":5,"massG":70,"resistanceMilliohm":18}],
             "pack":{"linkReachMm":2},"need":{"whPerKm":14,"speedKmh":25,"rangeKm":10},"electrics":{"controllerMaxV":60,"controllerMinV":30,"linkResistanceMilliohm":4},
             "cavity":{"parts":[{"box":[0,0,0,260,150,86]}]},"clearance":{"wallMm":2,"endMm":6,"cellGapMm":0.6,"layerGapMm":8}}
            """;

        (int exitCode, string output, _) = Planner.RunWithInput(Need, "size", "-", "--json", "--time-limit", "0s");

        using JsonDocument answer = JsonDocument.Parse(output);
        Assert.Equal(0, exitCode);
        Assert.Equal("time-limit", answer.RootElement.GetProperty("stoppedBy").GetString());
        Assert.Equal(10, answer.RootElement.GetProperty("design").GetProperty("series").GetInt32());
        Assert.Contains("a, 14 in series", answer.RootElement.GetProperty("understood").EnumerateArray().Last().GetString(), StringComparison.Ordinal);
    }
}
