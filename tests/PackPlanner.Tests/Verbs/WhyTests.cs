using System.Text.Json;
using PackPlanner.Formats.Words;
using PackPlanner.Tests.House;

namespace PackPlanner.Tests.Verbs;

/// <summary>--why prints the rule of the figure of that verb, or names the figures that have one.</summary>
public class WhyTests
{
    [Fact]
    public void A_capacity_of_a_diagnosis_is_no_sum_of_cells()
    {
        string log = Path.Combine(Repository.Root, "sample-data", "tractor", "ride-may.csv");

        (int exitCode, JsonElement answer) = Planner.Json("diagnose", log, "--given", Path.Combine(Repository.Root, "sample-data", "tractor", "given.json"), "--why", "capacityAh");

        Assert.Equal(0, exitCode);
        Assert.DoesNotContain("sum", answer.GetProperty("rule").GetString(), StringComparison.Ordinal);
        Assert.EndsWith("diagnosis.md", answer.GetProperty("page").GetString(), StringComparison.Ordinal);
        Assert.Contains(answer.GetProperty("values").EnumerateArray(), value => value.GetProperty("path").GetString() == "groups.1.capacityAh.low");
    }

    [Theory]
    [InlineData("resistanceMilliohm", "Nbs100")]
    [InlineData("dropV", "Kirchhoff")]
    [InlineData("copperMm2", "Nbs100")]
    public void A_conductor_has_rules_of_its_own(string figure, string source)
    {
        (int exitCode, JsonElement answer) = Planner.Json("conductor", "--awg", "10", "--long", "1m", "--load", "20A", "--why", figure);

        Assert.Equal(0, exitCode);
        Assert.Contains(source, answer.GetProperty("source").GetString(), StringComparison.Ordinal);
        Assert.EndsWith("conductors.md", answer.GetProperty("page").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_figure_that_the_answer_lacks_is_refused_with_those_that_have_a_rule()
    {
        (int exitCode, JsonElement error) = Planner.Json("conductor", "--awg", "10", "--long", "1m", "--why", "usableWh");

        Assert.Equal((2, "unknown-figure"), (exitCode, error.GetProperty("code").GetString()));
        Assert.Contains("resistanceMilliohm", error.GetProperty("next").GetString(), StringComparison.Ordinal);
        Assert.DoesNotContain("minGroupAh", error.GetProperty("next").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void No_verb_has_two_rules_for_one_figure_and_each_names_a_page_that_is_there()
    {
        var pairs = FigureRules.All.SelectMany(rule => rule.Verbs.Split(' ').Select(verb => (rule.Key, verb))).ToArray();

        Assert.True(pairs.Length > 60, $"{pairs.Length}");
        Assert.Empty(pairs.GroupBy(pair => pair).Where(same => same.Count() > 1).Select(same => same.Key));
        Assert.Empty(pairs.Select(pair => pair.verb).Except(PackPlanner.Verbs.VerbList.All.Select(verb => verb.Name)));
        Assert.All(FigureRules.All, rule => Assert.True(File.Exists(Repository.At($"docs/methods/{rule.Page}.md")), rule.Page));
    }

    // By hand: 3.710 V on 2 November and 3.695 V on the 16th are 15 mV in 14 days, 1.07 mV a day.
    [Fact]
    public void A_loss_of_charge_is_told_with_its_volts_days_and_what_a_percent_is_in_millivolts()
    {
        string folder = Directory.CreateTempSubdirectory("why").FullName;
        string file = Path.Combine(folder, "rest.csv");
        File.WriteAllText(file, "cell;capacity mAh;OCV 1;Date 1;OCV 2;Date 2;remark\nK1;2464;3.710;2026-11-02;3.695;2026-11-16;tab bent\nK2;2470;3.710;2026-11-02;3.708;2026-11-16;\n");

        (_, JsonElement answer) = Planner.Json("cells", file, "--chemistry", "NMC", "--why", "K1");
        Directory.Delete(folder, recursive: true);

        string[] why = [.. answer.GetProperty("why").EnumerateArray().Select(line => line.GetString()!)];
        Assert.Contains(why, line => line.Contains("3.71 V (2026-11-02), later 3.695 V (2026-11-16), \"tab bent\"", StringComparison.Ordinal));
        string rest = Assert.Single(why, line => line.Contains("at rest", StringComparison.Ordinal));
        Assert.Contains("15 mV in 14 days, 1.07 mV a day", rest, StringComparison.Ordinal);
        System.Text.RegularExpressions.Match told = System.Text.RegularExpressions.Regex.Match(rest, @"these volts (\d+\.\d) mV is 1 % .* so (\d+\.\d) % in 30 days");
        // 30 days of that fall, over what a percent is.
        Assert.Equal(30 * 15.0 / 14 / Figure(told, 1), Figure(told, 2), 0.1);

        static double Figure(System.Text.RegularExpressions.Match told, int group) => double.Parse(told.Groups[group].Value, System.Globalization.CultureInfo.InvariantCulture);
    }
}
