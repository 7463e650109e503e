using System.Text.Json;
using PackPlanner.Tests.House;

namespace PackPlanner.Tests.Verbs;

public class CellsVerbTests
{
    // Invented: eight NMC cells, two weeks apart; A8 leaks, A3 is swollen, A5 has no resistance, A9 was broken off, A10 has no test.
    private const string Table = """
        cell;capacity mAh;end V;cut-off V;rest V;date;second rest V;second date;mOhm;condition
        A1;2500;2,80;2,80;3,900;2026-03-01;3,896;2026-03-15;20,1;ok
        A2;2510;2,80;2,80;3,901;2026-03-01;3,897;2026-03-15;20,9;ok
        A3;2490;2,80;2,80;3,899;2026-03-01;3,895;2026-03-15;21,3;swollen
        A4;2505;2,80;2,80;3,902;2026-03-01;3,897;2026-03-15;20,2;ok
        A5;2495;2,80;2,80;3,900;2026-03-01;3,896;2026-03-15;;ok
        A6;2500;2,80;2,80;3,900;2026-03-01;3,896;2026-03-15;20,4;ok
        A7;1900;2,80;2,80;3,900;2026-03-01;3,895;2026-03-15;20,5;ok
        A8;2500;2,80;2,80;3,900;2026-03-01;3,840;2026-03-15;20,0;ok
        A9;1400;3,52;2,80;3,900;2026-03-01;3,896;2026-03-15;20,0;ok
        A10;;;;3,900;2026-03-01;3,896;2026-03-15;20,0;ok

        """;

    private static JsonElement Cells(params string[] options)
    {
        (int exitCode, string output, _) = Planner.RunWithInput(Table, ["cells", "-", "--chemistry", "nmc", "--rated-ah", "2.6", "--json", .. options]);
        Assert.Equal(0, exitCode);
        using JsonDocument document = JsonDocument.Parse(output);
        return document.RootElement.Clone();
    }

    private static JsonElement Cell(JsonElement answer, string label) =>
        answer.GetProperty("cells").EnumerateArray().Single(cell => cell.GetProperty("cell").GetString() == label);

    private static string[] Codes(JsonElement cell) => [.. cell.GetProperty("reasons").EnumerateArray().Select(reason => reason.GetProperty("code").GetString()!)];

    [Fact]
    public void Each_cell_has_the_verdict_that_its_row_deserves()
    {
        JsonElement answer = Cells();

        string Verdict(string label) => Cell(answer, label).GetProperty("verdict").GetString()!;
        Assert.Equal("use", Verdict("A1"));
        Assert.Equal("reject", Verdict("A3"));
        Assert.Equal("use", Verdict("A5"));
        Assert.Equal("reject", Verdict("A7"));
        Assert.Equal("hold", Verdict("A8"));
        Assert.Equal("hold", Verdict("A9"));
        Assert.Equal("hold", Verdict("A10"));
        Assert.Equal(["not-checked"], Codes(Cell(answer, "A5")));
        Assert.Contains("loses-charge", Codes(Cell(answer, "A8")));
        Assert.Contains(answer.GetProperty("cautions").EnumerateArray(), caution =>
            caution.GetProperty("code").GetString() == "caution-14" && caution.GetProperty("where").GetString()!.Contains("A8", StringComparison.Ordinal));
        Assert.Equal(["aborted-test"], Codes(Cell(answer, "A9")));
        Assert.Equal(["no-capacity"], Codes(Cell(answer, "A10")));
        Assert.Equal(JsonValueKind.Null, Cell(answer, "A9").GetProperty("capacityAh").ValueKind);
        JsonElement counts = answer.GetProperty("counts");
        Assert.Equal((5, 3, 2), (counts.GetProperty("use").GetInt32(), counts.GetProperty("hold").GetInt32(), counts.GetProperty("reject").GetInt32()));
    }

    [Fact]
    public void Every_reason_shows_value_limit_and_whose_limit_it_is()
    {
        JsonElement reason = Cell(Cells("--min-percent", "80"), "A7").GetProperty("reasons")[0];

        Assert.Equal("low-capacity", reason.GetProperty("code").GetString());
        Assert.Equal(1.9, reason.GetProperty("value").GetDouble(), 1e-9);
        Assert.Equal(2.08, reason.GetProperty("limit").GetDouble(), 1e-9);
        Assert.Equal("user", reason.GetProperty("limitFrom").GetString());
    }

    [Fact]
    public void Self_discharge_is_given_in_millivolts_a_day_and_percent_a_month()
    {
        JsonElement cell = Cell(Cells(), "A1");

        // By hand: 4 mV in 14 days.
        Assert.Equal(4.0 / 14, cell.GetProperty("selfDischargeMillivoltPerDay").GetDouble(), 1e-6);
        Assert.InRange(cell.GetProperty("selfDischargePercentPerMonth").GetDouble(), 0.5, 1.2);
    }

    [Fact]
    public void Repeatability_not_given_is_one_and_a_half_percent_and_said_to_be_an_assumption()
    {
        JsonElement answer = Cells();

        Assert.Equal(0.015, answer.GetProperty("repeatability").GetDouble());
        Assert.Equal("assumed", answer.GetProperty("repeatabilityFrom").GetString());
        Assert.Equal(0.015 * 2.5, Cell(answer, "A1").GetProperty("capacitySpreadAh").GetDouble(), 1e-9);
        Assert.Equal(0.01, Cells("--repeatability", "1%").GetProperty("repeatability").GetDouble(), 1e-12);
        Assert.Contains(answer.GetProperty("understood").EnumerateArray(), sentence => sentence.GetString()!.Contains("assumption", StringComparison.Ordinal));
    }

