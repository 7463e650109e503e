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
        JsonElement design = DesignOf("""
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

    [Fact]
    public void A_space_brings_a_choice_down_to_what_really_goes_in()
    {
        // By hand: 260 x 150 mm takes 78 cells in a staggered nest, so ten groups of seven or eight, never of ten.
        JsonElement design = DesignOf("""
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
        int[] Places(string cells) => [.. AnswerOf(Need(cells)).GetProperty("options").EnumerateArray().Select(option => option.GetProperty("places").GetInt32())];

        int[] unnamed = Places($"{Cell("", 40, 25)},{Cell("", 21.4, 5)}");

        Assert.NotEmpty(unnamed);
        Assert.Equal(Places($"{Cell("\"name\":\"large\",", 40, 25)},{Cell("\"name\":\"small\",", 21.4, 5)}"), unnamed);
        Assert.Contains(AnswerOf(Need(Cell("", 40, 25), "wallCm")).GetProperty("understood").EnumerateArray(),
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

    [Fact]
    public void The_same_need_typed_as_options_gives_the_same_bytes_as_the_file()
    {
        string[] options =
        [
            "--chemistry", "LFP", "--nominal-v", "3.2", "--full-v", "3.65V", "--empty-v", "2500mV", "--rated-ah", "72", "--cell-mass", "1.9kg",
            "--cell-resistance", "0.6mohm", "--discharge-rating", "72A", "--peak-rating", "216A", "--charge-rating", "36A", "--parallel", "1",
            "--overhead", "25%", "--mass", "190kg", "--cda", "0.6", "--crr", "0.014", "--speed", "50km/h", "--efficiency", "82%", "--aux", "35W",
            "--range", "60km", "--peak", "6kW", "--reserve", "10%", "--usable", "90%", "--ageing", "85%", "--derate", "90%",
            "--pack-empty-v", "38V", "--controller-max-v", "63V", "--controller-max-a", "140A", "--charger-v", "58.4V", "--charger", "15A",
            "--leads", "4mohm", "--fuse", "120A", "--fuse-v", "80V", "--fuse-breaking", "5kA", "--motor-kv", "52", "--motor-loaded", "88%",
            "--gear", "4", "--wheel", "1720mm", "--max-mass", "40kg", "--json",
        ];
        (int exitCode, string typed, _) = Planner.Run(["size", .. options]);

        Assert.Equal(0, exitCode);
        Assert.Equal(Planner.Run("size", Repository.Data("sizing", "lfp-16s.json"), "--json").Output, typed);
    }

    [Theory]
    [InlineData("--charger-v", "1e12V")]
    [InlineData("--controller-max-v", "60000V")]
    [InlineData("--peak", "1e300W")]
    public void A_figure_that_no_vehicle_has_is_refused_and_not_counted_up_to(string option, string typed)
    {
        (int exitCode, JsonElement error) = Planner.Json("size", "--chemistry", "NMC", option, typed);

        Assert.Equal(2, exitCode);
        Assert.Equal(option, error.GetProperty("where").GetString());
    }

    // By hand: 16 x 3.65 V is full at 58.4 V; 36 A is what its one cell in parallel takes.
    [Theory]
    [InlineData("--charger-v", "58.6V", null)]
    [InlineData("--charger-v", "60V", "caution-32")]
    [InlineData("--charger", "36A", null)]
    [InlineData("--charger", "37A", "caution-32")]
    [InlineData("--controller-max-v", "58.4V", null)]
    [InlineData("--controller-max-v", "58V", "caution-31")]
    public void What_does_not_suit_the_pack_is_a_caution(string option, string typed, string? code)
    {
        (_, JsonElement answer) = Planner.Json("size", Repository.Data("sizing", "lfp-16s.json"), option, typed, "--series", "16");
        string?[] raised = [.. answer.GetProperty("cautions").EnumerateArray().Select(caution => caution.GetProperty("code").GetString())];

        Assert.Equal(code is null ? [] : [code], raised.Where(one => one is "caution-31" or "caution-32"));
    }

    [Fact]
    public void An_option_wins_over_the_field_of_the_file()
    {
        (_, JsonElement answer) = Planner.Json("size", Repository.Data("sizing", "lfp-16s.json"), "--fuse", "40A", "--max-mass", "30kg");

        string?[] broken = [.. answer.GetProperty("design").GetProperty("limitsBroken").EnumerateArray().Select(code => code.GetString())];
        Assert.Contains("fuse-too-small", broken);
        Assert.Contains("mass-over", broken);
    }

    [Theory]
    [InlineData("--usable", "120%")]
    [InlineData("--series", "2.5")]
    [InlineData("--range", "40kg")]
    [InlineData("--gear", "four")]
    public void A_wrong_figure_is_named_by_its_option(string option, string typed)
    {
        (int exitCode, JsonElement error) = Planner.Json("size", "--chemistry", "NMC", option, typed);

        Assert.Equal(2, exitCode);
        Assert.Equal(option, error.GetProperty("where").GetString());
    }

    private static JsonElement Design(string name)
    {
        (int exitCode, JsonElement answer) = Planner.Json("size", Repository.Data("sizing", $"{name}.json"));
        Assert.Equal(0, exitCode);
        return answer.GetProperty("design");
    }

    private static JsonElement DesignOf(string json) => AnswerOf(json).GetProperty("design");

    private static JsonElement AnswerOf(string json)
    {
        using JsonDocument answer = JsonDocument.Parse(Planner.RunWithInput(json, "size", "-", "--json").Output);
        return answer.RootElement.Clone();
    }

    // One cell of 4.2 V does not go on a controller of 4 V.
    [Fact]
    public void A_controller_below_one_cell_is_an_answer()
    {
        (int exitCode, JsonElement answer) = Planner.Json("size", "--chemistry", "NMC", "--rated-ah", "5Ah", "--controller-max-v", "4V");

        Assert.Equal(4, exitCode);
        Assert.Contains("the controller bears 4 V", answer.GetProperty("reasons")[0].GetProperty("text").GetString(), StringComparison.Ordinal);
    }

    // By hand: 14 x 4.2 V over 14 x 2 / 0.7 milliohm are 1470 A, at the first instant twice that.
    [Theory]
    [InlineData(2000, true)]
    [InlineData(3000, false)]
    public void A_fuse_that_breaks_less_than_the_first_instant_is_warned_of(double breaksA, bool warned)
    {
        JsonElement answer = AnswerOf(FormattableString.Invariant($$$"""
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
