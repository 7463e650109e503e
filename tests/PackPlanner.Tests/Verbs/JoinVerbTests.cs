using System.Text.Json;
using PackPlanner.Core.Cells;

namespace PackPlanner.Tests.Verbs;

public class JoinVerbTests
{
    [Fact]
    public void A_cell_below_its_cut_off_gets_no_volts_and_no_place()
    {
        (int exitCode, JsonElement answer) = Run("join", "cell,rest V,mOhm,Ah\nA,3.60,30,2.5\nB,3.61,30,2.5\nC,1.80,30,2.5\nD,2.40,30,2.5\n", "--chemistry", "NMC");

        Assert.Equal(0, exitCode);
        foreach (string label in new[] { "C", "D" })
        {
            JsonElement cell = answer.GetProperty("groups").EnumerateArray().Single(each => each.GetProperty("cell").GetString() == label);
            Assert.Equal(JsonValueKind.Null, cell.GetProperty("bringToV").ValueKind);
            Assert.Equal(JsonValueKind.Null, cell.GetProperty("order").ValueKind);
            Assert.Equal("not-to-be-charged", cell.GetProperty("reason").GetString());
        }

        Assert.Equal(["A", "B"], answer.GetProperty("order").EnumerateArray().Select(each => each.GetString()!).Order());
        Assert.Contains("caution-01", answer.GetProperty("cautions").EnumerateArray().Select(caution => caution.GetProperty("code").GetString()));
    }

    [Fact]
    public void Groups_of_a_table_are_judged_each_for_itself()
    {
        (_, JsonElement answer) = Run("join", "cell,group,rest V,mOhm,Ah\nA,1,3.60,30,2.5\nB,1,3.60,30,2.5\nC,2,4.10,30,2.5\nD,2,4.10,30,2.5\n", "--chemistry", "NMC");

        Assert.All(answer.GetProperty("groups").EnumerateArray(), cell => Assert.Equal(0, cell.GetProperty("inrushA").GetDouble(), tolerance: 1e-9));
        Assert.DoesNotContain("caution-07", answer.GetProperty("cautions").EnumerateArray().Select(caution => caution.GetProperty("code").GetString()));
    }

    [Theory]
    [InlineData("cell,mOhm,Ah\nA,30,2.5\nB,31,2.5\n", "no-resting-volts")]
    [InlineData("cell,rest V,mOhm,chemistry\nA,3.6,30,NMC\nB,3.3,31,LFP\n", "two-chemistries")]
    [InlineData("{\"cells\":[]}", "not-a-table")]
    public void What_is_missing_is_named(string table, string code)
    {
        (int exitCode, JsonElement error) = Run("join", table);

        Assert.Equal(3, exitCode);
        Assert.Equal(code, error.GetProperty("code").GetString());
    }

    [Fact]
    public void Balancing_by_state_of_charge_gives_charge_and_hours()
    {
        (int exitCode, JsonElement answer) = Run("balance", "group,capacityAh,stateOfCharge\n1,100,0.95\n2,100,1.00\n3,100,0.99\n", "--bleed", "100mA", "--charger", "5A");

        Assert.Equal(0, exitCode);
        Assert.Equal("charge", answer.GetProperty("method").GetString());
        Assert.Equal(1.2, answer.GetProperty("hours").GetDouble(), tolerance: 1e-9);
        Assert.Equal(50, answer.GetProperty("bleedHours").GetDouble(), tolerance: 1e-6);
        Assert.Equal(5, answer.GetProperty("groups")[1].GetProperty("removeAh").GetDouble(), tolerance: 1e-9);
        Assert.Equal(5, answer.GetProperty("groups")[0].GetProperty("addAh").GetDouble(), tolerance: 1e-9);
    }

    [Fact]
    public void Balancing_takes_the_offsets_of_a_diagnosis()
    {
        (int exitCode, JsonElement answer) = Run("balance",
            """
            {"groups":[{"group":1,"capacityAh":{"value":20,"low":19,"high":21},"stateOfChargeOffset":{"value":0.0}},
            {"group":2,"capacityAh":{"value":20},"stateOfChargeOffset":{"value":-0.04}}]}
            """, "--bleed", "60mA");

        Assert.Equal(0, exitCode);
        Assert.Equal(0.8, answer.GetProperty("groups")[0].GetProperty("removeAh").GetDouble(), tolerance: 1e-9);
        Assert.Equal(0.8 / 0.06, answer.GetProperty("hours").GetDouble(), tolerance: 1e-6);
        Assert.Equal("bleed", answer.GetProperty("method").GetString());
    }

