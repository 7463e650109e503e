using System.Text.Json;
using PackPlanner.Core.Fitting;

namespace PackPlanner.Tests.Core.Fitting;

public class StoppedSearchTests
{
    [Theory]
    [InlineData(8)]
    [InlineData(400)]
    public void A_search_that_is_stopped_at_once_keeps_a_first_layout_and_claims_nothing_of_what_does_not_fit(int series)
    {
        OutlinePointMm[] outline = [new(0, 40), new(60, 0), new(380, 0), new(470, 50), new(520, 160), new(470, 270), new(330, 330), new(140, 320), new(20, 220)];
        FitCase fitCase = new(
            [new NamedSolid("frame", new Solid.Prism(Axis.Y, outline, 0, 260))],
            [new NamedSolid("tube", new Solid.Tube(new PointMm(-20, 60, 120), new PointMm(540, 200, 190), 34))],
            "box", new CellBody.Box(130, 36, 100, [BoxPose.Upright, BoxPose.OnEdge, BoxPose.OnFace]), 1000,
            new Clearances(WallMm: 3, PlateMm: 4, TerminalMm: 15, CellGapMm: 1, SpacerMm: 1), Series: series, LinkReachMm: 2);
        Told told = new();

        FitAnswer answer = LayoutSearch.Search(fitCase, FitEffort.Full, told, new CancellationToken(canceled: true));

        Assert.True(answer.Cells.Count > 10);
        Assert.Equal(answer.Cells.Count, told.First!.Best);
        Assert.All(answer.Reasons, reason => Assert.Equal("stopped-early", reason.Code));
        Assert.Equal(series == 8, answer.Fits);
        Assert.Equal(answer.Fits, answer.Reasons.Count == 0);
        Assert.True(answer.Stopped);
    }

    [Theory]
    [InlineData("""{"series":10,"linkReachMm":2}""", 10)]
    [InlineData("""{"series":40,"parallel":1,"linkReachMm":2}""", 40)]
    public void A_search_of_no_time_at_all_still_groups_what_it_found(string pack, int series)
    {
        string fitCase = FitRun.RoundCells(260, 150, 86, 21.4, 70.6, $$""","clearance":{"wallMm":2,"endMm":6,"cellGapMm":0.6},"pack":{{pack}}""");

        (int exitCode, JsonElement answer) = FitRun.Checked(fitCase, "--time-limit", "0s");

        Assert.Equal(0, exitCode);
        Assert.Equal("time-limit", answer.GetProperty("stoppedBy").GetString());
        Assert.True(answer.GetProperty("count").GetInt32() > 60);
        Assert.Equal(series, answer.GetProperty("series").GetInt32());
        Assert.True(answer.GetProperty("parallel").GetInt32() >= (series == 10 ? 6 : 1));
    }

    [Fact]
    public void Places_that_are_enough_are_still_grouped_well()
    {
        FitCase fitCase = new(
            [new NamedSolid("tray", new Solid.Box(new PointMm(0, 0, 0), new PointMm(260, 150, 86)))], [],
            "21700", new CellBody.Cylinder(21.4, 70.6, [Axis.Z]), 70, new Clearances(WallMm: 2, EndMm: 6, CellGapMm: 0.6), Series: 10, LinkReachMm: 2);

        FitAnswer answer = LayoutSearch.Search(fitCase, FitEffort.Full, null, CancellationToken.None, enough: new CancellationToken(canceled: true));

        Assert.True(answer.Stopped);
        Assert.Equal(answer.Cells.Count / 10, answer.Parallel);
    }

    private sealed class Told : IProgress<FitProgress>
    {
        internal FitProgress? First { get; private set; }

        public void Report(FitProgress value) => First ??= value;
    }
}
