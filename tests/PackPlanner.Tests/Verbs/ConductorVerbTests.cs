using System.Text.Json;

namespace PackPlanner.Tests.Verbs;

public class ConductorVerbTests
{
    // By hand from the resistivities of [MetalTables] and [Nbs100]: 0.0699 x 0.025 / 2 ohm, 10 A; copper of as many ohms is 0.04933 mm thick.
    [Fact]
    public void A_link_of_nickel_strip()
    {
        JsonElement answer = Ask("--metal", "nickel", "--wide", "10mm", "--thick", "0.2mm", "--long", "25mm", "--load", "10A");

        Near(0.87375, answer, "resistanceMilliohm");
        Near(0.0087375, answer, "dropV");
        Near(0.087375, answer, "heatW");
        Near(0.4933, answer, "copperMm2", 1e-4);
        Assert.Contains("No standard", string.Join(' ', answer.GetProperty("basis").EnumerateArray()), StringComparison.Ordinal);
    }

    [Fact]
    public void Two_pieces_halve_it_and_steel_has_no_figure_for_warmth()
    {
        JsonElement answer = Ask("--metal", "steel", "--wide", "10mm", "--thick", "0.2mm", "--long", "25mm", "--pieces", "2", "--temperature", "60degC");

        Near(1.78750 / 2, answer, "resistanceMilliohm");
        Assert.Equal(JsonValueKind.Null, answer.GetProperty("warmMilliohm").ValueKind);
    }

    // Source: [Iec60228] class 5 for the size, [Nbs100] for the warmth: 0.780 ohm/km, 4 m, 150 A; 1.1572 times that at 60 °C.
    [Theory]
    [InlineData("20degC", 0.468)]
    [InlineData("60degC", 0.54157)]
    public void Leads_there_and_back(string temperature, double dropV) =>
        Near(dropV, Ask("--mm2", "25", "--long", "2m", "--both-ways", "--load", "150A", "--temperature", temperature), "dropV", 1e-5);

    // Source: [AstmB258]: AWG 6, 6 m, 60 A; AWG 10 at 75 °C 3.98537 ohm/km; 4/0 0.16080 ohm/km.
    [Theory]
    [InlineData("6", "6m", "20degC", 7.77686)]
    [InlineData("10", "1000m", "75degC", 3985.37)]
    [InlineData("4/0", "1000m", "20degC", 160.80)]
    public void A_wire_by_gauge(string gauge, string length, string temperature, double milliohm) =>
        Near(milliohm, Ask("--awg", gauge, "--long", length, "--temperature", temperature), "warmMilliohm", 4e-5 * milliohm);

    // By hand: 20 x 3 mm, 0.1 m: 28.735 micro-ohm; 600 A through 60 mm2 are 10 A/mm2: 0.50373 K/s if no heat left it.
    [Fact]
    public void A_bus_bar_and_how_fast_it_could_warm()
    {
        JsonElement answer = Ask("--wide", "20mm", "--thick", "3mm", "--long", "100mm", "--load", "600A");

        Near(0.028735, answer, "resistanceMilliohm", 1e-6);
        Near(0.50373, answer, "warmsKelvinPerSecond", 1e-4);
        Near(10, answer, "currentPerMm2A");
    }

    [Theory]
    [InlineData("25", "3")]
    [InlineData("53.475", "1/0")]
    [InlineData("107.2", "4/0")]
    [InlineData("108", null)]
    public void The_wire_with_no_more_ohms(string areaMm2, string? gauge) =>
        Assert.Equal(gauge, Ask("--wide", areaMm2 + "mm", "--thick", "1mm", "--long", "1m").GetProperty("equalAwg").GetString());

    [Theory]
    [InlineData("--awg", "10")]
    [InlineData("--long", "1m")]
    [InlineData("--awg", "10", "--mm2", "25", "--long", "1m")]
    [InlineData("--awg", "ten", "--long", "1m")]
    [InlineData("--mm2", "24", "--long", "1m")]
    [InlineData("--wide", "10mm", "--long", "1m")]
    [InlineData("--wide", "10mm", "--thick", "0mm", "--long", "1m")]
    [InlineData("--wide", "10mm", "--thick", "1mm", "--long", "1m", "--metal", "tin")]
    [InlineData("--awg", "10", "--long", "1m", "--metal", "nickel")]
    [InlineData("--awg", "10", "--long", "-1m")]
    public void What_is_missing_or_impossible_is_refused(params string[] options)
    {
        (int exitCode, JsonElement error) = Planner.Json(["conductor", .. options]);

        Assert.Equal(2, exitCode);
        Assert.Equal("bad-option", error.GetProperty("code").GetString());
    }

    [Fact]
    public void The_words_say_that_it_is_a_starting_point() =>
        Assert.Contains("never final", Planner.Run("conductor", "--awg", "10", "--long", "1m").Output, StringComparison.Ordinal);

    private static JsonElement Ask(params string[] options)
    {
        (int exitCode, JsonElement answer) = Planner.Json(["conductor", .. options]);
        Assert.Equal(0, exitCode);
        return answer;
    }

    private static void Near(double expected, JsonElement answer, string name, double tolerance = 1e-9) =>
        Assert.Equal(expected, answer.GetProperty(name).GetDouble(), tolerance);
}
