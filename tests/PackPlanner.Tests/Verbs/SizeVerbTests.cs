using System.Text.Json;
using PackPlanner.Tests.House;

namespace PackPlanner.Tests.Verbs;

/// <summary>
/// Whole sizing cases. The expected figures are by hand from the formulas of docs/methods/sizing.md: they catch
/// slips, not wrong physics; Outside/RoadLoadTests holds the checks against print.
/// </summary>
public class SizeVerbTests
{
    private const double HalfAPercent = 0.005;

    // By hand: 16 x 3.2 V x 72 Ah = 3686.4 Wh; x 0.9 usable x 0.85 aged x 0.9 left of the reserve x (1 - 32.765 A x
    // 13.6 mohm / 51.2 V) = 2516.0 Wh; 6000 W / 40 V = 150 A, capped by the controller's 140 A.
    [Theory]
    [InlineData("whPerKm", 33.551)]
    [InlineData("energyDeliveredWh", 2013.1)]
    [InlineData("energyNominalNeededWh", 2923.9)]
    [InlineData("seriesMin", 16)]
    [InlineData("seriesMax", 17)]
    [InlineData("voltageFullV", 58.4)]
    [InlineData("voltageCutoffV", 40.0)]
    [InlineData("peakCurrentA", 140)]
    [InlineData("continuousCurrentA", 32.765)]
    [InlineData("continuousCurrentLowA", 41.939)]
    [InlineData("packResistanceMilliohm", 13.6)]
    [InlineData("sagPeakV", 1.904)]
    [InlineData("heatPeakW", 266.6)]
    [InlineData("heatContinuousW", 14.6)]
    [InlineData("cRatePeak", 1.944)]
    [InlineData("energyNominalWh", 3686.4)]
    [InlineData("energyUsableWh", 2516.0)]
    [InlineData("rangeKm", 74.99)]
    [InlineData("cellMassKg", 30.4)]
    [InlineData("packMassKg", 38.0)]
    [InlineData("chargeHours", 5.3)]
    [InlineData("shortCircuitA", 4294)]
    [InlineData("fuseMinA", 52.42)]
    [InlineData("topSpeedByMotorKmh", 60.45)]
    [InlineData("topSpeedByPowerKmh", 81.90)]
    public void Sixteen_large_cells_give_the_figures_of_the_hand_sum(string key, double expected) =>
        Assert.Equal(expected, Design("lfp-16s").GetProperty(key).GetDouble(), Math.Max(0.01, HalfAPercent * expected));

    [Theory]
    [InlineData("parallel", 6)]
    [InlineData("parallelForEnergy", 6)]
    [InlineData("parallelForPeakCurrent", 3)]
    [InlineData("parallelForContinuousCurrent", 2)]
    [InlineData("cells", 78)]
    [InlineData("energyUsableWh", 962.06)]
    [InlineData("rangeKm", 68.72)]
    [InlineData("packResistanceMilliohm", 47)]
    [InlineData("sagPeakV", 1.645)]
    [InlineData("packMassKg", 7.098)]
    [InlineData("chargeHours", 8.0)]
    [InlineData("fuseMinA", 11.22)]
    public void Small_cells_with_S_and_P_open_give_the_figures_of_the_hand_sum(string key, double expected) =>
        Assert.Equal(expected, Design("nmc-13s").GetProperty(key).GetDouble(), Math.Max(0.01, HalfAPercent * expected));

    [Theory]
    [InlineData("peakCurrentA", 150)]
    [InlineData("packResistanceMilliohm", 21.6)]
    [InlineData("energyUsableWh", 1219.9)]
    [InlineData("rangeKm", 29.05)]
    [InlineData("continuousCurrentLowA", 38.182)]
    [InlineData("fuseMinA", 47.73)]
    [InlineData("shortCircuitA", 2852)]
    public void Titanate_cells_give_the_figures_of_the_hand_sum(string key, double expected) =>
        Assert.Equal(expected, Design("lto-22s").GetProperty(key).GetDouble(), Math.Max(0.01, HalfAPercent * expected));

