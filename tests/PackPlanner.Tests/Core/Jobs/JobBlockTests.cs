using PackPlanner.Core.Jobs;

namespace PackPlanner.Tests.Core.Jobs;

public class JobBlockTests
{
    [Theory]
    [InlineData(13, 9, true)]
    [InlineData(10_000, 10, true)]
    [InlineData(10_000, 11, false)]
    [InlineData(10_000, 10_000, false)]
    public void A_block_is_placed_for_what_can_be_meant(int series, int parallel, bool known)
    {
        Origin you = Origin.You(new DateOnly(2026, 1, 1));
        JobGivens givens = new (string Key, double Value)[] { ("series", series), ("parallel", parallel), ("cellDiameterMm", 21), ("cellLengthMm", 70) }
            .Aggregate(JobGivens.None, (so, given) => so.With(given.Key, new Given(new JobValue.Number(given.Value), you)));

        Assert.Equal(known, JobBlock.IsKnown(givens));
        if (!known)
            Assert.Null(JobBlock.Of(givens));
    }
}
