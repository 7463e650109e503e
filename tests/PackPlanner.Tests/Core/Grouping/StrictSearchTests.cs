using CsCheck;
using PackPlanner.Core.Grouping;

namespace PackPlanner.Tests.Core.Grouping;

public class StrictSearchTests
{
    private const long Plenty = 400_000_000;

    [Fact]
    public void Tiny_lots_get_the_best_of_all_groupings_proven()
    {
        Lots.Tiny.Sample(
            lot =>
            {
                StrictAnswer answer = Solve(GroupingProblem.Free(lot.Cells, lot.Series, lot.Parallel));

                (long smallest, long spread) = Enumeration.Best(lot.Cells, lot.Series, lot.Parallel);
                Assert.Equal((smallest, spread), (answer.Best.Smallest, answer.Best.Spread));
                Assert.True(answer.Proven);
            },
            seed: "0000Grp1Tiny0", iter: 3000, threads: 1);
    }

    [Fact]
    public void Tiny_lots_with_pinned_cells_get_the_best_of_all_groupings_proven()
    {
        (from lot in Lots.Tiny from pins in Gen.Int[0, 9].Array[3] from groups in Gen.Int[0, 4].Array[3] select (lot, pins, groups))
            .Sample(
                draw =>
                {
                    (int series, int parallel, long[] cells) = draw.lot;
                    int[] pin = Pins(cells.Length, series, parallel, draw.pins, draw.groups);

                    StrictAnswer answer = Solve(Enumeration.Pinned(cells, series, parallel, pin));

                    (long smallest, long spread) = Enumeration.Best(cells, series, parallel, pin);
                    Assert.Equal((smallest, spread), (answer.Best.Smallest, answer.Best.Spread));
                    Assert.True(answer.Proven);
                },
                seed: "0000Grp2Pins0", iter: 1500, threads: 1);
    }

    [Theory]
    [InlineData(7, 3)]
    [InlineData(8, 4)]
    [InlineData(12, 5)]
    [InlineData(13, 6)]
    [InlineData(20, 10)]
    [InlineData(16, 14)]
    [InlineData(100, 20)]
    public void A_planted_perfect_split_is_matched(int series, int parallel)
    {
        long sum = 2150L * parallel;
        for (int seed = 1; seed <= 10; seed++)
        {
            GroupingProblem problem = GroupingProblem.Free(Lots.Planted(series, parallel, sum, seed), series, parallel);

            StrictAnswer answer = Solve(problem);

            Assert.Equal((sum, 0), (answer.Best.Smallest, answer.Best.Spread));
            Assert.True(answer.Proven);
        }
    }

    [Theory]
    [InlineData(10, 5, 0)]
    [InlineData(13, 6, 8)]
    [InlineData(20, 10, 10)]
    [InlineData(100, 100, 300)]
    [InlineData(1000, 10, 500)]
    public void Used_lots_reach_the_sum_bound_within_one_step(int series, int parallel, int spares)
    {
        long[] cells = Lots.Used((series * parallel) + spares, seed: 7);

        StrictAnswer answer = Solve(GroupingProblem.Free(cells, series, parallel));

        Assert.Equal(cells.Take(series * parallel).Sum() / series, answer.Best.Smallest);
        Assert.InRange(answer.Best.Spread, 0, 1);
        Assert.True(answer.Proven);
    }

    [Fact]
    public void Every_group_is_filled_exactly_and_sums_are_those_of_its_cells()
    {
        for (int seed = 1; seed <= 20; seed++)
        {
            long[] cells = Lots.Used(70, seed);

            StrictAnswer answer = Solve(GroupingProblem.Free(cells, 8, 8), steps: 2_000_000);

            for (int g = 0; g < 8; g++)
            {
                int[] members = [.. Enumerable.Range(0, 70).Where(i => answer.Best.GroupOf[i] == g)];
                Assert.Equal(8, members.Length);
                Assert.Equal(answer.Best.Sum[g], members.Sum(i => cells[i]));
            }
        }
    }

    [Fact]
    public void One_more_cell_never_lowers_the_smallest_group()
    {
        for (int seed = 1; seed <= 30; seed++)
        {
            long[] fewer = Lots.Used(15, seed);
            long[] more = Lots.Downwards([.. fewer, .. Lots.Used(1, seed + 100)]);

            long before = Solve(GroupingProblem.Free(fewer, 5, 3)).Best.Smallest;
            long after = Solve(GroupingProblem.Free(more, 5, 3)).Best.Smallest;

            Assert.True(after >= before, $"seed {seed}: {before} became {after}");
        }
    }

    [Fact]
    public void A_spent_budget_still_gives_a_whole_grouping_and_claims_no_proof()
    {
        long[] cells = Lots.Used(158, seed: 3);

        StrictAnswer answer = Solve(GroupingProblem.Free(cells, 50, 3), steps: 1);

        Assert.Equal(150, answer.Best.GroupOf.Count(group => group >= 0));
        Assert.True(answer.Bound >= answer.Best.Smallest);
        Assert.False(answer.Proven);
    }

    [Fact]
    public void The_same_lot_gives_the_same_grouping_twice()
    {
        long[] cells = Lots.Used(99, seed: 5);

        StrictAnswer first = Solve(GroupingProblem.Free(cells, 30, 3), steps: 20_000_000);
        StrictAnswer second = Solve(GroupingProblem.Free([.. cells], 30, 3), steps: 20_000_000);

        Assert.Equal(first.Best.GroupOf, second.Best.GroupOf);
    }

    [Fact]
    public void A_cancelled_search_says_that_it_was_stopped()
    {
        using CancellationTokenSource stop = new();
        stop.Cancel();

        StrictAnswer answer = StrictSearch.Solve(
            GroupingProblem.Free(Lots.Used(150, seed: 2), 50, 3), new SearchBudget(Plenty, stop.Token));

        Assert.True(answer.Stopped);
        Assert.Equal(50, answer.Best.Sum.Length);
    }

    private static StrictAnswer Solve(GroupingProblem problem, long steps = Plenty) =>
        StrictSearch.Solve(problem, new SearchBudget(steps));

    private static int[] Pins(int count, int series, int parallel, int[] cells, int[] groups)
    {
        int[] pin = [.. Enumerable.Repeat(-1, count)];
        for (int k = 0; k < cells.Length; k++)
        {
            (int cell, int group) = (cells[k] % count, groups[k] % series);
            if (pin[cell] < 0 && pin.Count(p => p == group) < parallel)
                pin[cell] = group;
        }

        return pin;
    }
}
