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
        Assert.Equal(answer.Fits, answer.Reasons.Count == 0);
    }

    private sealed class Told : IProgress<FitProgress>
    {
        internal FitProgress? First { get; private set; }

        public void Report(FitProgress value) => First ??= value;
    }
}
