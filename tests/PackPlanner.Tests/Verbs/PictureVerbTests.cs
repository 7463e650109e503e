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
}
