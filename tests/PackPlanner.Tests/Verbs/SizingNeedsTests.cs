using System.Text.Json;
using PackPlanner.Tests.House;

namespace PackPlanner.Tests.Verbs;

/// <summary>Ten invented needs: each choice that is printed against a second reckoning, and against the others.</summary>
public class SizingNeedsTests
{
    // Codes beyond those of the methods page; each has a test of its own.
    private static readonly string[] Ours = ["peak-power-short", "regen-over-cell-charge"];

    public static TheoryData<string> Needs => [.. File.ReadLines(Repository.Data("sizing", "needs.jsonl"))];

    [Theory]
    [MemberData(nameof(Needs))]
    public void Every_figure_and_limit_of_every_choice_is_that_of_a_second_reckoning(string need)
    {
        using JsonDocument given = JsonDocument.Parse(need);
        JsonElement root = given.RootElement, pack = root.TryGetProperty("pack", out JsonElement known) ? known : default;
        foreach (JsonElement option in Options(need))
        {
            JsonElement cell = root.TryGetProperty("cells", out JsonElement models)
                ? models.EnumerateArray().Single(model => model.GetProperty("name").GetString() == option.GetProperty("name").GetString())
                : root.GetProperty("cell");
            double? parallel = pack.ValueKind == JsonValueKind.Object && pack.TryGetProperty("parallel", out JsonElement p) ? p.GetDouble() : null;
            SizingReckoner reckoned = new SizingReckoner(root, cell, option.GetProperty("series").GetInt32(), parallel).Reckon();

            foreach ((string key, double? expected) in reckoned.Figures)
            {
                JsonElement found = option.GetProperty(key);
                Assert.True(expected is null == (found.ValueKind == JsonValueKind.Null), $"{key}: {found}, reckoned {expected}");
                if (expected is double figure)
                    Assert.True(Math.Abs(found.GetDouble() - figure) <= 1e-6 * Math.Max(1, Math.Abs(figure)), $"{key}: {found}, reckoned {figure}");
            }

            Assert.Equal(reckoned.Broken, Codes(option, "limitsBroken"));
            Assert.Equal(reckoned.NotChecked, Codes(option, "notChecked"));
        }
    }

    [Theory]
    [MemberData(nameof(Needs))]
    public void No_choice_is_as_good_as_another_in_all_and_worse_in_one(string need)
    {
        JsonElement[] options = Options(need);

        foreach (JsonElement option in options)
            Assert.DoesNotContain(options, other => Measures(other).Zip(Measures(option)).All(two => two.First >= two.Second)
                && Measures(other).Zip(Measures(option)).Any(two => two.First > two.Second));
    }

    private static double[] Measures(JsonElement option) =>
    [
        -option.GetProperty("limitsBroken").GetArrayLength(),
        .. new[] { "packMassKg", "rangeKm", "marginControllerMaxV", "marginControllerMinV" }.Select(key =>
            option.GetProperty(key).ValueKind == JsonValueKind.Null ? double.MinValue : (key == "packMassKg" ? -1 : 1) * option.GetProperty(key).GetDouble()),
    ];

    private static JsonElement[] Options(string need)
    {
        (int exitCode, string output, _) = Planner.RunWithInput(need, "size", "-", "--json");
        Assert.Equal(0, exitCode);
        using JsonDocument answer = JsonDocument.Parse(output);
        JsonElement[] options = [.. answer.RootElement.GetProperty("options").EnumerateArray().Select(option => option.Clone())];
        Assert.NotEmpty(options);
        Assert.True(JsonElement.DeepEquals(options[0], answer.RootElement.GetProperty("design")));
        return options;
    }

    private static IEnumerable<string> Codes(JsonElement option, string list) =>
        option.GetProperty(list).EnumerateArray().Select(code => code.GetString()!).Where(code => !Ours.Contains(code));
}
