using CsCheck;
using PackPlanner.Core.Grouping;

namespace PackPlanner.Tests.Core.Grouping;

public class GroupingBoundsTests
{
    [Fact]
    public void No_bound_is_ever_below_the_best_grouping()
    {
        Lots.Tiny.Sample(
            lot =>
            {
                GroupingProblem problem = GroupingProblem.Free(lot.Cells, lot.Series, lot.Parallel);

                (long smallest, long spread) = Enumeration.Best(lot.Cells, lot.Series, lot.Parallel);
                Assert.True(GroupingBounds.OnSmallest(problem) >= smallest);
                Assert.True(GroupingBounds.OnLargest(problem, smallest) <= smallest + spread);
            },
            seed: "0000Grp3Bnds0", iter: 2000, threads: 1);
    }

    [Fact]
    public void One_giant_cell_leaves_the_other_groups_what_remains()
    {
        // By hand: the giant touches one group; the other two hold at best 5 + 5 + 5 + 5 = 20, so 10 each.
        long bound = GroupingBounds.OnSmallest([90, 5, 5, 5, 5, 1], 3, 2);

        Assert.True(bound <= 10);
    }

    [Fact]
    public void Two_weak_cells_that_must_share_a_group_bound_it()
    {
        // By hand: three weak cells in two groups: some group holds two of them, and at best one good cell: 1 + 1 + 9 = 11.
        long bound = GroupingBounds.OnSmallest([9, 9, 9, 1, 1, 1], 2, 3);

        Assert.Equal(11, bound);
    }

    // By hand: group 1 holds 1 and 1 and can gain 9 at most, 11; without locks 9 + 1 + 1 + 9 + 9 + 9 = 38 would allow 19 each. Group 2 holds at least 9 + 8 + 7 where
    // 9 and 8 are locked: no largest group is below 24.
    [Fact]
    public void A_group_of_locked_cells_bounds_by_what_its_open_places_can_add()
    {
        GroupingProblem weak = new([9, 9, 9, 9], 3, [2, 0], [1, 3], [1, 1]);
        GroupingProblem strong = new([7, 7, 7, 7], 3, [0, 17], [3, 1], [9, 8]);

        Assert.Equal(11, GroupingBounds.OnSmallest(weak));
        Assert.Equal(24, GroupingBounds.OnLargest(strong, 21));
        Assert.Equal(11, GroupingBounds.OnLargest(new([9, 9, 9, 9, 9], 3, [2, 0], [1, 3], [1, 1]), 11));
    }

    // The deal alone, before any search: every group within one step of its due.
    [Theory]
    [InlineData(12, 14)]
    [InlineData(30, 20)]
    [InlineData(100, 40)]
    [InlineData(7, 60)]
    public void A_deal_with_exchanges_alone_makes_used_lots_equal(int series, int parallel)
    {
        for (int seed = 1; seed <= 8; seed++)
        {
            long[] cells = Lots.Used(series * parallel, seed);
            int[] groupOf = new int[cells.Length];

            EqualDeal.Run(cells, [.. Enumerable.Range(0, cells.Length)], series, parallel, new SearchBudget(1_000_000), groupOf);

            GroupingTrial dealt = GroupingTrial.Of(GroupingProblem.Free(cells, series, parallel), groupOf);
            Assert.Equal((cells.Sum() / series, cells.Sum() % series == 0 ? 0 : 1), (dealt.Smallest, dealt.Spread));
        }
    }
}
