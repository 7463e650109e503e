using System.Text.Json.Nodes;
using PackPlanner.Tests.Formats.JobFiles;

namespace PackPlanner.Tests.Verbs;

/// <summary>What a need lacks is named beside the figure that is then not known.</summary>
public class SizeGapsTests
{
    private const string Need =
        """
        {"cell":{"chemistry":"NMC","nominalV":3.6,"fullV":4.2,"cutoffV":3.0,"capacityAh":4.8,"massG":70,"resistanceMilliohm":20,"continuousDischargeA":10},
        "pack":{"overheadFraction":0.3},"need":{"whPerKm":22,"speedKmh":30,"rangeKm":70,"reserve":0.1},
        "electrics":{"controllerMaxV":60,"controllerMinV":42,"linkResistanceMilliohm":8}}
        """;

    // By hand: 70 km x 22 Wh/km / 0.9 are 1711 Wh; 14 x 3.6 V x 4.8 Ah are 241.9 Wh for each cell in parallel: 7.07, so eight.
    [Theory]
    [InlineData("electrics.linkResistanceMilliohm", "Usable energy is not known without electrics.linkResistanceMilliohm (--leads), so that nothing is held to 70 km; by the label alone 8 in parallel are the least that it takes.")]
    [InlineData("cell.resistanceMilliohm", "Usable energy is not known without cell.resistanceMilliohm (--cell-resistance), so that nothing is held to 70 km; by the label alone 8 in parallel are the least that it takes.")]
    [InlineData("need.speedKmh", "Usable energy is not known without need.continuousPowerW (--continuous), or whPerKm and speedKmh (--use, --speed), so that nothing is held to 70 km; by the label alone 8 in parallel are the least that it takes.")]
    [InlineData("cell.capacityAh", "Usable energy is not known without cell.capacityAh (--rated-ah), so that nothing is held to 70 km.")]
    [InlineData("pack.overheadFraction", "The pack's mass is not known without pack.overheadFraction (--overhead); the cells alone weigh 7.8 kg.")]
    [InlineData("cell.massG", "The pack's mass is not known without cell.massG (--cell-mass).")]
    public void A_field_that_is_missing_is_named(string field, string says)
    {
        JsonObject need = JsonNode.Parse(Need)!.AsObject();
        string[] path = field.Split('.');
        need[path[0]]!.AsObject().Remove(path[1]);

        Assert.Equal([says], Understood(need));
    }

    [Fact]
    public void A_whole_need_lacks_nothing_and_the_words_divide()
    {
        JsonObject need = JsonNode.Parse(Need)!.AsObject();

        Assert.Empty(Understood(need));
        // 22 Wh/km x 30 km/h are 660 W: 13.1 A at 50.4 V, 15.7 A at the 42 V of nearly empty, a part of eight each.
        Assert.Contains("- peak, 13.1 continuous, 15.7 when nearly empty; a cell - and at most 2", Words(need), StringComparison.Ordinal);
        need["pack"]!["overheadFraction"] = null;
        Assert.Contains("km, cells 7.8 kg.", Words(need), StringComparison.Ordinal);
    }

    [Fact]
    public void A_choice_that_breaks_a_limit_says_so_in_the_list()
    {
        JsonObject need = JsonNode.Parse(Need)!.AsObject();
        need["electrics"]!["controllerMinV"] = 36;
        need["limits"] = new JsonObject { ["packMassKg"] = 9 };

        string[] choices = [.. Words(need).Split('\n').SkipWhile(line => !line.StartsWith("choices", StringComparison.Ordinal)).Skip(1).TakeWhile(line => line.StartsWith(' '))];

        Assert.NotEmpty(choices);
        Assert.All(choices, line => Assert.Contains("; breaks mass-over", line, StringComparison.Ordinal));
    }

    private static string[] Understood(JsonObject need)
    {
        using Folder folder = new();
        File.WriteAllText(folder.File("need.json"), need.ToJsonString());
        return [.. Planner.Json("size", folder.File("need.json")).Document.GetProperty("understood").EnumerateArray().Select(line => line.GetString()!)];
    }

    private static string Words(JsonObject need)
    {
        using Folder folder = new();
        File.WriteAllText(folder.File("need.json"), need.ToJsonString());
        return Planner.Run("size", folder.File("need.json")).Output;
    }
}
