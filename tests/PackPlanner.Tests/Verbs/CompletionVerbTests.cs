using System.Text.Json;
using PackPlanner.Verbs;

namespace PackPlanner.Tests.Verbs;

public class CompletionVerbTests
{
    [Theory]
    [InlineData("bash")]
    [InlineData("zsh")]
    [InlineData("fish")]
    [InlineData("pwsh")]
    public void Every_shell_learns_every_verb_and_its_options(string shell)
    {
        (int exitCode, JsonElement answer) = Planner.Json("completion", shell);

        Assert.Equal(0, exitCode);
        string script = answer.GetProperty("script").GetString()!;
        Assert.All(VerbList.All, verb => Assert.Contains(verb.Name, script, StringComparison.Ordinal));
        Assert.Contains("time-limit", script, StringComparison.Ordinal);
    }

    [Fact]
    public void An_unknown_shell_is_answered_with_the_known_ones()
    {
        (int exitCode, JsonElement error) = Planner.Json("completion", "bsh");

        Assert.Equal(2, exitCode);
        Assert.Contains("bash", error.GetProperty("next").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Why_names_inputs_rule_and_source_of_a_figure()
    {
        (int exitCode, JsonElement answer) = Planner.Json("size", House.Repository.Data("sizing", "lfp-16s.json"), "--why", "fuseMinA");

        Assert.Equal(0, exitCode);
        Assert.Equal("packplanner/why", answer.GetProperty("schema").GetString());
        Assert.Contains("1.25", answer.GetProperty("rule").GetString(), StringComparison.Ordinal);
        Assert.StartsWith("52.4", answer.GetProperty("values")[0].GetProperty("value").GetString(), StringComparison.Ordinal);
    }
}
