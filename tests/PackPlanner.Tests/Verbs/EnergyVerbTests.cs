using System.IO.Compression;
using System.Text.Json;
using PackPlanner.Tests.Formats.JobFiles;
using PackPlanner.Tests.House;

namespace PackPlanner.Tests.Verbs;

public class EnergyVerbTests
{
    private const string Textbook = "group,capacityAh,resistanceMilliohm,stateOfCharge\n1,100,1,0.75\n2,90,1,0.5\n";

    private const string Matched =
        """
        {"schema":"packplanner/match","version":1,"groups":[
        {"group":1,"cells":["A","B","C","D","E"],"capacityAh":12.5,"resistanceMilliohm":6.0},
        {"group":2,"cells":["F","G","H","I","J"],"capacityAh":12.1,"resistanceMilliohm":6.2}],
        "largestShare":{"group":2,"cell":"F","timesEqual":1.5},"odd":null}
        """;

    [Fact]
    public void The_textbook_table_gives_70_now_and_90_balanced()
    {
        (int exitCode, JsonElement answer) = Energy(Textbook, "--chemistry", "NMC", "--load", "1A", "--rated-ah", "100Ah");

        Assert.Equal(0, exitCode);
        Assert.Equal(70, answer.GetProperty("usableAhAtRest").GetDouble(), tolerance: 1e-6);
        Assert.Equal(70, answer.GetProperty("usableAh").GetDouble(), tolerance: 0.02);
        Assert.Equal(90, answer.GetProperty("afterBalance").GetProperty("usableAh").GetDouble(), tolerance: 0.02);
        Assert.Equal(2, answer.GetProperty("endsAt").GetProperty("group").GetInt32());
        Assert.Equal("cell-cut-off", answer.GetProperty("endsAt").GetProperty("reason").GetString());
        Assert.Equal(2, answer.GetProperty("rowsUsed").GetInt32());
    }

    [Fact]
    public void Nominal_and_losses_add_up_to_usable()
    {
        (_, JsonElement answer) = Energy(
            Textbook, "--chemistry", "NMC", "--load", "400W", "--rated-ah", "100Ah", "--link", "0.2mohm", "--temperature", "8degC", "--reserve", "10%",
            "--pack-empty-v", "6V", "--use", "38Wh/km");

        double nominalWh = answer.GetProperty("nominalWh").GetDouble();
        Assert.Equal(2 * answer.GetProperty("nominalV").GetDouble() * answer.GetProperty("ratedAh").GetDouble(), nominalWh, tolerance: 1e-9);
        Assert.Equal(
            answer.GetProperty("usableWh").GetDouble(),
            nominalWh + answer.GetProperty("losses").EnumerateArray().Sum(step => step.GetProperty("wh").GetDouble()),
            tolerance: 1e-6);
        Assert.Equal(answer.GetProperty("usableWh").GetDouble() / 38, answer.GetProperty("rangeKm").GetDouble(), tolerance: 1e-9);
    }

    [Fact]
    public void An_answer_of_match_is_taken_with_its_cells_and_shares()
    {
        (int exitCode, JsonElement answer) = Energy(Matched, "--chemistry", "LFP", "--load", "20A", "--discharge-rating", "5A", "--rated-ah", "12.5Ah");

        Assert.Equal(0, exitCode);
        // 20 A over 5 cells is 4 A: 4.8 A in group 1 stays below 5 A, 6.0 A in group 2 does not.
        JsonElement[] above = [.. answer.GetProperty("cautions").EnumerateArray().Where(caution => Code(caution) == "caution-24")];
        Assert.Equal("group 2", Assert.Single(above).GetProperty("where").GetString());
        Assert.Contains("caution-22", Codes(answer));
        Assert.Equal(20 * 20 * 0.0122 / 10, answer.GetProperty("heatW").GetProperty("perCell").GetDouble(), tolerance: 1e-9);
    }

