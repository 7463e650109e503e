using System.Text.Json;
using PackPlanner.Tests.Formats.JobFiles;

namespace PackPlanner.Tests.Verbs;

/// <summary>Options that no file could make right.</summary>
public class ImpossibleOptionTests
{
    [Theory]
    [InlineData("diagnose", "--parallel", "0")]
    [InlineData("diagnose", "--series", "0")]
    [InlineData("cells", "--repeatability", "150%")]
    [InlineData("cells", "--repeatability", "-1%")]
    public void They_are_refused_as_the_command_line(string verb, string option, string value)
    {
        using Folder folder = new();
        File.WriteAllText(folder.File("a.csv"), "label,capacity_Ah\nA,2.5\nB,2.4\n");

        (int exitCode, JsonElement answer) = Planner.Json(verb, folder.File("a.csv"), option, value);

        Assert.Equal(2, exitCode);
        Assert.Contains(option, answer.GetProperty("where").GetString(), StringComparison.Ordinal);
    }
}
