using System.Text.Json;
using PackPlanner.Tests.House;

namespace PackPlanner.Tests.Verbs;

public class DiagnoseVerbTests
{
    private static string Sample(string name) => Repository.Data("sample-logs", name);

    private static JsonElement Truth(string sample) => JsonDocument.Parse(File.ReadAllText(Sample($"{sample}.truth.json"))).RootElement.Clone();

    private static double Middle(IEnumerable<double> values)
    {
        double[] sorted = [.. values.Order()];
        return (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
    }

    /// <summary>The limits on a single log that docs/methods/diagnosis.md names.</summary>
    [Theory]
    [InlineData("sample02", true)]
    [InlineData("sample03", false)]
    [InlineData("sample04", true)]
    [InlineData("sample05", true)]
    public void A_sample_log_is_diagnosed_within_the_limits_for_a_single_log(string sample, bool told)
    {
        JsonElement[] truth = [.. Truth(sample).GetProperty("groups").EnumerateArray()];

        (int exitCode, JsonElement answer) = Planner.Json("diagnose", Sample($"{sample}.csv"), "--given", Sample($"{sample}.given.json"));

        Assert.Equal(0, exitCode);
        JsonElement[] groups = [.. answer.GetProperty("groups").EnumerateArray()];
        Assert.Equal(truth.Length, groups.Length);
        Assert.Equal(told, answer.GetProperty("capacityTold").GetBoolean());
        double[] capacity = [.. groups.Select(g => Value(g, "capacityAh"))], trueCapacity = [.. truth.Select(t => t.GetProperty("capacityAh").GetDouble())];
        double[] ohm = [.. groups.Select(g => Value(g, "resistanceMilliohm"))], trueOhm = [.. truth.Select(t => t.GetProperty("resistanceMilliohm").GetDouble())];
        for (int k = 0; k < groups.Length; k++)
        {
            Assert.Equal(k + 1, groups[k].GetProperty("group").GetInt32());
            AssertFindings(groups[k], truth[k], told);
            Assert.InRange(Value(groups[k], "stateOfChargeOffset") - truth[k].GetProperty("stateOfChargeOffset").GetDouble(), -0.035, 0.035);
            Assert.InRange(ohm[k] / Middle(ohm) / (trueOhm[k] / Middle(trueOhm)), 0.85, 1.15);
            if (told)
                Assert.InRange(capacity[k] / Middle(capacity) / (trueCapacity[k] / Middle(trueCapacity)), 0.94, 1.06);
        }
        int held = groups.Where((g, k) => trueCapacity[k] >= g.GetProperty("capacityAh").GetProperty("low").GetDouble()
            && trueCapacity[k] <= g.GetProperty("capacityAh").GetProperty("high").GetDouble()).Count();
        Assert.True(held >= 0.75 * groups.Length, $"{held} of {groups.Length} ranges hold the truth");
        if (told)
            AssertRecovery(answer.GetProperty("recovery"), Truth(sample).GetProperty("recovery"));
    }

    private static double Value(JsonElement group, string key) => group.GetProperty(key).GetProperty("value").GetDouble();

    private static void AssertFindings(JsonElement group, JsonElement truth, bool told)
    {
        string[] said = [.. group.GetProperty("findings").EnumerateArray().Select(f => f.GetString()!)];
        string[][] required = [.. truth.GetProperty("required").EnumerateArray().Select(set => set.EnumerateArray().Select(f => f.GetString()!).ToArray())];
        string[] allowed = [.. required.SelectMany(set => set), .. truth.GetProperty("allowed").EnumerateArray().Select(f => f.GetString()!), told ? "" : "cannot-tell"];
        Assert.All(required, set => Assert.Contains(said, set.Contains));
        Assert.All(said, f => Assert.Contains(f, allowed));
        Assert.Equal(!told, said.Contains("cannot-tell"));
        JsonElement[] details = [.. group.GetProperty("findingDetails").EnumerateArray()];
        Assert.Equal(said, details.Select(d => d.GetProperty("finding").GetString()));
        Assert.All(details, d => Assert.False(string.IsNullOrWhiteSpace(d.GetProperty("settleBy").GetString())));
        Assert.All(details, d => Assert.Contains(d.GetProperty("sure").GetString(), new[] { "high", "medium", "low" }));
    }

    private static void AssertRecovery(JsonElement recovery, JsonElement truth)
    {
        foreach (string key in (string[])["usableAhNow", "usableAhAfterBalance", "usableAhAfterReplacement"])
            Assert.InRange(recovery.GetProperty(key).GetDouble() / truth.GetProperty(key).GetDouble(), 0.92, 1.08);
    }

    [Fact]
    public void Another_number_of_groups_than_stated_is_refused_with_both_numbers()
    {
        (int exitCode, JsonElement answer) = Planner.Json("diagnose", Sample("sample03.csv"), "--chemistry", "LFP", "--rated-ah", "56.9Ah", "--series", "16");

        Assert.Equal(3, exitCode);
        Assert.Equal("packplanner/error", answer.GetProperty("schema").GetString());
        Assert.Contains("8 ", answer.GetProperty("message").GetString(), StringComparison.Ordinal);
        Assert.Contains("16", answer.GetProperty("message").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_diagnosis_without_chemistry_says_which_option_is_missing()
    {
        (int exitCode, JsonElement answer) = Planner.Json("diagnose", Sample("sample03.csv"), "--rated-ah", "56.9Ah");

        Assert.Equal(2, exitCode);
        Assert.Contains("--chemistry", answer.GetProperty("next").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Given_and_option_that_contradict_are_refused()
    {
        (int exitCode, JsonElement answer) = Planner.Json("diagnose", Sample("sample03.csv"), "--given", Sample("sample03.given.json"), "--chemistry", "NMC");

        Assert.Equal(3, exitCode);
        Assert.Contains("chemistry", answer.GetProperty("message").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_log_compared_with_itself_has_not_changed()
    {
        (int exitCode, JsonElement answer) = Planner.Json(
            "compare", Sample("sample03.csv"), Sample("sample03.csv"), "--given", Sample("sample03.given.json"), "--km-then", "10", "--km-now", "10", "--use", "38Wh/km");

        Assert.Equal(0, exitCode);
        Assert.All(answer.GetProperty("groups").EnumerateArray(), g => Assert.Equal(0, g.GetProperty("capacityAh").GetProperty("change").GetDouble()));
        Dictionary<string, JsonElement> causes = answer.GetProperty("causes").EnumerateArray().ToDictionary(c => c.GetProperty("name").GetString()!, c => c.GetProperty("whShare"));
        Assert.Equal(0, causes["pack"].GetDouble());
        Assert.Equal(0, causes["vehicle"].GetDouble(), tolerance: 1e-12);
        Assert.Equal(JsonValueKind.Null, causes["cold"].ValueKind);
        Assert.Equal(answer.GetProperty("usableWh").GetProperty("now").GetDouble() / 38, answer.GetProperty("rangeKm").GetProperty("now").GetDouble(), 1e-9);
        Assert.Equal(0, answer.GetProperty("rangeKm").GetProperty("change").GetDouble());
    }

    [Fact]
    public void The_use_typed_and_the_use_in_the_given_file_must_agree_and_must_be_a_use()
    {
        string tractor = Repository.At("sample-data", "tractor", "ride-october.csv"), given = Repository.At("sample-data", "tractor", "given.json");

        (int contradicts, JsonElement both) = Planner.Json("diagnose", tractor, "--given", given, "--use", "38Wh/km");
        (int wrong, JsonElement unit) = Planner.Json("diagnose", tractor, "--given", given, "--use", "38Wh");

        Assert.Equal(3, contradicts);
        Assert.Contains("--use", both.GetProperty("message").GetString(), StringComparison.Ordinal);
        Assert.Equal(2, wrong);
        Assert.Contains("38Wh/km", unit.GetProperty("next").GetString(), StringComparison.Ordinal);
    }

    // The use of 73 Wh/km stands in the given file: kilometres are the energy of each line over that.
    [Fact]
    public void A_tractor_with_a_loose_wire_gets_its_joint_and_its_weak_cell_and_kilometres_for_each_remedy()
    {
        (int exitCode, JsonElement answer) = Planner.Json("diagnose", Repository.At("sample-data", "tractor", "ride-october.csv"), "--given", Repository.At("sample-data", "tractor", "given.json"));

        Assert.Equal(0, exitCode);
        Dictionary<int, string[]> said = answer.GetProperty("groups").EnumerateArray().ToDictionary(
            g => g.GetProperty("group").GetInt32(), g => g.GetProperty("findings").EnumerateArray().Select(f => f.GetString()!).ToArray());
        Assert.Equal([4, 8, 9, 11], said.Where(g => g.Value.Length > 0).Select(g => g.Key).Order());
        Assert.Equal(["connection"], said[4]);
        Assert.Equal(["sensor"], said[8]);
        Assert.Equal(["sensor"], said[9]);
        Assert.Contains("low-capacity", said[11]);
        Assert.Contains(answer.GetProperty("cautions").EnumerateArray(), c => c.GetProperty("code").GetString() == "caution-16" && c.GetProperty("signal").GetString() == "WARNING");
        JsonElement loaded = answer.GetProperty("recovery").GetProperty("loaded");
        Assert.Equal(loaded.GetProperty("usableWhNow").GetDouble() / 73, loaded.GetProperty("rangeKmNow").GetDouble(), 1e-9);
        Assert.All(answer.GetProperty("remedies").EnumerateArray(), r => Assert.Equal(r.GetProperty("usableWh").GetDouble() / 73, r.GetProperty("rangeKm").GetDouble(), 1e-9));
    }
}
