using PackPlanner.Core.Cautions;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.Sizing;

namespace PackPlanner.Tests.Core.Sizing;

/// <summary>A fuse for each cell is asked for above four small cells in parallel, in a size as in a job: the trigger and one step beside it.</summary>
public class CellFuseCautionTests
{
    [Theory]
    [InlineData(5, 10.0, true)]
    [InlineData(4, 10.0, false)]
    [InlineData(5, 10.1, false)]
    [InlineData(9, 5.0, true)]
    [InlineData(9, 100.0, false)]
    public void Large_cells_have_no_fuse_each_but_a_link(int parallel, double ratedAh, bool asked)
    {
        SizingRequest request = new(
            [new SizingCell { Name = "invented", NominalV = 3.6, FullV = 4.2, CutoffV = 3.0, CapacityAh = ratedAh, ResistanceMilliohm = 30 }],
            13, parallel, null, new VehicleNeed { WhPerKm = 20, RangeKm = 1 }, new Electrics(), null, null);
        JobGivens givens = JobGivens.None.With("parallel", Said(parallel)).With("ratedAh", Said(ratedAh));

        IReadOnlyList<Caution> sized = Assert.IsType<SizingOutcome.Choices>(SizingSearch.Find(request)).Options[0].Cautions;

        Assert.Equal(asked, sized.Any(caution => caution.Code == "caution-22"));
        Assert.Equal(asked, JobCautions.Of(givens).Any(caution => caution.Code == "caution-22"));
        // Eight full cells drive at most 8 x 4.2 V / 15 milliohm into the ninth, 1 kHz being half of 30.
        if (parallel == 9 && asked)
            Assert.Contains("up to 2240 A into it", sized.First(caution => caution.Code == "caution-22").Saw, StringComparison.Ordinal);
    }

    private static Given Said(double figure) => new(new JobValue.Number(figure), Origin.You(new DateOnly(2026, 11, 30)));
}
