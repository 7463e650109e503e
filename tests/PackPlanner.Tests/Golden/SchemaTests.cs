using System.Text.Json;
using PackPlanner.Tests.House;
using PackPlanner.Tests.Verbs;

namespace PackPlanner.Tests.Golden;

/// <summary>The schemas under docs/schema are those of the records; with ACCEPT_GOLDEN=1 they are written again.</summary>
public class SchemaTests
{
    [Fact]
    public void The_kept_schemas_are_those_of_the_records()
    {
        (string Name, string Text)[] made = [.. AnswerSchemas.All()];
        if (Environment.GetEnvironmentVariable("ACCEPT_GOLDEN") == "1")
        {
            foreach ((string name, string text) in made)
                File.WriteAllText(AnswerSchemas.FileOf(name), text);
        }

        Assert.All(made, schema => Assert.Equal(File.ReadAllText(AnswerSchemas.FileOf(schema.Name)), schema.Text));
    }

    [Theory]
    [InlineData("input-fit-case", "sample-data/trike/tray.json")]
    [InlineData("input-fit-case", "sample-data/scooter/floor.json")]
    [InlineData("input-size-case", "sample-data/scooter/need.json")]
    [InlineData("input-size-case", "tests/PackPlanner.Tests/Data/sizing/lfp-16s.json")]
    [InlineData("input-given", "tests/PackPlanner.Tests/Data/sample-logs/sample01.given.json")]
    [InlineData("input-job-file", "tests/PackPlanner.Tests/Data/jobs/version-1.job.json")]
    public void Files_that_are_read_are_as_their_schemas_say(string schema, string file)
    {
        using JsonDocument document = JsonDocument.Parse(File.ReadAllText(Repository.At(file.Split('/'))));
        Assert.Empty(AnswerSchemas.Faults(document.RootElement, schema));
    }

    [Theory]
    [InlineData("input-fit-case", """{"cavity":{"parts":[{"box":[0,0,0,310,190]}]},"cell":{}}""", "/cavity/parts/0/box")]
    [InlineData("input-size-case", """{"cell":{"capacityAh":-5}}""", "/cell/capacityAh")]
    [InlineData("input-share-case", """{"cells":[{"openCircuitV":3.6}]}""", "/cells/0")]
    [InlineData("input-job-file", """{"schema":"packplanner/job","version":1,"sources":{}}""", "state")]
    [InlineData("match", """{"schema":"packplanner/match","version":1,"groups":"none"}""", "/groups")]
    public void What_is_wrong_is_found(string schema, string text, string where)
    {
        using JsonDocument document = JsonDocument.Parse(text);
        Assert.Contains(AnswerSchemas.Faults(document.RootElement, schema), fault => fault.Contains(where, StringComparison.Ordinal));
    }

    [Fact]
    public void A_job_written_today_is_as_its_schema_says()
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("packplanner-schema");
        try
        {
            Assert.Equal(0, Planner.Run("demo", "trike", "--into", folder.FullName).ExitCode);
            string job = Path.Combine(folder.FullName, "trike.job.json");
            Assert.Equal(0, Planner.Run("job", "set", job, "steadyA=25").ExitCode);
            using JsonDocument document = JsonDocument.Parse(File.ReadAllText(job));
            Assert.Empty(AnswerSchemas.Faults(document.RootElement, "input-job-file"));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
