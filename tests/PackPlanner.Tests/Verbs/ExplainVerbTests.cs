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

    // Two codes for one meaning would leave a script to know both.
    [Fact]
    public void No_two_codes_of_one_kind_say_the_same() =>
        Assert.Empty(FindingMeanings.All.Concat(ErrorMeanings.All).Concat(AnswerWordMeanings.All)
            .GroupBy(meaning => (meaning.Kind, meaning.Means)).Where(same => same.Count() > 1).Select(same => string.Join(", ", same.Select(meaning => meaning.Code))));

    [Fact]
    public void Every_verdict_signal_word_and_event_has_a_meaning()
    {
        string[] events =
        [
            .. Directory.EnumerateFiles(Repository.At("src/PackPlanner.Core/Diagnosis"), "*.cs")
                .SelectMany(file => Happened().Matches(File.ReadAllText(file)).SelectMany(match => match.Groups.Cast<Group>().Skip(1)))
                .Where(word => word.Success).Select(word => word.Value).Distinct(),
        ];
        string[] wanted = [.. Enum.GetValues<Verdict>().Select(VerdictWords.Name), .. Enum.GetNames<SignalWord>().Select(name => name.ToLowerInvariant()), .. events];

        Assert.True(events.Length > 9, string.Join(", ", events));
        Assert.Empty(wanted.Except(AnswerWordMeanings.All.Select(meaning => meaning.Code)));
    }

    [Fact]
    public void Every_limit_of_size_and_every_reason_of_fit_has_a_meaning()
    {
        string[] limits = [.. Limits().Matches(File.ReadAllText(Repository.At("src/PackPlanner.Core/Sizing/LimitChecks.cs"))).Select(match => match.Groups[1].Value)];
        string[] reasons =
        [
            .. new[] { "Fitting/FitReasons.cs", "Sizing/SizingSearch.cs" }
                .SelectMany(file => Reasons().Matches(File.ReadAllText(Repository.At("src/PackPlanner.Core/" + file))).Select(match => match.Groups[1].Value)),
        ];

        Assert.True(limits.Length > 12 && reasons.Length > 9, string.Join(", ", limits.Concat(reasons)));
        Assert.Empty(limits.Concat(reasons).Except(AnswerWordMeanings.All.Select(meaning => meaning.Code)));
    }

    [Theory]
    [InlineData("use")]
    [InlineData("HOLD")]
    [InlineData("reject")]
    public void A_verdict_is_explained(string word)
    {
        (int exitCode, JsonElement answer) = Planner.Json("explain", word);

        Assert.Equal((0, "verdict"), (exitCode, answer.GetProperty("title").GetString()));
    }

    [Theory]
    [InlineData("caution-20", "caution-20a or caution-20b?")]
    [InlineData("caution-7", "caution-07?")]
    [InlineData("caution-99", "caution-01 to caution-34")]
    public void A_number_that_no_caution_has_is_answered_with_those_there_are(string code, string named)
    {
        (int exitCode, JsonElement error) = Planner.Json("explain", code);

        Assert.Equal(2, exitCode);
        Assert.Contains(named, error.GetProperty("next").GetString(), StringComparison.Ordinal);
        Assert.DoesNotContain("caution-02", error.GetProperty("next").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Each_code_is_explained_by_the_verb()
    {
        string[] codes = [.. CautionCatalogue.All.Select(caution => caution.Code), .. FindingMeanings.All.Concat(AnswerWordMeanings.All).Concat(ErrorMeanings.All).Select(meaning => meaning.Code)];

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

    [GeneratedRegex("new RideEvent\\(\\s*[^\"?]*\"([a-z-]+)\"|\\? \"([a-z]+-[a-z]+)\" : \"([a-z]+-[a-z]+)\", (?:group|k)|Note\\(p, [^\"]*\"([a-z-]+)\"")]
    private static partial Regex Happened();

    [GeneratedRegex("yield return \\(\"([a-z-]+)\"")]
    private static partial Regex Limits();

    [GeneratedRegex("new\\(\"([a-z]+(?:-[a-z]+)+)\"")]
    private static partial Regex Reasons();
}
