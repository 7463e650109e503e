using PackPlanner.Core.Jobs;

namespace PackPlanner.Tests.Screens;

/// <summary>Flat cells side by side (invented, 53.5 x 173.5 x 206 mm in a box of 420 x 360 x 260 mm), in a job without cells.</summary>
public sealed class FlatCellsOnScreenTests : IDisposable
{
    private const string Case = """
        {"schema":"packplanner-fit-case","version":1,"cavity":{"parts":[{"box":[0,0,0,420,360,260]}]},
         "cell":{"shape":"box","thicknessMm":53.5,"lengthMm":173.5,"heightMm":206,"massG":4000,"nominalV":3.2,"fullV":3.65},
         "clearance":{"wallMm":2,"spacerMm":0.5,"plateMm":2},"pack":{"series":14,"parallel":1}}
        """;

    private readonly Bench bench = new();

    public FlatCellsOnScreenTests()
    {
        bench.Desk.Store.New("flat");
        bench.Desk.Do(JobChanges.AddDocument(new JobDocument(new JobSource("s1", "flat.json", new string('0', 64), SourceKind.FitCase, []), Case)));
        bench.Set("series", new JobValue.Number(14));
        bench.Set("parallel", new JobValue.Number(1));
    }

    public void Dispose() => bench.Dispose();

    // Two that touch on one sign share a wall: neither frame is left open.
    [Fact]
    public void Each_is_drawn_with_both_of_its_walls()
    {
        bench.Press("4");
        string row = bench.Text(120, 36).Split('\n').Single(line => line.Contains("  7  ", StringComparison.Ordinal) && line.Contains("  6  ", StringComparison.Ordinal));

        Assert.Matches(@"[\[|] +7 +(\||\]\[) +6 +(\||\]\[) +5 +(\||\]\[) +4 +(\||\]\[) +3 +(\||\]\[) +2 +(\||\]\[) +1 +\]", row);
    }

    [Fact]
    public void Standing_ones_are_not_said_to_lie_and_sheets_that_want_cells_are_not_promised()
    {
        bench.Press("5");
        string text = bench.Text();

        Assert.Contains("o both poles on top", text, StringComparison.Ordinal);
        Assert.Contains("8 Sheets prints places only until there are cells", text, StringComparison.Ordinal);
        bench.Press("8");
        Assert.Matches(@"taps +not yet: the job has no cells", bench.Text(120, 36));
    }
}