    [Fact]
    public void What_is_still_to_test_is_the_places_short_over_the_pass_rate_with_hours_on_the_slots()
    {
        JsonElement still = Cells("--series", "3", "--parallel", "4", "--slots", "4", "--hours-per-test", "9h").GetProperty("stillToTest");

        // By hand: 5 of 8 tried passed, 7 short; 7 x 8 / 5 = 11.2, so 12; three rounds of four, 27 h.
        Assert.Equal(7, still.GetProperty("short").GetInt32());
        Assert.Equal(12, still.GetProperty("likely").GetInt32());
        Assert.Equal(27, still.GetProperty("hours").GetDouble());
        Assert.InRange(still.GetProperty("low").GetInt32(), 7, 11);
        Assert.InRange(still.GetProperty("high").GetInt32(), 13, 60);
    }

    [Fact]
    public void A_missing_resistance_raises_a_notice_that_names_the_cell()
    {
        Assert.Contains(Cells().GetProperty("cautions").EnumerateArray(), caution =>
            caution.GetProperty("signal").GetString() == "NOTICE" && caution.GetProperty("where").GetString()!.Contains("A5", StringComparison.Ordinal));
        Assert.Equal("hold", Cell(Cells("--require", "resistance"), "A5").GetProperty("verdict").GetString());
    }

    [Fact]
    public void Strict_exits_with_5_when_a_warning_stands()
    {
        Assert.Equal(5, Planner.RunWithInput(Table, "cells", "-", "--strict", "--json").ExitCode);
        Assert.Equal(0, Planner.RunWithInput("cell,Ah,mohm,rest V\nA,2.5,20,3.6\nB,2.5,20,3.6\nC,2.5,20,3.6\n", "cells", "-", "--strict", "--json").ExitCode);
    }

    [Theory]
    [InlineData("--min-percent", "300")]
    [InlineData("--rated-ah", "-5")]
    [InlineData("--rated-ah", "5V")]
    [InlineData("--repeatability", "80%")]
    [InlineData("--require", "luck")]
    [InlineData("--series", "3")]
    [InlineData("--slots", "0")]
    public void A_wrong_option_is_refused_by_name(string option, string value)
    {
        (int exitCode, string output, _) = Planner.RunWithInput(Table, "cells", "-", option, value, "--json");

        Assert.Equal(2, exitCode);
        Assert.Contains("packplanner/error", output, StringComparison.Ordinal);
    }

    [Fact]
    public void Why_names_line_spread_limit_rule_and_verdict()
    {
        (int exitCode, string output, _) = Planner.RunWithInput(Table, "cells", "-", "--rated-ah", "2.6", "--why", "A7");

        Assert.Equal(0, exitCode);
        foreach (string part in new[] { "line 8", "spread", "2.080 Ah", "rule", "so       reject" })
            Assert.Contains(part, output, StringComparison.Ordinal);
        Assert.Equal(2, Planner.RunWithInput(Table, "cells", "-", "--why", "A77").ExitCode);
    }

    [Fact]
    public void A_lot_of_two_chemistries_raises_caution_6()
    {
        (_, string output, _) = Planner.RunWithInput("cell,Ah,chemistry\nA,2.5,NMC\nB,2.5,NMC\nC,2.5,LFP\n", "cells", "-", "--json");

        Assert.Contains("caution-06", output, StringComparison.Ordinal);
    }

    // The invented trike lot: T006 was broken off at 3.52 V and tested again; 80 % of 5 Ah is 4 Ah.
    [Fact]
    public void The_trike_lot_counts_the_repeat_of_a_test_that_was_broken_off()
    {
        (_, JsonElement answer) = Planner.Json("cells", Repository.At("sample-data", "trike", "cells.csv"), "--rated-ah", "5", "--chemistry", "nmc");

        Assert.Equal("use", Cell(answer, "T006").GetProperty("verdict").GetString());
        Assert.Equal(4.393, Cell(answer, "T006").GetProperty("capacityAh").GetDouble(), 1e-9);
        Assert.Equal(4.413, Cell(answer, "T042").GetProperty("capacityAh").GetDouble(), 1e-9);
        Assert.Equal("hold", Cell(answer, "T091").GetProperty("verdict").GetString());
        Assert.Equal("reject", Cell(answer, "T036").GetProperty("verdict").GetString());
        Assert.Equal("assumed", answer.GetProperty("repeatabilityFrom").GetString());
    }

    // Source: [PulseBat] capacities of 95 LMO, 56 LFP cells and 67 NMC states; the counts under 80 % of rated were taken from the table by a spreadsheet formula.
    [Theory]
    [InlineData("LMO_10Ah_cells.csv", 95, 8.7433, 30)]
    [InlineData("LFP_35Ah_cells.csv", 56, 29.6372, 8)]
    [InlineData("NMC_2.1Ah_cells.csv", 67, 1.745, 24)]
    public void The_retired_sets_are_judged_by_80_percent_of_their_rated_capacity(string file, int cells, double medianAh, int under)
    {
        (int exitCode, JsonElement answer) = Planner.Json("cells", Repository.Data("pulsebat", file));

        Assert.Equal(0, exitCode);
        Assert.Equal(cells, answer.GetProperty("cells").GetArrayLength());
        Assert.Equal(medianAh, answer.GetProperty("lot").GetProperty("medianCapacityAh").GetDouble(), 1e-4);
        Assert.Equal(under, answer.GetProperty("cells").EnumerateArray().Count(cell => Codes(cell).Any(code => code is "low-capacity" or "capacity-near-limit")));
    }
}
