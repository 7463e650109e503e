using PackPlanner.Core.Jobs;
using PackPlanner.Formats.Words;

namespace PackPlanner.Tests.Formats.Words;

/// <summary>How well a tester repeats, as it is told to a job.</summary>
public class RepeatabilityGivenTests
{
    private static readonly GivenEntry Entry = GivenCatalogue.All.Single(entry => entry.Key == "repeatability");

    [Theory]
    [InlineData("0")]
    [InlineData("0.0 %")]
    public void No_tester_repeats_exactly(string typed)
    {
        string? why = TypedGiven.Read(Entry, typed, percentBeside: true, out JobValue? value);

        Assert.Contains("no tester repeats exactly", why, StringComparison.Ordinal);
        Assert.Null(value);
    }

    [Fact]
    public void Any_other_share_is_taken_and_a_dash_is_unknown()
    {
        Assert.Null(TypedGiven.Read(Entry, "0.2", percentBeside: true, out JobValue? value));
        Assert.Equal(new JobValue.Number(0.002), value);
        Assert.Null(TypedGiven.Read(Entry, "-", percentBeside: true, out JobValue? none));
        Assert.Null(none);
    }
}
