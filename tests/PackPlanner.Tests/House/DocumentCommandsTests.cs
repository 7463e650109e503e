using System.Text.RegularExpressions;
using PackPlanner.Verbs;

namespace PackPlanner.Tests.House;

/// <summary>Command lines in the documents name only what exists; those marked "sh" are also run by .ci/run.</summary>
public partial class DocumentCommandsTests
{
    private static readonly (string File, string Line)[] Lines =
    [
        .. Documents().SelectMany(file => Block().Matches(File.ReadAllText(file))
            .SelectMany(block => block.Groups[1].Value.Split('\n', StringSplitOptions.RemoveEmptyEntries))
            .Select(line => (Path.GetRelativePath(Repository.Root, file), line))),
    ];

    [Fact]
    public void The_readme_has_both_its_commands()
    {
        Assert.Contains(("README.md", "dotnet run -c Release --project src/PackPlanner -- demo trike"), Lines);
        Assert.Contains(("README.md", "dotnet test"), Lines);
    }

    [Fact]
    public void Every_verb_and_option_in_a_block_exists()
    {
        List<string> unknown = [];
        foreach ((string file, string line) in Lines)
        {
            string[] words = [.. Command().Match(line).Groups[1].Value.Split(' ', StringSplitOptions.RemoveEmptyEntries)];
            if (words.Length == 0 || words[0].StartsWith('-'))
                continue;
            Verb? verb = VerbList.All.FirstOrDefault(known => known.Name == words[0]);
            if (verb is null)
                unknown.Add($"{file}: {line}: verb {words[0]}");
            else
                unknown.AddRange(words.Where(word => word.StartsWith("--", StringComparison.Ordinal) && word != "--help")
                    .Where(word => !verb.Options.Concat(CommonOptions.All).Select(option => option.Name).Contains(word.Split('=')[0]))
                    .Select(word => $"{file}: {line}: option {word}"));
        }

        Assert.Empty(unknown);
    }

    [Fact]
    public void Every_file_of_the_project_that_a_block_names_exists() =>
        Assert.DoesNotContain(Lines, line => PathInside().Matches(line.Line)
            .Any(match => !Path.Exists(Repository.At(match.Value)) && !match.Value.Contains("/bin/", StringComparison.Ordinal)));

    private static IEnumerable<string> Documents() =>
    [
        Repository.At("README.md"), Repository.At("DEVELOPERS.md"),
        .. Directory.EnumerateFiles(Repository.At("docs"), "*.md", SearchOption.AllDirectories),
    ];

    [GeneratedRegex(@"^```sh(?: long)?[ \t]*\n(.*?)^```", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex Block();

    [GeneratedRegex(@"(?:^|\s)(?:packplanner|--project src/PackPlanner --)\s+([^|>;&]+)")]
    private static partial Regex Command();

    [GeneratedRegex(@"(?<![\w./-])(?:src|tests|docs|sample-data)/[\w./-]+")]
    private static partial Regex PathInside();
}
