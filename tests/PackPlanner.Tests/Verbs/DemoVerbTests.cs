using System.Text.Json;
using PackPlanner.Formats.Demos;
using PackPlanner.Formats.JobFiles;
using PackPlanner.Tests.Formats.JobFiles;

namespace PackPlanner.Tests.Verbs;

public class DemoVerbTests
{
    // By hand from the table: 150 labels; three just under 4.00 Ah and T113 rest low; ten are far below, T036 and T062 are
    // set apart for safety.
    [Fact]
    public void The_trike_runs_from_its_table_to_kilometres()
    {
        (int exitCode, JsonElement answer) = Planner.Json("demo", "trike");

        Assert.Equal(0, exitCode);
        Assert.Equal("packplanner/demo", answer.GetProperty("schema").GetString());
        JsonElement cells = answer.GetProperty("cells");
        Assert.Equal(150, cells.GetProperty("use").GetInt32() + cells.GetProperty("hold").GetInt32() + cells.GetProperty("reject").GetInt32());
        Assert.InRange(cells.GetProperty("use").GetInt32(), 117, 138);
        JsonElement match = answer.GetProperty("match");
        Assert.Equal((13, 9), (match.GetProperty("series").GetInt32(), match.GetProperty("parallel").GetInt32()));
        Assert.True(match.GetProperty("provenOptimal").GetBoolean());
        Assert.Equal(117, answer.GetProperty("fit").GetProperty("used").GetInt32());
        // By hand: 13 x 3.60 V x 9 x 5.0 Ah = 2106 Wh on the label; kilometres are usable Wh over 38 Wh/km.
        JsonElement energy = answer.GetProperty("energy");
        Assert.Equal(2106, energy.GetProperty("nominalWh").GetDouble(), 0.5);
        Assert.InRange(energy.GetProperty("usableWh").GetDouble(), 1000, 1900);
        Assert.Equal(energy.GetProperty("usableWh").GetDouble() / 38, energy.GetProperty("rangeKm").GetDouble(), 1e-6);
    }

    [Fact]
    public void Every_invented_job_runs_and_says_what_is_next()
    {
        foreach (string name in DemoJobs.Names)
        {
            (int exitCode, string words, _) = Planner.Run("demo", name);

            Assert.Equal(0, exitCode);
            Assert.Contains("invented", words, StringComparison.Ordinal);
            // The tractor's loose sense wire.
            Assert.Equal(name == "tractor", words.Contains("caution-16", StringComparison.Ordinal));
            Assert.Contains("\nNext  packplanner ", words, StringComparison.Ordinal);
            // The program's own data is read from memory, but it has a name.
            Assert.DoesNotContain("standard input", words, StringComparison.Ordinal);
        }
    }

    // What the demo names next must work where the user is: in a folder without the sample data.
    [Fact]
    public void The_next_commands_of_the_scooter_work_in_an_empty_folder()
    {
        string folder = Directory.CreateTempSubdirectory("packplanner-demo").FullName;
        try
        {
            string words = Planner.Run("demo", "scooter").Output;
            string into = Path.Combine(folder, "scooter");

            Assert.DoesNotContain("sample-data", words, StringComparison.Ordinal);
            Assert.Contains("packplanner demo scooter --into scooter ", words, StringComparison.Ordinal);
            Assert.Contains("packplanner fit scooter/floor.json ", words, StringComparison.Ordinal);
            Assert.Equal(0, Planner.Run("demo", "scooter", "--into", into).ExitCode);
            Assert.True(File.Exists(Path.Combine(into, "floor.json")));
            // Size and fit name two packs, and the line between says why.
            Assert.Contains("size asks for 14s7p without knowing this space", words, StringComparison.Ordinal);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public void Into_writes_a_job_that_opens_and_never_over_one_that_is_there()
    {
        using Folder folder = new();

        (int exitCode, JsonElement answer) = Planner.Json("demo", "scooter", "--into", folder.File("new"));
        byte[] before = File.ReadAllBytes(Path.Combine(folder.File("new"), "scooter.job.json"));
        (int again, JsonElement error) = Planner.Json("demo", "scooter", "--into", folder.File("new"));

        Assert.Equal(0, exitCode);
        Assert.Equal(["scooter.job.json", "floor.json", "need.json"], answer.GetProperty("files").EnumerateArray().Select(file => Path.GetFileName(file.GetString())));
        Assert.True(JobFile.Open(answer.GetProperty("files")[0].GetString()!).Is(out OpenJob? job, out _));
        Assert.True(job.History.Now.IsDemo);
        Assert.Equal((3, "job-exists"), (again, error.GetProperty("code").GetString()));
        Assert.Equal(before, File.ReadAllBytes(Path.Combine(folder.File("new"), "scooter.job.json")));
    }

    [Fact]
    public void The_energy_of_a_job_is_the_energy_of_its_demo()
    {
        using Folder folder = new();
        (_, JsonElement demo) = Planner.Json("demo", "trike", "--into", folder.File("t"));

        (int exitCode, JsonElement energy) = Planner.Json("energy", Path.Combine(folder.File("t"), "trike.job.json"));

        Assert.Equal(0, exitCode);
        Assert.Equal(demo.GetProperty("energy").GetProperty("usableWh").GetDouble(), energy.GetProperty("usableWh").GetDouble());
    }

    [Fact]
    public void A_misspelt_demo_is_answered_with_the_nearest()
    {
        (int exitCode, JsonElement error) = Planner.Json("demo", "trikes");

        Assert.Equal(2, exitCode);
        Assert.Contains("trike", error.GetProperty("next").GetString(), StringComparison.Ordinal);
    }
}