    [Fact]
    public void Balancing_keeps_the_ranges_and_the_held_groups_of_a_diagnosis()
    {
        (int exitCode, JsonElement answer) = Run("balance",
            """
            {"cautions":[{"code":"caution-03","signal":"WARNING","where":"group 3, 4711 s","saw":"4.31 V, full is 4.20 V"},{"code":"caution-17","signal":"NOTICE","where":"group 1"}],
            "groups":[{"group":1,"capacityAh":{"value":20,"low":20,"high":20},"stateOfChargeOffset":{"value":0.0,"low":-0.01645,"high":0.01645}},
            {"group":2,"capacityAh":{"value":20},"stateOfChargeOffset":{"value":-0.04,"low":-0.05645,"high":-0.02355}},
            {"group":3,"capacityAh":{"value":20},"stateOfChargeOffset":{"value":-0.3}},
            {"group":4,"capacityAh":null,"stateOfChargeOffset":{"value":-0.2}}]}
            """, "--bleed", "60mA");

        Assert.Equal(0, exitCode);
        Assert.Equal(0.46524, answer.GetProperty("groups")[0].GetProperty("spreadAh").GetDouble(), tolerance: 1e-3);
        Assert.Equal(5.579, answer.GetProperty("hoursRange").GetProperty("low").GetDouble(), tolerance: 0.02);
        Assert.Equal(21.087, answer.GetProperty("hoursRange").GetProperty("high").GetDouble(), tolerance: 0.02);
        Assert.Equal("not-to-be-charged", answer.GetProperty("groups")[2].GetProperty("reason").GetString());
        Assert.Equal("no-capacity", answer.GetProperty("groups")[3].GetProperty("reason").GetString());
        Assert.Equal("caution-03", Assert.Single(answer.GetProperty("cautions").EnumerateArray()).GetProperty("code").GetString());
    }

    [Theory]
    [InlineData("""{"groups":[{"group":1,"capacityAh":20,"stateOfCharge":95},{"group":2,"capacityAh":20,"stateOfCharge":90}]}""", "charge-outside")]
    [InlineData("""{"groups":[{"group":1,"capacityAh":20,"stateOfCharge":0.9},{"group":1,"capacityAh":20,"stateOfCharge":0.8}]}""", "group-twice")]
    [InlineData("""{"groups":[{"group":1,"capacityAh":20},{"group":2,"capacityAh":20}]}""", "no-charge")]
    [InlineData("""{"groups":[{"group":1,"capacityAh":20,"restV":3.9},{"group":2,"capacityAh":20,"restV":3.95}]}""", "no-chemistry")]
    [InlineData("""{"groups":[{"group":1,"capacityAh":20,"stateOfChargeOffset":{"value":0,"low":0.1,"high":-0.1}}]}""", "bad-field")]
    [InlineData("""{"groups":[{"group":1,"capacityAh":0,"stateOfCharge":0.9}]}""", "bad-field")]
    public void A_list_of_groups_that_cannot_be_balanced_is_refused(string json, string code)
    {
        (int exitCode, JsonElement error) = Run("balance", json, "--bleed", "60mA");

        Assert.Equal(3, exitCode);
        Assert.Equal(code, error.GetProperty("code").GetString());
    }

    // NMC at 90 and 50 % through the curve, 5 milliohm each; iron phosphate at 60 % lies on the plateau.
    [Theory]
    [InlineData("NMC", 0.9, 0.5, true)]
    [InlineData("LFP", 0.9, 0.6, false)]
    public void The_current_on_joining_follows_from_charge_where_the_curve_tells(string chemistry, double high, double low, bool told)
    {
        string table = FormattableString.Invariant($"group,capacityAh,resistanceMilliohm,stateOfCharge\n1,20,5,{high}\n2,20,5,{low}\n");
        string json = FormattableString.Invariant($$"""{"groups":[{"group":1,"capacityAh":20,"resistanceMilliohm":5,"stateOfCharge":{{high}}},{"group":2,"capacityAh":20,"resistanceMilliohm":5,"stateOfCharge":{{low}}}]}""");
        OpenCircuitCurve curve = Chemistries.Find(chemistry)!.Curve;
        double expectedA = (curve.VoltsAt(high) - curve.VoltsAt(low)) / 0.010;
        foreach (string input in new[] { table, json })
        {
            (int exitCode, JsonElement answer) = Run("balance", input, "--charger", "10A", "--chemistry", chemistry);

            Assert.Equal(0, exitCode);
            JsonElement inrush = answer.GetProperty("parallelTopBalance").GetProperty("largestInrushA");
            if (told)
                Assert.Equal(expectedA, inrush.GetDouble(), tolerance: 1e-6);
            else
                Assert.Equal(JsonValueKind.Null, inrush.ValueKind);
        }
    }

    [Theory]
    [InlineData("group,capacityAh,stateOfChargeOffset\n1,20,0.01\n2,20,-0.03\n3,20,0.01\n")]
    [InlineData("group,capacityAh,stateOfCharge\n1,20,0\n2,20,-4%\n3,20,0\n")]
    [InlineData("group,chargeOffsetAh\n1,0.2\n2,-0.6\n3,0.2\n")]
    [InlineData("Gruppe;Ladungsversatz Ah\n1;0,2\n2;-0,6\n3;0,2\n")]
    public void Balancing_takes_offsets_against_one_another(string table)
    {
        (int exitCode, JsonElement answer) = Run("balance", table, "--bleed", "60mA");

        Assert.Equal(0, exitCode);
        Assert.Equal([0.8, 0, 0.8], answer.GetProperty("groups").EnumerateArray().Select(group => Math.Round(group.GetProperty("removeAh").GetDouble(), 9)));
        Assert.Equal(0.8, answer.GetProperty("groups")[1].GetProperty("addAh").GetDouble(), tolerance: 1e-9);
        Assert.Equal(0.8 / 0.06, answer.GetProperty("hours").GetDouble(), tolerance: 1e-6);
    }

