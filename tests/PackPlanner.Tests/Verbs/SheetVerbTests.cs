using System.Text.Json;
using PackPlanner.Tests.Formats.JobFiles;

namespace PackPlanner.Tests.Verbs;

public class SheetVerbTests
{
    [Fact]
    public void Sheets_of_a_job_lie_beside_it_and_are_named_in_the_answer()
    {
        using Folder folder = new();
        Planner.Run("demo", "trike", "--into", folder.Path);

        (int exitCode, JsonElement answer) = Planner.Json("sheet", folder.File("trike.job.json"), "taps", "labels", "--date", "2026-11-24", "--decimal-out", "comma");

        Assert.Equal(0, exitCode);
        Assert.Equal("packplanner/sheet", answer.GetProperty("schema").GetString());
        Assert.Equal(["labels", "labels", "taps", "taps"], answer.GetProperty("files").EnumerateArray().Select(file => file.GetProperty("name").GetString()));
        string taps = File.ReadAllText(Path.Combine(folder.Path, "trike", "sheets", "taps.csv"));
        Assert.StartsWith("tap;expectedV;toleranceV;", taps, StringComparison.Ordinal);
        Assert.Contains("\r\nB1;3,6", taps, StringComparison.Ordinal);
    }

    [Fact]
    public void A_sheet_that_lacks_its_data_is_refused_and_nothing_is_written()
    {
        using Folder folder = new();
        Planner.Run("job", "new", folder.File("x"));

        (int exitCode, JsonElement error) = Planner.Json("sheet", folder.File("x.job.json"), "place", "--into", folder.File("out"));

        Assert.Equal((4, "sheet-not-possible"), (exitCode, error.GetProperty("code").GetString()));
        Assert.False(Directory.Exists(folder.File("out")));
        Assert.Equal(2, Planner.Run("sheet", folder.File("x"), "tap").ExitCode);
    }
}
