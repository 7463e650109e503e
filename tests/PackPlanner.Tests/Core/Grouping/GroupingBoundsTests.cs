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
}