    [Fact]
    public void Limits_that_are_broken_are_named_and_raise_their_cautions()
    {
        (int exitCode, JsonElement answer) = Planner.Json("size", Repository.Data("sizing", "lto-22s.json"));

        Assert.Equal(0, exitCode);
        string?[] broken = [.. answer.GetProperty("design").GetProperty("limitsBroken").EnumerateArray().Select(code => code.GetString())];
        Assert.Contains("fuse-breaking", broken);
        Assert.Contains("touch-voltage", broken);
        Assert.Contains(answer.GetProperty("cautions").EnumerateArray(), caution => caution.GetProperty("code").GetString() == "caution-09");
    }

    [Fact]
    public void What_hangs_on_a_missing_input_is_null_and_named_not_checked()
    {
        JsonElement design = SizeAnswers.DesignOf("""
            {"cell":{"nominalV":3.6,"fullV":4.2,"cutoffV":3.0,"capacityAh":5},"pack":{"series":13,"parallel":4},
             "need":{"whPerKm":14,"rangeKm":30},"electrics":{"controllerMaxV":60}}
            """);

        Assert.Equal(JsonValueKind.Null, design.GetProperty("energyUsableWh").ValueKind);
        Assert.Equal(JsonValueKind.Null, design.GetProperty("packMassKg").ValueKind);
        Assert.Contains("range-short", design.GetProperty("notChecked").EnumerateArray().Select(code => code.GetString()));
        Assert.Equal(13 * 3.6 * 20, design.GetProperty("energyNominalWh").GetDouble(), 1e-9);
    }

    [Fact]
    public void Two_limits_that_contradict_each_other_are_named_with_exit_4()
    {
        (int exitCode, string output, _) = Planner.RunWithInput("""
            {"cell":{"nominalV":3.6,"fullV":4.2,"cutoffV":3.0,"capacityAh":5},"electrics":{"controllerMaxV":30,"controllerMinV":28}}
            """, "size", "-", "--json");

        using JsonDocument answer = JsonDocument.Parse(output);
        Assert.Equal(4, exitCode);
        Assert.Equal(JsonValueKind.Null, answer.RootElement.GetProperty("design").ValueKind);
        Assert.Equal("controller-window", answer.RootElement.GetProperty("reasons")[0].GetProperty("code").GetString());
    }

