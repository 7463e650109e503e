using System.Globalization;
using System.Text.Json;

namespace PackPlanner.Tests.Verbs;

public class ShareVerbTests
{
    private const string FourCells =
        """
        {"cells":[{"cell":"K1","openCircuitV":3.62,"resistanceMilliohm":30,"odd":1},{"cell":"K2","openCircuitV":3.62,"resistanceMilliohm":30},
        {"cell":"K3","openCircuitV":3.62,"resistanceMilliohm":30},{"cell":"K4","openCircuitV":3.62,"resistanceMilliohm":30}],
        "positiveLinkMilliohm":[0.5,0.5,0.5],"negativeLinkMilliohm":[0.5,0.5,0.5],"positiveAt":1,"negativeAt":1,"loadA":40}
        """;

    [Fact]
    public void A_case_is_divided_and_its_worst_cell_named()
    {
        (int exitCode, JsonElement answer) = Share(FourCells);

        Assert.Equal(0, exitCode);
        JsonElement group = answer.GetProperty("groups")[0];
        Assert.Equal("K1", group.GetProperty("worst").GetProperty("cell").GetString());
        Assert.Equal(1.11114, group.GetProperty("worst").GetProperty("timesEqual").GetDouble(), tolerance: 1e-5);
        Assert.Equal(100, group.GetProperty("cells").EnumerateArray().Sum(cell => cell.GetProperty("sharePercent").GetDouble()), tolerance: 1e-9);
        Assert.Equal(0, group.GetProperty("circulatingA").GetDouble(), tolerance: 1e-12);
        Assert.Equal(JsonValueKind.Null, answer.GetProperty("through").ValueKind);
    }

    [Fact]
    public void A_typed_load_replaces_the_one_of_the_case_and_the_answer_says_so()
    {
        (_, JsonElement answer) = Share(FourCells, "--load", "0A");
        (_, JsonElement same) = Share(FourCells, "--load", "40A");

        Assert.Contains("--load 0 A stands in place of the 40 A that the case names.", Understood(answer));
        Assert.DoesNotContain(Understood(same), line => line.Contains("in place of", StringComparison.Ordinal));
        Assert.Equal(0, answer.GetProperty("loadA").GetDouble());
        Assert.Equal(JsonValueKind.Null, answer.GetProperty("groups")[0].GetProperty("worst").GetProperty("timesEqual").ValueKind);
    }

    // K1 rests far below the three others, which charge it while 1 A is drawn.
    [Fact]
    public void A_cell_that_is_charged_hardest_is_named_as_charged()
    {
        string cells = string.Join(',', new[] { 3.3, 3.7, 3.7, 3.7 }.Select((volts, i) =>
            FormattableString.Invariant($"{{\"cell\":\"K{i + 1}\",\"openCircuitV\":{volts},\"resistanceMilliohm\":30,\"capacityAh\":2.5}}")));
        string input = $"{{\"cells\":[{cells}],\"positiveLinkMilliohm\":[0,0,0],\"negativeLinkMilliohm\":[0,0,0],\"positiveAt\":1,\"negativeAt\":4,\"loadA\":1}}";

        (_, JsonElement answer) = Share(input, "--chemistry", "NMC");
        (_, string words, _) = Planner.RunWithInput(input, "share", "-", "--chemistry", "NMC");

        // By hand: 3.6 V less 7.5 mohm x 1 A are 3.5925 V; K1 takes (3.5925 - 3.3) / 0.03 = 9.75 A, 39 times the equal 0.25 A.
        JsonElement swing = answer.GetProperty("swings")[0];
        Assert.Equal(-39, answer.GetProperty("groups")[0].GetProperty("worst").GetProperty("timesEqual").GetDouble(), 1e-6);
        Assert.Equal("K1", swing.GetProperty("cell").GetString());
        Assert.Equal(-39, swing.GetProperty("timesEqual").GetDouble(), 0.5);
        Assert.Contains("K1 is charged with 39.00 times an equal share", words, StringComparison.Ordinal);
        Assert.Contains("on the way down: K1 is charged with up to", words, StringComparison.Ordinal);
        Assert.DoesNotContain("-39", words.Split('\n')[0], StringComparison.Ordinal);
    }

    [Fact]
    public void With_capacities_and_a_chemistry_it_goes_on_to_near_empty()
    {
        string withAh = FourCells.Replace("\"resistanceMilliohm\":30", "\"resistanceMilliohm\":30,\"capacityAh\":2.5", StringComparison.Ordinal);

        (_, JsonElement answer) = Share(withAh, "--chemistry", "nmc");

        JsonElement[] through = [.. answer.GetProperty("through").EnumerateArray()];
        Assert.Equal(0, through[0].GetProperty("atAh").GetDouble());
        Assert.Equal(answer.GetProperty("groups")[0].GetProperty("terminalV").GetDouble(),
            through[0].GetProperty("groups")[0].GetProperty("terminalV").GetDouble(), tolerance: 1e-4);
        Assert.Equal(2.75, through[^1].GetProperty("groups")[0].GetProperty("terminalV").GetDouble(), tolerance: 1e-3);
        Assert.Equal(1, answer.GetProperty("endedByGroup").GetInt32());
    }

