using System.Text.Json;
using PackPlanner.Tests.House;

namespace PackPlanner.Tests.Verbs;

/// <summary>A sizing case typed as options, alone or beside a file.</summary>
public class SizeOptionsTests
{
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

    // One cell of 4.2 V does not go on a controller of 4 V.
    [Fact]
    public void A_controller_below_one_cell_is_an_answer()
    {
        (int exitCode, JsonElement answer) = Planner.Json("size", "--chemistry", "NMC", "--rated-ah", "5Ah", "--controller-max-v", "4V");

        Assert.Equal(4, exitCode);
        Assert.Contains("the controller bears 4 V", answer.GetProperty("reasons")[0].GetProperty("text").GetString(), StringComparison.Ordinal);
    }
}