    [Theory]
    [InlineData("""{"cell":{"nominalV":"3.6"}}""", "cell.nominalV")]
    [InlineData("""{"cell":{"nominalV":3.6,"fullV":4.2,"cutoffV":3.0},"pack":{"series":0}}""", "pack.series")]
    [InlineData("""{"cell":{"nominalV":3.6,"fullV":3.2,"cutoffV":3.0}}""", "cell")]
    [InlineData("""{"need":{}}""", "cell")]
    [InlineData("""{"cell":{"chemistry":"XYZ"}}""", "cell.chemistry")]
    [InlineData("[1]", "-")]
    [InlineData("{", "line 1")]
    public void A_wrong_field_is_named_with_its_place(string json, string place)
    {
        (int exitCode, string output, _) = Planner.RunWithInput(json, "size", "-", "--json");

        using JsonDocument error = JsonDocument.Parse(output);
        Assert.Equal(3, exitCode);
        Assert.Equal("packplanner/error", error.RootElement.GetProperty("schema").GetString());
        Assert.Contains(place, error.RootElement.GetProperty("where").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_case_that_is_not_text_is_refused()
    {
        string file = Path.GetTempFileName();
        try
        {
            File.WriteAllBytes(file, [.. "{\"cell\":{\"name\":\""u8, 0xFF, 0xC3, .. "\"}}"u8]);
            (int exitCode, JsonElement error) = Planner.Json("size", file);
            Assert.Equal(3, exitCode);
            Assert.Equal("not-utf8", error.GetProperty("code").GetString());
        }
        finally
        {
            File.Delete(file);
        }
    }

    [Fact]
    public void Several_models_are_compared_and_none_on_the_list_is_beaten_by_another()
    {
        (int exitCode, string output, _) = Planner.RunWithInput("""
            {"cells":[{"name":"small","nominalV":3.6,"fullV":4.2,"cutoffV":3.0,"capacityAh":2.5,"massG":46,"resistanceMilliohm":30},
                      {"name":"large","nominalV":3.6,"fullV":4.2,"cutoffV":3.0,"capacityAh":5.0,"massG":70,"resistanceMilliohm":18}],
             "pack":{"overheadFraction":0.3},"need":{"whPerKm":14,"speedKmh":22,"rangeKm":40},
             "electrics":{"controllerMaxV":60,"controllerMinV":36,"linkResistanceMilliohm":8}}
            """, "size", "-", "--json");

        using JsonDocument answer = JsonDocument.Parse(output);
        JsonElement[] options = [.. answer.RootElement.GetProperty("options").EnumerateArray()];
        Assert.Equal(0, exitCode);
        Assert.True(options.Length >= 2);
        Assert.True(JsonElement.DeepEquals(options[0], answer.RootElement.GetProperty("design")));
        foreach (JsonElement option in options)
            Assert.DoesNotContain(options, other =>
                other.GetProperty("packMassKg").GetDouble() < option.GetProperty("packMassKg").GetDouble()
                && other.GetProperty("rangeKm").GetDouble() > option.GetProperty("rangeKm").GetDouble()
                && other.GetProperty("marginControllerMaxV").GetDouble() > option.GetProperty("marginControllerMaxV").GetDouble()
                && other.GetProperty("marginControllerMinV").GetDouble() > option.GetProperty("marginControllerMinV").GetDouble());
    }

    private static JsonElement Design(string name)
    {
        (int exitCode, JsonElement answer) = Planner.Json("size", Repository.Data("sizing", $"{name}.json"));
        Assert.Equal(0, exitCode);
        return answer.GetProperty("design");
    }

    // By hand: 14 x 4.2 V over 14 x 2 / 0.7 milliohm are 1470 A, at the first instant twice that.
    [Theory]
    [InlineData(2000, true)]
    [InlineData(3000, false)]
    public void A_fuse_that_breaks_less_than_the_first_instant_is_warned_of(double breaksA, bool warned)
    {
        JsonElement answer = SizeAnswers.Of(FormattableString.Invariant($$$"""
            {"cell":{"chemistry":"NMC","nominalV":3.6,"fullV":4.2,"cutoffV":3.0,"capacityAh":5,"resistanceMilliohm":20},"pack":{"series":14,"parallel":7},
             "need":{"whPerKm":14,"rangeKm":30,"chargeTemperatureC":-5},"electrics":{"fuseBreakingA":{{{breaksA}}},"fuseA":40,"linkResistanceMilliohm":0}}
            """));

        Assert.Equal(1470, answer.GetProperty("design").GetProperty("shortCircuitA").GetDouble(), tolerance: 0.5);
        Assert.DoesNotContain("fuse-breaking", answer.GetProperty("design").GetProperty("limitsBroken").EnumerateArray().Select(code => code.GetString()));
        Assert.Equal(warned, Said("caution-21", "the fuse breaks 2000 A"));
        // The data sheet's figure is missing, so nothing is judged; what is usual is said all the same.
        Assert.Contains("charge-too-cold", answer.GetProperty("design").GetProperty("notChecked").EnumerateArray().Select(code => code.GetString()));
        Assert.True(Said("caution-11", "usually charged from 0 °C on"));

        bool Said(string code, string words) => answer.GetProperty("cautions").EnumerateArray().Any(caution =>
            caution.GetProperty("code").GetString() == code && caution.GetProperty("saw").GetString()!.Contains(words, StringComparison.Ordinal));
    }
}
