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
    public void Each_drawing_of_the_placement_lies_beside_its_svg_as_png_the_same_each_time()
    {
        using Folder folder = new();
        Planner.Run("demo", "scooter", "--into", folder.Path);

        string[] Files() => [.. Planner.Json("sheet", folder.File("scooter.job.json"), "place", "--date", "2026-11-24").Document.GetProperty("files").EnumerateArray()
            .Select(file => file.GetProperty("file").GetString()!)];
        string[] files = Files();
        byte[][] pngs = [.. files.Where(file => file.EndsWith(".png", StringComparison.Ordinal)).Select(File.ReadAllBytes)];
        Files();

        Assert.Equal(files.Where(file => file.EndsWith(".svg", StringComparison.Ordinal)).Select(file => Path.ChangeExtension(file, ".png")), files.Where(file => file.EndsWith(".png", StringComparison.Ordinal)));
        Assert.Equal(2, pngs.Length);
        Assert.NotEqual(pngs[0], pngs[1]);
        Assert.All(pngs, png => Assert.Equal("PNG", System.Text.Encoding.ASCII.GetString(png, 1, 3)));
        Assert.Equal(pngs, files.Where(file => file.EndsWith(".png", StringComparison.Ordinal)).Select(File.ReadAllBytes));
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
