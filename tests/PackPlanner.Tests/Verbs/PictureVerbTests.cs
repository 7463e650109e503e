using System.Text.Json;
using PackPlanner.Tests.Formats.JobFiles;

namespace PackPlanner.Tests.Verbs;

public class PictureVerbTests
{
    [Fact]
    public void Pictures_of_a_job_lie_beside_it_and_are_named_in_the_answer()
    {
        using Folder folder = new();
        Planner.Run("demo", "trike", "--into", folder.Path);

        (int exitCode, JsonElement answer) = Planner.Json("picture", folder.File("trike.job.json"), "losses", "layout");

        Assert.Equal(0, exitCode);
        Assert.Equal("packplanner/picture", answer.GetProperty("schema").GetString());
        Assert.Equal(["layout.png", "layout.svg", "losses.png", "losses.svg"], answer.GetProperty("files").EnumerateArray().Select(file => Path.GetFileName(file.GetProperty("file").GetString())));
        Assert.All(answer.GetProperty("files").EnumerateArray(), file => Assert.True(new FileInfo(file.GetProperty("file").GetString()!).Length > 5000));
    }

    [Fact]
    public void A_picture_that_lacks_its_data_is_refused_and_nothing_is_written()
    {
        using Folder folder = new();
        Planner.Run("job", "new", folder.File("x"));

        (int exitCode, JsonElement error) = Planner.Json("picture", folder.File("x.job.json"), "volts", "--into", folder.File("out"));
        (int noneCode, JsonElement none) = Planner.Json("picture", folder.File("x.job.json"), "--into", folder.File("out"));

        Assert.Equal((4, "picture-not-possible"), (exitCode, error.GetProperty("code").GetString()));
        Assert.Equal((4, "no-pictures"), (noneCode, none.GetProperty("code").GetString()));
        Assert.False(Directory.Exists(folder.File("out")));
        Assert.Equal(2, Planner.Run("picture", folder.File("x"), "los").ExitCode);
    }

    // A log that only shows volts cannot be judged, but what it shows can be drawn.
    [Fact]
    public void A_log_without_a_current_is_drawn_without_a_judgement()
    {
        using Folder folder = new();
        string log = folder.File("volts.csv"), job = folder.File("volts.job.json");
        File.WriteAllText(log, "time s,cell 1 V,cell 2 V,cell 3 V,cell 4 V\n" + string.Concat(Enumerable.Range(0, 40).Select(i => FormattableString.Invariant($"{i},{3.30 - (0.001 * i):0.000},3.300,3.301,3.302\n"))));
        Assert.Equal(0, Planner.Run("job", "new", job, "chemistry=LFP", "series=4", "parallel=1", "ratedAh=100").ExitCode);
        Assert.Equal(0, Planner.Run("job", "add", job, log).ExitCode);

        (int exitCode, JsonElement answer) = Planner.Json("picture", job);

        Assert.Equal(0, exitCode);
        Assert.Equal(["volts", "volts", "apart", "apart"], answer.GetProperty("files").EnumerateArray().Select(file => file.GetProperty("name").GetString()));
    }
}
