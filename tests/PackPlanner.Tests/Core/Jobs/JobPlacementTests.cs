using System.Collections.Immutable;
using PackPlanner.Core.Jobs;

namespace PackPlanner.Tests.Core.Jobs;

public class JobPlacementTests
{
    private static JobPlacement Exchanged(params (int Place, int Group)[] pairs) =>
        new() { Exchanged = pairs.ToImmutableSortedDictionary(pair => pair.Place, pair => pair.Group) };

    private static int[] InSeries(int groups, JobPlacement placement) =>
        [.. JobPlaces.InSeries([.. Enumerable.Range(1, groups).Select(number => new JobGroup(number, []))], placement).Select(group => group.Number)];

    [Fact]
    public void An_exchange_with_a_group_that_is_not_there_is_none_and_is_named()
    {
        JobPlacement placement = Exchanged((1, 4), (4, 1), (2, 3), (3, 2));

        Assert.Equal([4, 3, 2, 1], InSeries(4, placement));
        Assert.Null(placement.LeftOutWithin(4));
        Assert.Equal([1, 3, 2], InSeries(3, placement));
        Assert.Equal("Of what was changed about where groups stand, the exchange of groups at 1, 4 no longer applies: there are 3 groups.", placement.LeftOutWithin(3));
    }

    // Three went round; without the third no two of them are an exchange.
    [Theory]
    [InlineData(4, new[] { 2, 4, 3, 1 })]
    [InlineData(3, new[] { 1, 2, 3 })]
    public void Groups_that_went_round_stand_where_they_were_when_one_of_them_is_gone(int groups, int[] expected) =>
        Assert.Equal(expected, InSeries(groups, Exchanged((1, 2), (2, 4), (4, 1))));

    // A file edited by hand can name one group twice; a group never stands at two places.
    [Fact]
    public void No_group_is_lost_or_stands_twice()
    {
        Assert.Equal([1, 2, 3], InSeries(3, Exchanged((1, 2))));
        Assert.Equal([2, 1, 3], InSeries(3, Exchanged((1, 2), (2, 1), (3, 1))));
        Assert.Equal([1, 2, 3], InSeries(3, Exchanged((0, 1), (1, 0), (-1, 2))));
    }

    [Fact]
    public void A_group_that_is_not_there_is_not_turned_over()
    {
        JobPlacement placement = new() { Turned = [2, 5], EndsSwapped = true };

        Assert.Equal([2], placement.Within(3).Turned);
        Assert.True(placement.Within(3).EndsSwapped);
        Assert.Contains("turning over group 5 no longer applies", placement.LeftOutWithin(3), StringComparison.Ordinal);
    }
}