    [Fact]
    public void Without_a_chemistry_it_is_refused_with_what_to_give()
    {
        (int exitCode, JsonElement error) = Energy(Textbook, "--load", "20A");

        Assert.Equal(3, exitCode);
        Assert.Equal("no-chemistry", error.GetProperty("code").GetString());
        Assert.Contains("--chemistry", error.GetProperty("next").GetString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("group,capacityAh,resistanceMilliohm\n1,10,1\n2,,1\n", 3, "no-capacity")]
    [InlineData("group,capacityAh,resistanceMilliohm,stateOfCharge\n1,10,1,0.5\n2,10,1,\n", 3, "charge-of-some")]
    [InlineData("{\"groups\":[]}", 3, "no-groups")]
    [InlineData("{\"groups\":[{\"group\":1,\"capacityAh\":null}]}", 3, "bad-field")]
    [InlineData("{\"chemistry\":\"LFP\",\"groups\":[{\"group\":1,\"capacityAh\":5}]}", 3, "two-chemistries")]
    public void What_is_missing_is_named(string input, int expected, string code)
    {
        (int exitCode, JsonElement error) = Energy(input, "--chemistry", "NMC");

        Assert.Equal(expected, exitCode);
        Assert.Equal(code, error.GetProperty("code").GetString());
        Assert.NotEmpty(error.GetProperty("next").GetString()!);
    }

    [Theory]
    [InlineData("--load", "0A")]
    [InlineData("--load", "nosuch.csv", 3)]
    [InlineData("--load", "forty")]
    [InlineData("--reserve", "100%")]
    [InlineData("--use", "38")]
    [InlineData("--has", "fuze")]
    [InlineData("--empty-v", "4.3V")]
    [InlineData("--mass", "180kg")]
    public void A_wrong_option_is_refused(string option, string value, int expected = 2)
    {
        (int exitCode, _) = Energy(Textbook, "--chemistry", "NMC", option, value);

        Assert.Equal(expected, exitCode);
    }

    [Theory]
    [InlineData(14, false)]
    [InlineData(15, true)]
    public void Fifteen_groups_of_4_point_2_volts_are_above_60_and_fourteen_are_not(int series, bool raised)
    {
        string table = "group,capacityAh,resistanceMilliohm\n" + string.Concat(Enumerable.Range(1, series).Select(g => $"{g},10,5\n"));

        (_, JsonElement answer) = Energy(table, "--chemistry", "NMC", "--has", "fuse,disconnect,pre-charge,bms");

        Assert.Equal(raised, Codes(answer).Contains("caution-09"));
        Assert.DoesNotContain("caution-23", Codes(answer));
        // 4.2 V / 5 mΩ a group is 840 A by DC, 1680 A at the first instant.
        Assert.Equal(840, answer.GetProperty("shortCircuitA").GetDouble(), tolerance: 1e-9);
        Assert.Equal(1680, answer.GetProperty("prospectiveShortCircuitA").GetDouble(), tolerance: 1e-9);
        Assert.Contains("caution-21", Codes(answer));
    }

    [Theory]
    [InlineData("-1degC", "WARNING")]
    [InlineData("0degC", "CAUTION")]
    [InlineData("9.9degC", "CAUTION")]
    [InlineData("10degC", null)]
    public void Cold_charging_is_graded(string temperature, string? signal)
    {
        (_, JsonElement answer) = Energy(Textbook, "--chemistry", "NMC", "--temperature", temperature);

        Assert.Equal(signal, answer.GetProperty("cautions").EnumerateArray().FirstOrDefault(caution => Code(caution) == "caution-11") is { ValueKind: JsonValueKind.Object } caution
            ? caution.GetProperty("signal").GetString()
            : null);
    }

    [Fact]
    public void A_profile_is_read_and_repeated()
    {
        string file = Path.GetTempFileName() + ".csv";
        File.WriteAllText(file, "time_s;power_kW\n0;0,2\n30;0,5\n60;-0,1\n");
        try
        {
            (int exitCode, JsonElement answer) = Energy(Textbook, "--chemistry", "NMC", "--load", file);

            Assert.Equal(0, exitCode);
            Assert.InRange(answer.GetProperty("usableAh").GetDouble(), 68, 70);
        }
        finally
        {
            File.Delete(file);
        }
    }

    [Fact]
    public void The_use_is_computed_from_the_road_when_it_is_not_given()
    {
        (_, JsonElement answer) = Energy(Textbook, "--chemistry", "NMC", "--mass", "180kg", "--speed", "45km/h", "--crr", "0.015", "--cda", "0.6", "--efficiency", "80%", "--aux", "20W");

        Assert.InRange(answer.GetProperty("whPerKm").GetDouble(), 29.1, 29.8);
    }

    [Fact]
    public void Fuse_cable_and_pre_charge_are_starting_points()
    {
        (_, JsonElement answer) = Energy(Textbook, "--chemistry", "NMC", "--load", "65A", "--cable-length", "0.1m", "--capacitance", "1.5mF", "--draws", "200", "--seed", "3");

        JsonElement start = answer.GetProperty("startingPoints");
        Assert.Equal(90, start.GetProperty("fuseStandardA").GetDouble());
        Assert.Equal(72.382, start.GetProperty("preChargeOhm").GetDouble(), tolerance: 1e-3);
        // 65 A through 0.2 m may lose 72 mV: 5.5 mohm/m, so 4 mm2 (4.95) and not 2.5 (7.98); but the fuse of 90 A asks for 16.
        Assert.Equal(4, start.GetProperty("cableByDropMm2").GetDouble());
        Assert.Equal(16, start.GetProperty("cableMm2").GetDouble());
        Assert.All(start.GetProperty("basis").EnumerateArray(), basis => Assert.NotEmpty(basis.GetProperty("from").GetString()!));
        Assert.Equal(200, answer.GetProperty("draws").GetInt32());
    }

    private static List<string> Codes(JsonElement answer) => [.. answer.GetProperty("cautions").EnumerateArray().Select(Code)];

    private static string Code(JsonElement caution) => caution.GetProperty("code").GetString()!;

    private static (int ExitCode, JsonElement Document) Energy(string input, params string[] options)
    {
        (int exitCode, string output, _) = Planner.RunWithInput(input, ["energy", "-", .. options, "--json"]);
        using JsonDocument document = JsonDocument.Parse(output);
        return (exitCode, document.RootElement.Clone());
    }

    // What match writes is what energy reads: nothing between them needs a hand.
    [Fact]
    public void An_answer_of_match_is_taken_as_it_is_written()
    {
        using Folder folder = new();
        string answer = folder.File("answer.json");
        Assert.Equal(0, Planner.Run("match", Repository.At("sample-data", "trike", "cells.csv"), "--series", "13", "--parallel", "9", "--rated-ah", "5", "--json", "--output", answer).ExitCode);

        (int exitCode, JsonElement energy) = Planner.Json("energy", answer, "--chemistry", "NMC", "--load", "22A", "--rated-ah", "45");

        Assert.Equal(0, exitCode);
        Assert.Equal(13 * 3.6 * 45, energy.GetProperty("nominalWh").GetDouble(), 0.5);
        Assert.Equal(energy.GetProperty("usableWh").GetDouble(),
            energy.GetProperty("nominalWh").GetDouble() + energy.GetProperty("losses").EnumerateArray().Sum(loss => loss.GetProperty("wh").ValueKind == JsonValueKind.Null ? 0 : loss.GetProperty("wh").GetDouble()), 0.5);
    }

    // Source: [Inr18650-26] by ChargeRates: 0.1 A for each Ah from 0 to 5 degrees, 0.5 from 15 on; the smallest group of 10 Ah sets it.
    [Theory]
    [InlineData("3degC", 1.0)]
    [InlineData("20degC", 5.0)]
    public void The_charger_is_judged_at_the_temperature_of_the_charge_not_of_the_ride(string charged, double highestA)
    {
        (int exitCode, string output, _) = Planner.RunWithInput("group,capacityAh,resistanceMilliohm\n1,10,5\n2,10.5,5\n",
            "energy", "-", "--chemistry", "NMC", "--load", "5A", "--charger", "2A", "--temperature", "30degC", "--charge-temperature", charged, "--json");

        Assert.Equal(0, exitCode);
        using JsonDocument document = JsonDocument.Parse(output);
        Assert.Equal(highestA, document.RootElement.GetProperty("charger").GetProperty("highestA").GetDouble(), 1e-9);
    }

    [Fact]
    public void A_packed_profile_is_read_as_the_plain_one()
    {
        using Folder folder = new();
        string groups = folder.File("groups.csv"), plain = folder.File("profile.csv"), packed = folder.File("profile.csv.gz");
        File.WriteAllText(groups, "group,capacityAh,resistanceMilliohm\n1,45,2\n2,44,2\n");
        File.WriteAllText(plain, "time_s,current_A\n0,20\n60,5\n120,5\n");
        using (GZipStream packing = new(File.Create(packed), CompressionMode.Compress))
            packing.Write(File.ReadAllBytes(plain));

        JsonElement Of(string load) => Planner.Json("energy", groups, "--chemistry", "NMC", "--load", load).Document;

        Assert.Equal(Of(plain).GetProperty("usableWh").GetDouble(), Of(packed).GetProperty("usableWh").GetDouble());
    }
}