    [Theory]
    [InlineData("cell,group,Ah,stateOfCharge\nS,,5,0.5\nA,1,5,0.96\nB,1,5,0.94\nC,2,5,1\nD,2,5,1\n", 0.5)]
    [InlineData("cell,group,chargeOffsetAh\nS,,-3\nA,1,0.2\nC,2,0.7\n", 0.5)]
    public void A_spare_without_a_group_is_left_out_of_the_balance(string table, double secondAh)
    {
        (int exitCode, JsonElement answer) = Run("balance", table, "--bleed", "100mA");

        Assert.Equal(0, exitCode);
        Assert.Equal([0, secondAh], answer.GetProperty("groups").EnumerateArray().Select(group => Math.Round(group.GetProperty("removeAh").GetDouble(), 9)));
        Assert.Contains("1 cell has no group number and is left out.", answer.GetProperty("understood").EnumerateArray().Select(line => line.GetString()));
    }

    [Theory]
    [InlineData("join", "cell,capacity,restV,mOhm\nA,450,3.61,20\nB,460,3.60,20\n")]
    [InlineData("balance", "group,capacity,stateOfCharge\n1,450,0.9\n2,460,0.8\n")]
    [InlineData("share", "cell,capacity,restV,mOhm\nA,450,3.61,20\nB,460,3.60,20\n", "--load", "1A")]
    [InlineData("energy", "group,capacity,mOhm\n1,450,20\n2,460,20\n")]
    [InlineData("capacity", "time s,current,voltage V\n0,500,4.1\n60,500,4.0\n120,500,3.9\n180,500,3.8\n240,500,3.7\n300,500,3.6\n")]
    public void The_option_that_a_refusal_names_settles_it(string verb, string table, params string[] more)
    {
        (int refused, JsonElement why) = Run(verb, table, [.. more, "--chemistry", "NMC"]);
        (int settled, JsonElement answer) = Run(verb, table, [.. more, "--chemistry", "NMC", "--rated-ah", "0.5Ah"]);

        Assert.Equal((3, "two-readings"), (refused, why.GetProperty("code").GetString()));
        Assert.Contains("--rated-ah", why.GetProperty("next").GetString(), StringComparison.Ordinal);
        Assert.True(settled == 0, answer.ToString());
    }

    // By hand: 5 Ah at 96 and 94 % are 95 %, 0.5 Ah under the full group of twice 5 Ah.
    [Fact]
    public void Cells_of_one_group_number_are_levelled_as_one()
    {
        (int exitCode, JsonElement answer) = Run("balance", "cell,group,Ah,stateOfCharge\nA,1,5,0.96\nB,1,5,0.94\nC,2,5,1\nD,2,5,1\n", "--bleed", "100mA");

        Assert.Equal(0, exitCode);
        Assert.Equal([0, 0.5], answer.GetProperty("groups").EnumerateArray().Select(group => Math.Round(group.GetProperty("removeAh").GetDouble(), 9)));
        Assert.Equal(5, answer.GetProperty("hours").GetDouble(), tolerance: 1e-9);
    }

    [Fact]
    public void Resting_volts_on_the_plateau_tell_nothing()
    {
        (int exitCode, JsonElement answer) = Run("balance", "group,capacityAh,restV\n1,100,3.30\n2,100,3.31\n", "--bleed", "100mA", "--chemistry", "LFP");

        Assert.Equal(0, exitCode);
        Assert.Equal(JsonValueKind.Null, answer.GetProperty("hours").ValueKind);
        Assert.All(answer.GetProperty("groups").EnumerateArray(), group =>
        {
            Assert.Equal(JsonValueKind.Null, group.GetProperty("removeAh").ValueKind);
            Assert.Equal("cannot-tell", group.GetProperty("reason").GetString());
        });
    }

    [Fact]
    public void Resting_volts_of_an_oxide_do_tell()
    {
        (_, JsonElement answer) = Run("balance", "group,capacityAh,restV\n1,10,4.160\n2,10,4.180\n", "--bleed", "60mA", "--chemistry", "NMC");

        Assert.InRange(answer.GetProperty("groups")[1].GetProperty("removeAh").GetDouble(), 0.1, 0.25);
        Assert.True(answer.GetProperty("groups")[1].GetProperty("spreadAh").GetDouble() > 0);
    }

    private static (int ExitCode, JsonElement Document) Run(string verb, string input, params string[] options)
    {
        (int exitCode, string output, _) = Planner.RunWithInput(input, [verb, "-", .. options, "--json"]);
        using JsonDocument document = JsonDocument.Parse(output);
        return (exitCode, document.RootElement.Clone());
    }
}
