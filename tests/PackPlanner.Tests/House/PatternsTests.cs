using System.Text.RegularExpressions;

namespace PackPlanner.Tests.House;

public class PatternsTests
{
    // In .NET \d also takes the digits of other scripts, of which no number can be made: what was matched then fails to be read.
    [Fact]
    public void Patterns_name_the_digits_that_a_number_can_be_made_of()
    {
        string[] lines =
        [
            .. Directory.EnumerateFiles(Repository.At("src"), "*.cs", SearchOption.AllDirectories)
                .Where(file => !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
                .SelectMany(File.ReadLines)
                .Where(line => line.Contains("Regex(", StringComparison.Ordinal)),
        ];

        Assert.NotEmpty(lines);
        Assert.DoesNotContain(lines, line => Regex.IsMatch(line, @"\\[dD]"));
    }
}
