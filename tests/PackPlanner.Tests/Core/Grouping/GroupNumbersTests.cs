using PackPlanner.Core.Grouping;

namespace PackPlanner.Tests.Core.Grouping;

/// <summary>From the search's numbers back to groups that a builder knows, by hand.</summary>
public class GroupNumbersTests
{
    // Three pairs of 4.0 Ah, the only equal ones: a b, c d, e f.
    private static readonly GroupingCell[] Six =
        [new("a", 2.5, null), new("b", 1.5, null), new("c", 2.3, null), new("d", 1.7, null), new("e", 2.1, null), new("f", 1.9, null)];

    // Without an existing grouping by the largest cell; else as the existing group that most cells come from, the lower number first where that is undecided.
    [Theory]
    [InlineData("", "a b|c d|e f")]
    [InlineData("e f|a b|c d", "e f|a b|c d")]
    [InlineData("c e|b a|", "c d|a b|e f")]
    [InlineData("x y|f a|d c", "e f|a b|c d")]
    [InlineData("||e", "a b|c d|e f")]
    [InlineData("|e|", "a b|e f|c d")]
    public void Groups_take_the_number_of_the_existing_group_they_hold_most_of(string existing, string expected)
    {
        MatchedPack pack = Match(new()
        {
            Cells = Six,
            Series = 3,
            Parallel = 2,
            Existing = existing.Length == 0 ? null : [.. existing.Split('|').Select(group => group.Split(' ', StringSplitOptions.RemoveEmptyEntries))],
        });

        Assert.Equal(expected, Written(pack));
    }

    [Fact]
    public void A_group_with_a_lock_keeps_its_number_and_the_others_fill_up()
    {
        MatchedPack pack = Match(new() { Cells = Six, Series = 3, Parallel = 2, Locks = new Dictionary<string, int> { ["b"] = 3 } });

        Assert.Equal("c d|e f|a b", Written(pack));
        Assert.Equal("c d|a b|e f", Written(Match(new() { Cells = Six, Series = 3, Parallel = 2, Locks = new Dictionary<string, int> { ["b"] = 2 }, Existing = [["d"], ["f"], ["e"]] })));
    }

    // Steps of 5 mAh: a tester that writes 50 mAh cannot tell answers nine steps apart.
    [Theory]
    [InlineData(null, 0)]
    [InlineData(0.001, 0)]
    [InlineData(0.005, 0)]
    [InlineData(0.01, 1)]
    [InlineData(0.05, 9)]
    public void Answers_within_a_step_of_the_tester_are_close_enough(double? stepAh, long steps) =>
        Assert.Equal(steps, SortedLot.Of(new() { Cells = [new("a", 2.31, null), new("b", 2.255, null), new("c", 2.03, null)], Series = 1, Parallel = 2 }).CloseEnough(stepAh));

    // By hand: one more cell as good as the middle one, 2.1 Ah, in place of the weakest used one, spread over three groups.
    [Fact]
    public void One_more_cell_is_worth_the_middle_less_the_weakest_over_the_groups()
    {
        MatchedPack pack = Match(new() { Cells = Six, Series = 3, Parallel = 2 });

        Assert.Equal((2.1 - 1.5) / 3, pack.OneMoreCellAh, tolerance: 1e-12);
    }

    [Theory]
    [InlineData(50, 13, 4, "13s3p 12s4p")]
    [InlineData(3, 4, 2, "1s2p")]
    [InlineData(4, 4, 5, "4s1p")]
    [InlineData(1, 2, 2, "")]
    public void Shapes_that_the_cells_suffice_for_are_named(int cells, int series, int parallel, string expected) =>
        Assert.Equal(expected, string.Join(' ', RequestChecks.NearestShapes(cells, series, parallel).Select(shape => $"{shape.Series}s{shape.Parallel}p")));

    // By hand: about 100 as wide as the strict spread of 4 or half of the noise, whichever is more: 98 to 102, 97.5 to 102.5 within whole steps, 95 to 105.
    [Theory]
    [InlineData(0.0, 98, 102)]
    [InlineData(8.0, 98, 102)]
    [InlineData(10.0, 98, 102)]
    [InlineData(12.0, 97, 103)]
    [InlineData(20.0, 95, 105)]
    public void The_band_is_as_wide_as_the_strict_spread_or_half_the_noise(double noiseSteps, long low, long high)
    {
        GroupingTrial strict = GroupingTrial.Of(GroupingProblem.Free([102, 98], 2, 1), [0, 1]);

        Assert.Equal((low, high), GroupMatcher.Band(strict, noiseSteps));
    }

    private static MatchedPack Match(GroupingRequest request) =>
        Assert.IsType<GroupingOutcome.Matched>(GroupMatcher.Match(request, null, TestContext.Current.CancellationToken)).Pack;

    private static string Written(MatchedPack pack) => string.Join('|', pack.Groups.Select(group => string.Join(' ', group.Cells.Select(cell => cell.Label).Order())));
}
