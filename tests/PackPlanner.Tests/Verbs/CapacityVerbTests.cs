using System.Globalization;
using System.Text;
using System.Text.Json;
using PackPlanner.Tests.House;

namespace PackPlanner.Tests.Verbs;

public class CapacityVerbTests
{
    // By hand: 2 A for 3600 s at a falling 4.0 to 3.0 V; one row a minute, rest rows at the same rhythm before and after.
    private static string Log()
    {
        StringBuilder text = new("time s,current A,voltage V,temperature C\n");
        void Row(int seconds, double amperes, double volts) => text.Append(CultureInfo.InvariantCulture, $"{seconds},{amperes},{volts:0.0000},25\n");
        for (int i = 0; i < 5; i++)
            Row(60 * i, 0, 4.05);
        for (int i = 0; i <= 60; i++)
            Row(300 + 60 * i, -2, 4.0 - i / 60.0);
        for (int i = 1; i < 5; i++)
            Row(3900 + 60 * i, 0, 3.2);
        return text.ToString();
    }

    [Fact]
    public void One_discharge_is_counted_by_the_trapezoid_rule_with_half_an_interval_at_each_end()
    {
        (int exitCode, string output, _) = Planner.RunWithInput(Log(), "capacity", "-", "--cutoff-v", "3.5V", "--json");
        using JsonDocument document = JsonDocument.Parse(output);
        JsonElement test = document.RootElement.GetProperty("tests").EnumerateArray().Single();

        // By hand: 2 A x 3600 s is 2 Ah; half of a minute at each end adds 2 x 1 A x 60 s = 120 As; to 3.5 V it is 30 minutes and one half end.
        Assert.Equal(0, exitCode);
        Assert.Equal("discharge", test.GetProperty("step").GetString());
        Assert.Equal(2 + 120 / 3600.0, test.GetProperty("chargeAh").GetDouble(), 1e-9);
        Assert.Equal(1 + 60 / 3600.0, test.GetProperty("chargeToCutOffAh").GetDouble(), 1e-9);
        Assert.Equal(4.05, test.GetProperty("startV").GetDouble());
        Assert.Equal(25, test.GetProperty("meanTemperatureDegC").GetDouble());
        Assert.Equal("cut-off", test.GetProperty("endedBy").GetString());
    }

    [Fact]
    public void Without_a_sign_a_small_charge_before_a_large_discharge_is_still_a_charge()
    {
        // 0.6 A lifts the volts from rest to rest, 2 A lowers them; both stand as positive figures in the file.
        StringBuilder text = new("time s,current A,voltage V\n");
        void Row(int minute, double amperes, double volts) => text.Append(CultureInfo.InvariantCulture, $"{60 * minute},{amperes},{volts:0.0000}\n");
        for (int i = 0; i < 5; i++)
            Row(i, 0, 3.10);
        for (int i = 0; i <= 180; i++)
            Row(5 + i, 0.6, 3.13 + i / 180.0);
        for (int i = 0; i < 20; i++)
            Row(186 + i, 0, 4.10);
        for (int i = 0; i <= 55; i++)
            Row(206 + i, 2, 4.0 - i / 50.0);
        for (int i = 0; i < 5; i++)
            Row(262 + i, 0, 3.1);
        (_, string output, _) = Planner.RunWithInput(text.ToString(), "capacity", "-", "--json");
        using JsonDocument document = JsonDocument.Parse(output);

        Assert.Equal(["charge", "discharge"], document.RootElement.GetProperty("tests").EnumerateArray().Select(test => test.GetProperty("step").GetString()));
    }

    [Fact]
    public void The_whole_charge_and_the_charge_to_the_cut_off_are_two_figures()
    {
        (_, JsonElement answer) = Planner.Json("capacity", Repository.Data("samsung-30q", "discharge_1_100.lvm"), "--cutoff-v", "2.5V");
        JsonElement test = answer.GetProperty("tests")[0];

        Assert.True(test.GetProperty("chargeToCutOffAh").GetDouble() < test.GetProperty("chargeAh").GetDouble());
        Assert.Equal("current-taper", test.GetProperty("endedBy").GetString());
        Assert.Equal(3484, answer.GetProperty("rowsRead").GetInt32());
    }

    [Fact]
    public void Leads_in_the_voltage_reading_are_said_and_marked_at_every_resistance()
    {
        (_, JsonElement answer) = Planner.Json("capacity", Repository.Data("cell-2013", "cell-cycling-10c-24c-40c.csv.gz"));

        Assert.True(answer.GetProperty("files")[0].GetProperty("leads").GetProperty("timesUsual").GetDouble() > 3);
        Assert.All(answer.GetProperty("pulses").EnumerateArray(), pulse => Assert.True(pulse.GetProperty("withLeads").GetBoolean()));
        Assert.Contains(answer.GetProperty("cautions").EnumerateArray(), caution => caution.GetProperty("code").GetString() == "caution-30");
    }

    [Fact]
    public void The_current_shown_at_rest_is_taken_off_only_on_request()
    {
        string file = Repository.Data("cell-2013", "module123-irdischarge-65ah-1_0c.csv.gz");
        double Ah(params string[] options) => Planner.Json(["capacity", file, .. options]).Document.GetProperty("tests")[0].GetProperty("chargeAh").GetDouble();

        // By hand: 0.02 A for 3063 s are 0.017 Ah.
        Assert.Equal(0.017, Ah() - Ah("--correct-offset"), 0.001);
    }

    [Fact]
    public void The_log_of_one_cell_is_a_cell_with_its_files_name()
    {
        (_, JsonElement answer) = Planner.Json("cells", Repository.Data("samsung-30q", "discharge_1_100.lvm"), "--rated-ah", "3", "--chemistry", "nca");
        JsonElement cell = answer.GetProperty("cells").EnumerateArray().Single();

        Assert.Equal("discharge_1_100", cell.GetProperty("cell").GetString());
        Assert.Equal("use", cell.GetProperty("verdict").GetString());
        Assert.Equal(2.7056, cell.GetProperty("capacityAh").GetDouble(), 5e-4);
        Assert.Equal("dc", cell.GetProperty("resistanceKind").GetString());
        Assert.Equal(10, cell.GetProperty("resistanceAfterS").GetDouble());
    }

    [Fact]
    public void Words_csv_and_a_bad_option_are_answered_too()
    {
        (int exitCode, string words, _) = Planner.RunWithInput(Log(), "capacity", "-");

        Assert.Equal(0, exitCode);
        Assert.Contains("1 discharges", words, StringComparison.Ordinal);
        Assert.StartsWith("file,step,fromTimeS", Planner.RunWithInput(Log(), "capacity", "-", "--csv").Output, StringComparison.Ordinal);
        Assert.Equal(2, Planner.RunWithInput(Log(), "capacity", "-", "--cutoff-v", "ten").ExitCode);
        Assert.Equal(3, Planner.RunWithInput("cell,Ah\nA,2\n", "capacity", "-").ExitCode);
    }
}
