using System.Text.Json;
using PackPlanner.Tests.Formats.JobFiles;
using PackPlanner.Tests.Verbs;

namespace PackPlanner.Tests.Core.Fitting;

/// <summary>Cautions of a placement at what raises them, and just not one step before (common practice, no source).</summary>
public class FitCautionsTests
{
    [Theory]
    [InlineData(1, 2, "caution-25", false)]
    [InlineData(0, 2, "caution-25", true)]
    [InlineData(1, 0, "caution-25", true)]
    public void Boxes_need_room_to_swell(double spacerMm, double plateMm, string code, bool raises) =>
        Assert.Equal(raises, Codes(spacerMm, plateMm, ventPath: true, boxKg: 1).Contains(code));

    [Theory]
    [InlineData(true, false)]
    [InlineData(false, true)]
    public void Gas_needs_a_way_out(bool ventPath, bool raises) =>
        Assert.Equal(raises, Codes(1, 2, ventPath, boxKg: 1).Contains("caution-26"));

    // Four cells of 3.1 kg are 12.4 kg; what is heavy to lift begins above 25 kg.
    [Theory]
    [InlineData(12.5, false)]
    [InlineData(12.7, true)]
    public void A_pack_that_one_person_should_not_lift(double boxKg, bool raises) =>
        Assert.Equal(raises, Codes(1, 2, ventPath: true, boxKg).Contains("caution-27"));

    // Swelling, terminals that look sideways and a way out for gas are asked of boxes; a round cell has its own.
    [Fact]
    public void Round_cells_raise_none_of_the_cautions_of_boxes()
    {
        string[] codes = Codes("""
            { "cavity": { "parts": [ { "box": [0, 0, 0, 60, 60, 80] } ] },
              "cell": { "name": "round", "shape": "cylinder", "diameterMm": 21.2, "lengthMm": 70.2, "massG": 69.5, "chemistry": "NMC", "axes": ["z"] },
              "clearance": { "wallMm": 0, "endMm": 3, "cellGapMm": 0.8 },
              "pack": { "series": 2, "parallel": 2, "linkReachMm": 2 } }
            """);

        Assert.Contains("caution-18", codes);
        Assert.Contains("caution-20a", codes);
        Assert.DoesNotContain("caution-25", codes);
        Assert.DoesNotContain("caution-26", codes);
    }

    [Fact]
    public void One_cell_in_parallel_cannot_stand_the_wrong_way_round_in_its_group() => Assert.DoesNotContain("caution-20a", Codes(1, 2, ventPath: true, boxKg: 1));

    private static string[] Codes(double spacerMm, double plateMm, bool ventPath, double boxKg) => Codes(FormattableString.Invariant($$"""
            { "cavity": { "parts": [ { "box": [0, 0, 0, 200, 200, 250] } ] },
              "cell": { "name": "LFP 105", "shape": "box", "lengthMm": 130, "thicknessMm": 36, "heightMm": 200, "massG": 3100, "chemistry": "LFP" },
              "clearance": { "wallMm": {{plateMm}}, "plateMm": {{plateMm}}, "spacerMm": {{spacerMm}}, "terminalMm": 20 },
              "pack": { "series": 4, "parallel": 1, "linkReachMm": 5 },
              "parts": [ { "name": "box", "kg": {{boxKg}} } ], "ventPath": {{(ventPath ? "true" : "false")}} }
            """));

    private static string[] Codes(string fitCase)
    {
        using Folder folder = new();
        string file = folder.File("case.json");
        File.WriteAllText(file, fitCase);
        (int exitCode, JsonElement answer) = Planner.Json("fit", file, "--quick");
        Assert.Equal(0, exitCode);
        return [.. answer.GetProperty("cautions").EnumerateArray().Select(caution => caution.GetProperty("code").GetString()!)];
    }
}
