using System.Text.RegularExpressions;
using PackPlanner.Core.Cautions;
using PackPlanner.Core.Cells;

namespace PackPlanner.Tests.House;

public partial class SourceRegisterTests
{
    private static readonly HashSet<string> Register =
        [.. RegisterEntry().Matches(File.ReadAllText(Repository.At("docs", "sources.md"))).Select(match => match.Groups[1].Value)];

    [Fact]
    public void Every_key_that_code_tests_and_docs_cite_is_in_the_register()
    {
        string[] unknown =
        [
            .. new[] { "src", "tests", "docs" }
                .SelectMany(folder => Directory.EnumerateFiles(Repository.At(folder), "*", SearchOption.AllDirectories))
                .Where(file => Path.GetExtension(file) is ".cs" or ".md" && !IsBuilt(file))
                .SelectMany(file => Citation().Matches(File.ReadAllText(file))
                    .SelectMany(match => Key().Matches(match.Value).Select(key => key.Groups[1].Value))
                    .Where(key => key != "Key" && !Register.Contains(key))
                    .Select(key => $"{Path.GetRelativePath(Repository.Root, file)}: [{key}]")),
        ];

        Assert.Empty(unknown);
    }

    [Fact]
    public void Every_source_of_a_chemistry_or_caution_is_in_the_register()
    {
        IEnumerable<string> cited = Chemistries.All
            .SelectMany(c => new[] { c.Nominal.From, c.Full.From, c.Cutoff.From, c.DoNotRecharge.From, c.Curve.From })
            .Concat(CautionCatalogue.All.SelectMany(entry => entry.Source.Split("; ")));

        Assert.DoesNotContain(cited, key => !Register.Contains(key));
    }

    private static bool IsBuilt(string file) => file.Split(Path.DirectorySeparatorChar).Any(part => part is "bin" or "obj");

    [GeneratedRegex(@"^- `\[([^\]]+)\]`", RegexOptions.Multiline)]
    private static partial Regex RegisterEntry();

    [GeneratedRegex(@"Sources?: (\[[^\]\r\n]+\](,? (and )?)?)+")]
    private static partial Regex Citation();

    [GeneratedRegex(@"\[([^\]]+)\]")]
    private static partial Regex Key();
}
