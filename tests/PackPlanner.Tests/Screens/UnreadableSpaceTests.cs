using PackPlanner.Core.Jobs;
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
}
