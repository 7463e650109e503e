using System.Reflection;
using System.Text.RegularExpressions;

namespace PackPlanner.Tests.House;

/// <summary>A page of docs/methods answers a question, names its sources and works an example that a test repeats.</summary>
public partial class MethodPagesTests
{
    private static readonly HashSet<string> Classes = [.. Assembly.GetExecutingAssembly().GetTypes().Select(type => type.Name)];

    public static TheoryData<string> Pages => [.. Directory.EnumerateFiles(Repository.At("docs", "methods"), "*.md").Select(file => Path.GetFileName(file)!).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Pages))]
    public void A_page_has_a_question_a_source_and_an_example_whose_test_is_there(string page)
    {
        string text = File.ReadAllText(Repository.At("docs", "methods", page));

        Assert.Contains("**Question.**", text, StringComparison.Ordinal);
        Assert.Matches("\\[[A-Z][A-Za-z0-9-]+\\]|common practice, no source", text);
        int example = text.IndexOf("orked example", StringComparison.Ordinal);
        Assert.True(example > 0, "no worked example");
        string[] tests = [.. TestName().Matches(text[example..Math.Min(text.Length, example + 900)]).Select(match => match.Groups[1].Value)];
        Assert.NotEmpty(tests);
        Assert.All(TestName().Matches(text), match => Assert.Contains(match.Groups[1].Value, Classes));
    }

    [GeneratedRegex("`(?:[A-Za-z]+/)*([A-Za-z]+Tests)`")]
    private static partial Regex TestName();
}
