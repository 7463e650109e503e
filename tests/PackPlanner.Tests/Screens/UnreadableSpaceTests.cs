using System.Text.Json;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats.JobFiles;
using PackPlanner.Tests.Verbs;

namespace PackPlanner.Tests.Screens;

/// <summary>A space that cannot be read: refused as it is added, and told on the screen where a job holds one all the same.</summary>
public class UnreadableSpaceTests
{
    private const string Listed = """
        {"schema":"packplanner-fit-case","version":1,"cavity":[{"box":[0,0,0,420,360,260]}],
         "cell":{"shape":"cylinder","diameterMm":21.4,"lengthMm":70.6,"massG":70},"clearance":{"wallMm":2}}
        """;

    [Fact]
    public void It_is_refused_with_the_field_as_it_is_added()
    {
        string folder = Directory.CreateTempSubdirectory("packplanner-space").FullName;
        string job = Path.Combine(folder, "a.job.json"), space = Path.Combine(folder, "space.json");
        File.WriteAllText(space, Listed);
        Assert.Equal(0, Planner.Run("job", "new", job).ExitCode);

        (int exitCode, _, string error) = Planner.Run("job", "add", job, space);

        Assert.Equal(3, exitCode);
        Assert.Contains("field cavity", error, StringComparison.Ordinal);
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public void A_job_that_holds_one_says_what_is_wrong_and_takes_another_space()
    {
        using Bench bench = new();
        bench.Desk.Store.New("odd");
        bench.Desk.Do(JobChanges.AddDocument(new JobDocument(new JobSource("s1", "space.json", new string('0', 64), SourceKind.FitCase, []), Listed)));
        bench.Press("4");

        Assert.Contains("cavity", bench.Text(), StringComparison.Ordinal);
        Assert.Contains("list", bench.Text(), StringComparison.Ordinal);
        Assert.DoesNotContain("fault in the program", bench.Text(), StringComparison.Ordinal);
    }

    // A list where an object belongs: each key of the screen answers, and the export writes a case.
    [Theory]
    [InlineData("cavity")]
    [InlineData("cell")]
    [InlineData("clearance")]
    public void Whatever_stands_in_it_no_key_of_the_screen_fails_and_it_can_be_exported(string listed)
    {
        string Part(string name, string fields) => listed == name ? $"\"{name}\":[{fields}]" : $"\"{name}\":{fields}";
        string text = $"{{{Part("cavity", "{\"parts\":[{\"box\":[0,0,0,420,360,260]}]}")},{Part("cell", "{\"shape\":\"cylinder\",\"diameterMm\":21.4,\"lengthMm\":70.6}")},{Part("clearance", "{\"wallMm\":2}")}}}";
        JobDocument space = new(new JobSource("s1", "space.json", new string('0', 64), SourceKind.FitCase, []), text);
        using Bench bench = new();
        bench.Desk.Store.New("odd");
        bench.Desk.Do(JobChanges.AddDocument(space));
        bench.Set("cellMassKg", new JobValue.Number(0.07));
        bench.Press("4");

        foreach (string key in new[] { "a", "e", "g", "Enter", "Tab", "=", "w" })
        {
            bench.Press(key);
            Assert.DoesNotContain("fault in the program", bench.Text(), StringComparison.Ordinal);
            bench.Press("Esc", "Esc");
        }

        using JsonDocument exported = JsonDocument.Parse(CaseAsAsked.Text(space, bench.Desk.Job!.Givens));
        Assert.Equal(JsonValueKind.Array, exported.RootElement.GetProperty(listed).ValueKind);
    }
}
