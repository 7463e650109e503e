using PackPlanner.Core.Grouping;
using PackPlanner.Tests.Core.Grouping;

namespace PackPlanner.Tests.Outside;

public class GroupingTests
{
    // By hand, all choices enumerated: leave out 1900; 2310 + 2030, 2255 + 2085, 2190 + 2140. The sum bound 4336 is out of reach.
    [Fact]
    public void Seven_cells_into_three_pairs_leave_the_weakest_out()
    {
        StrictAnswer answer = Solve([2310, 2255, 2190, 2140, 2085, 2030, 1900], 3, 2);

        Assert.Equal((4330, 10), (answer.Best.Smallest, answer.Best.Spread));
        Assert.Equal(-1, answer.Best.GroupOf[6]);
        Assert.True(answer.Proven);
    }

    // By hand: {2305, 1995, 2150}, {2230, 2145, 2075}, {2370, 1905, 2175}: 6450 each, and the only split with equal sums.
    [Fact]
    public void Nine_cells_with_one_perfect_split_get_it()
    {
        long[] cells = Lots.Downwards([2305, 1995, 2150, 2230, 2145, 2075, 2370, 1905, 2175]);

        StrictAnswer answer = Solve(cells, 3, 3);

        string[] groups =
        [
            .. Enumerable.Range(0, 3)
                .Select(g => string.Join(" ", cells.Where((_, i) => answer.Best.GroupOf[i] == g)))
                .Order(StringComparer.Ordinal),
        ];
        Assert.Equal(["2230 2145 2075", "2305 2150 1995", "2370 2175 1905"], groups);
        Assert.Equal((6450, 0), (answer.Best.Smallest, answer.Best.Spread));
        Assert.True(answer.Proven);
    }

    // By hand, all 5775 ways enumerated: 9.73, 9.73, 9.74 Ah; a deal to and fro gives 9.72, sorted blocks 9.14.
    [Fact]
    public void Twelve_cells_into_three_fours_reach_9_73_ampere_hours()
    {
        StrictAnswer answer = Solve([261, 258, 255, 252, 249, 247, 244, 240, 235, 231, 228, 220], 3, 4);

        Assert.Equal((973, 1), (answer.Best.Smallest, answer.Best.Spread));
        Assert.True(answer.Proven);
    }

    private static StrictAnswer Solve(long[] cells, int series, int parallel) =>
        StrictSearch.Solve(GroupingProblem.Free(cells, series, parallel), new SearchBudget(100_000_000));
}
