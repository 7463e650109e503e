using System.Text.RegularExpressions;
using PackPlanner.Tests.Formats.JobFiles;
using PackPlanner.Tests.House;
using PackPlanner.Verbs;

namespace PackPlanner.Tests.Verbs;

/// <summary>What <c>--help</c> and the manual page show as examples is run, each in a folder of its own that holds the files that it names.</summary>
public partial class HelpExamplesTests
{
    public static TheoryData<string> Lines => [.. VerbList.All.SelectMany(verb => verb.Examples.Select(example => example.Line))];

    [Theory]
    [MemberData(nameof(Lines))]
    public void An_example_does_its_work(string line)
    {
        using Folder folder = new();
        string[] words = [.. Word().Matches(line).Skip(1).Select(match => match.Value.Trim('"'))];

        string[] placed = [.. words.Select((word, i) => Placed(word, words[..i], folder))];

        // That the example runs is asked here, not how far its search gets.
        (int exitCode, string output, string notes) = Planner.Run(words[0] == "fit" ? [.. placed, "--work", "30"] : placed);

        Assert.True(exitCode == 0, $"{line}\nends with {exitCode}\n{output}{notes}");
        int into = Array.FindIndex(words, word => word == "--output");
        Assert.NotEmpty(into < 0 ? output : File.ReadAllText(folder.File(Path.GetFileName(words[into + 1]))));
    }

    [GeneratedRegex("""
        "[^"]*"|[^\s"]+
        """)]
    private static partial Regex Word();

    // A file of an example stands in the folder; one that the example reads is written there first.
    private static string Placed(string word, string[] before, Folder folder)
    {
        if (before is [.., "--output" or "--into"])
            return folder.File(Path.GetFileName(word));
        if (word.StartsWith("sample-data/", StringComparison.Ordinal))
            return Path.Combine(Repository.Root, word);
        if (!IsFile().IsMatch(word))
            return word;
        if (before is not ["job", "new"])
            ExampleFiles.Write(word, before, folder);
        return folder.File(word);
    }

    [GeneratedRegex(@"^[a-z0-9.-]+\.(csv|csv\.gz|json)$")]
    private static partial Regex IsFile();
}
