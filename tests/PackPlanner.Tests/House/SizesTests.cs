using System.Text.RegularExpressions;

namespace PackPlanner.Tests.House;

/// <summary>A file is one idea of at most 250 lines, a body one thought of at most 40, blank lines not counted.</summary>
public class SizesTests
{
    private const int MostInAFile = 250;
    private const int MostInABody = 40;

    // Formatting is kept by the build, so a body is what stands between two braces of one indentation. Types, and tables and objects that are
    // written out (they end in "};" or the like), are no bodies.
    private static readonly Regex Type = new(@"\b(class|struct|record|interface|enum|namespace)\b");

    [Fact]
    public void No_file_is_longer_than_a_person_reads_at_once()
    {
        Dictionary<string, string[]> files = Files();

        Assert.NotEmpty(files);
        Assert.Empty(files.Where(file => file.Value.Length > MostInAFile).Select(file => $"{file.Key}: {file.Value.Length} lines"));
    }

    [Fact]
    public void No_body_is_longer_than_one_thought()
    {
        (string Where, int Lines)[] bodies = [.. Files().SelectMany(file => Bodies(file.Value).Select(body => ($"{file.Key}:{body.Line}", body.Lines)))];

        Assert.True(bodies.Length > 1000, $"only {bodies.Length} bodies were found");
        Assert.Empty(bodies.Where(body => body.Lines > MostInABody).Select(body => $"{body.Where}: {body.Lines} lines"));
    }

    [Fact]
    public void Bodies_are_counted_without_types_tables_and_blank_lines()
    {
        string[] lines =
        [
            "internal sealed class A", "{", "    private static readonly int[] B =", "    [", "        1,", "    ];", "",
            "    private C D() => new()", "    {", "        E = 1,", "    };", "",
            "    private int F(", "        int g)", "    {", "        if (g > 0)", "        {", "            g++;", "        }", "", "        return g;", "    }", "}",
        ];

        Assert.Equal([(15, 5), (17, 1)], Bodies(lines));
    }

    private static Dictionary<string, string[]> Files() => new[] { "src", "tests" }
        .SelectMany(folder => Directory.EnumerateFiles(Repository.At(folder), "*.cs", SearchOption.AllDirectories))
        .Select(file => Path.GetRelativePath(Repository.Root, file))
        .Where(file => !file.Split(Path.DirectorySeparatorChar).Any(part => part is "obj" or "bin"))
        .ToDictionary(file => file, file => File.ReadAllLines(Repository.At(file)));

    private static IEnumerable<(int Line, int Lines)> Bodies(string[] lines)
    {
        for (int open = 0; open < lines.Length; open++)
        {
            if (lines[open].Trim() != "{")
                continue;
            string indent = lines[open][..^1];
            int close = Array.FindIndex(lines, open, line => line.StartsWith(indent + "}", StringComparison.Ordinal));
            if (close < 0 || lines[close].Trim() != "}" || Type.IsMatch(Head(lines, open, indent)))
                continue;
            yield return (open + 1, lines[(open + 1)..close].Count(line => line.Trim().Length > 0));
        }
    }

    // The first line of what the braces belong to: the nearest above that is not indented deeper.
    private static string Head(string[] lines, int open, string indent) =>
        lines[..open].Last(line => line.Trim().Length > 0 && !line.StartsWith(indent + " ", StringComparison.Ordinal));
}
