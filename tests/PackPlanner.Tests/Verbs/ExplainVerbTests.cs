using System.Reflection;
using System.Text.Json;
using System.Text.RegularExpressions;
using PackPlanner.Core.Cautions;
using PackPlanner.Core.Diagnosis;
using PackPlanner.Core.Screening;
using PackPlanner.Formats.Words;
using PackPlanner.Tests.House;

namespace PackPlanner.Tests.Verbs;

public partial class ExplainVerbTests
{
    // The codes are read out of the source itself, so that a new error without a meaning fails here.
    [Fact]
    public void Every_error_code_in_the_source_has_a_meaning_and_no_other_has()
    {
        string[] used =
        [
            .. Directory.EnumerateFiles(Repository.At("src"), "*.cs", SearchOption.AllDirectories)
                .Where(file => !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
                .SelectMany(file => Refused().Matches(File.ReadAllText(file)).Select(match => match.Groups[1].Value)).Distinct().Order(StringComparer.Ordinal),
        ];

        Assert.True(used.Length > 100, $"{used.Length} codes were found");
        Assert.Equal(used, ErrorMeanings.All.Select(meaning => meaning.Code).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Every_finding_and_every_reason_of_a_verdict_has_a_meaning()
    {
        string[] reasons = [.. typeof(ReasonCodes).GetFields(BindingFlags.Public | BindingFlags.Static).Select(field => (string)field.GetRawConstantValue()!)];
        string[] findings = [.. Enum.GetValues<FindingKind>().Select(DiagnoseWords.Name)];

        Assert.Equal(findings.Concat(reasons).Order(StringComparer.Ordinal), FindingMeanings.All.Select(meaning => meaning.Code).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Each_code_is_explained_by_the_verb()
    {
        string[] codes = [.. CautionCatalogue.All.Select(caution => caution.Code), .. FindingMeanings.All.Concat(ErrorMeanings.All).Select(meaning => meaning.Code)];

        // These three names are used twice, and then both meanings are told.
        Assert.Equal(["high-resistance", "low-capacity", "no-capacity"], codes.GroupBy(code => code).Where(same => same.Count() > 1).Select(same => same.Key).Order(StringComparer.Ordinal));
        Assert.Contains("As a finding: ", Planner.Json("explain", "low-capacity").Item2.GetProperty("when").GetString(), StringComparison.Ordinal);
        foreach (string code in new[] { codes[0], codes[^1], "low-capacity", "connection", "two-readings" })
        {
            (int exitCode, JsonElement answer) = Planner.Json("explain", code);

            Assert.Equal((0, code), (exitCode, answer.GetProperty("code").GetString()));
            Assert.NotEqual("", answer.GetProperty("when").GetString());
            Assert.NotEqual("", answer.GetProperty("do").GetString());
        }

        (int wrong, JsonElement error) = Planner.Json("explain", "two-reading");
        Assert.Equal(2, wrong);
        Assert.Contains("two-readings", error.GetProperty("next").GetString(), StringComparison.Ordinal);
    }

    [GeneratedRegex("(?:Refusal\\.(?:Input|CommandLine|NoAnswer)\\(|new Refusal\\(ExitCodes\\.[A-Za-z]+, )\\s*\"([a-z0-9-]+)\"")]
    private static partial Regex Refused();
}