    [Theory]
    [InlineData("\"resistanceMilliohm\":30", "\"resistanceMilliohm\":0", "cells[0].resistanceMilliohm", "above 0")]
    [InlineData("\"positiveLinkMilliohm\":[0.5,0.5,0.5]", "\"positiveLinkMilliohm\":[0.5]", "positiveLinkMilliohm", "3 were expected")]
    [InlineData("\"positiveLinkMilliohm\":[0.5,0.5,0.5]", "\"positiveLinkMilliohm\":[0.5,-1,0.5]", "positiveLinkMilliohm", "0 milliohm or more")]
    [InlineData("\"negativeAt\":1", "\"negativeAt\":5", "negativeAt", "from 1 to 4")]
    [InlineData("\"openCircuitV\":3.62", "\"openCircuitV\":\"3.62\"", "cells[0].openCircuitV", "a number was expected")]
    [InlineData("\"K2\"", "\"K1\"", "cells", "K1 twice")]
    public void A_wrong_field_is_named_with_what_was_expected(string right, string wrong, string field, string expected)
    {
        (int exitCode, JsonElement error) = Share(FourCells.Replace(right, wrong, StringComparison.Ordinal));

        Assert.Equal(3, exitCode);
        Assert.EndsWith(field, error.GetProperty("where").GetString(), StringComparison.Ordinal);
        Assert.Contains(expected, error.GetProperty("message").GetString(), StringComparison.Ordinal);
        Assert.NotEmpty(error.GetProperty("next").GetString()!);
    }

    [Theory]
    [InlineData("--link", "0.5mohm", "0.2mohm", "--link")]
    [InlineData("--positive-at", "1", "2", "positiveAt and --positive-at")]
    [InlineData("--negative-at", "1", "4", "negativeAt and --negative-at")]
    public void An_option_that_says_of_the_bars_what_the_case_does_not_is_refused(string option, string same, string other, string says)
    {
        (int agreed, _) = Share(FourCells, option, same);
        (int exitCode, JsonElement error) = Share(FourCells, option, other);

        Assert.Equal(0, agreed);
        Assert.Equal(3, exitCode);
        Assert.Equal("given-contradicts", error.GetProperty("code").GetString());
        Assert.Contains(says, error.GetProperty("message").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Without_any_load_it_asks_for_one()
    {
        (int exitCode, JsonElement error) = Share(FourCells.Replace(",\"loadA\":40", "", StringComparison.Ordinal));

        Assert.Equal(2, exitCode);
        Assert.Equal("no-load", error.GetProperty("code").GetString());
    }

    [Theory]
    [InlineData("11.1A", true)]
    [InlineData("11.2A", false)]
    public void The_worst_cell_is_judged_by_its_rating_and_not_one_step_before(string rating, bool raised)
    {
        (_, JsonElement answer) = Share(FourCells, "--discharge-rating", rating);

        Assert.Equal(raised, Codes(answer).Contains("caution-24"));
    }

    [Theory]
    [InlineData(4, 30, false)]
    [InlineData(5, 30, true)]
    [InlineData(5, 0.5, false)]
    public void More_than_four_small_cells_without_fuses_are_asked_about(int cells, double milliohm, bool raised)
    {
        string list = string.Join(",", Enumerable.Range(1, cells).Select(i =>
            string.Create(CultureInfo.InvariantCulture, $"{{\"cell\":\"{i}\",\"openCircuitV\":3.6,\"resistanceMilliohm\":{milliohm}}}")));

        (_, JsonElement answer) = Share($"{{\"cells\":[{list}],\"loadA\":10}}");
        (_, JsonElement fused) = Share($"{{\"cells\":[{list}],\"loadA\":10}}", "--cell-fuses");

        Assert.Equal(raised, Codes(answer).Contains("caution-22"));
        Assert.DoesNotContain("caution-22", Codes(fused));
    }

    private static List<string> Understood(JsonElement answer) =>
        [.. answer.GetProperty("understood").EnumerateArray().Select(line => line.GetString()!)];

    private static List<string> Codes(JsonElement answer) =>
        [.. answer.GetProperty("cautions").EnumerateArray().Select(caution => caution.GetProperty("code").GetString()!)];

    private static (int ExitCode, JsonElement Document) Share(string input, params string[] options)
    {
        (int exitCode, string output, _) = Planner.RunWithInput(input, ["share", "-", .. options, "--json"]);
        using JsonDocument document = JsonDocument.Parse(output);
        return (exitCode, document.RootElement.Clone());
    }
}
