using PackPlanner.Verbs;

namespace PackPlanner.Tests.Verbs;

public class HelpVerbTests
{
    [Fact]
    public void The_manual_page_has_every_verb_and_option_and_no_text_that_troff_would_run()
    {
        (int exitCode, string page, _) = Planner.Run("help", "--man");

        Assert.Equal(0, exitCode);
        Assert.All(VerbList.All, verb =>
        {
            Assert.Contains($"\n.SS {verb.Name}\n", page, StringComparison.Ordinal);
            Assert.All(verb.Options, option => Assert.Contains($"\n.B {option.Name.Replace("-", "\\-", StringComparison.Ordinal)}\n", page, StringComparison.Ordinal));
        });
        string[] requests = ["TH", "SH", "SS", "TP", "PP", "B", "I", "br"];
        Assert.All(page.Split('\n').Where(line => line is ['.' or '\'', ..]), line => Assert.Contains(line[1..].Split(' ')[0], requests));
    }

    [Fact]
    public void Every_verb_shows_two_examples_at_least() =>
        Assert.All(VerbList.All, verb => Assert.True(verb.Examples.Count >= 2, verb.Name));
}
