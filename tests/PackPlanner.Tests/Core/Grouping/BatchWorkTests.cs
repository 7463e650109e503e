using System.Globalization;
using PackPlanner.Core.Grouping;

namespace PackPlanner.Tests.Core.Grouping;

/// <summary>How much work keeping batches together takes, in counted steps, for lots too large to enumerate.</summary>
public class BatchWorkTests
{
    private const long MostSteps = 1_500_000;

    [Fact]
    public void The_steps_to_groups_of_one_batch_are_those_that_were_kept()
    {
        List<string> lines = [];
        for (int seed = 1; seed <= 16; seed++)
        {
            (int series, int parallel) = new[] { (4, 3), (6, 4), (10, 5), (5, 8) }[seed % 4];
            GroupingRequest request = Request(series, parallel, spares: seed % 5, batches: 1 + seed % 4, locks: seed % 3 == 0 ? 3 : 0, seed);
            SortedLot lot = SortedLot.Of(request);
            BatchPlan plan = BatchPlan.Of(lot);
            SearchBudget budget = new(MostSteps);

            (GroupingTrial best, long bound) = BatchSearch.Arrange(lot, plan, budget, seed: 1);

            Assert.True(best.Smallest <= bound && bound <= Math.Max(plan.BoundSteps, plan.OtherwiseSteps), $"seed {seed}: {best.Smallest} of {bound}");
            Assert.All(Enumerable.Range(0, best.GroupOf.Length), i => Assert.True(plan.Allows(i, best.GroupOf[i])));
            lines.Add(string.Create(CultureInfo.InvariantCulture,
                $"{series}s{parallel}p +{seed % 5} batches {1 + seed % 4} seed {seed}: {MostSteps - budget.Left} steps; {plan.Mixed} mixed, types {string.Join(' ', plan.TypeOf)}; smallest {best.Smallest} of {bound}, spread {best.Spread}"));
        }

        KeptWork.Hold("batches.txt", lines);
    }

    // With mixed groups no single exchange that keeps to the plan is left that would raise the poorest group.
    [Fact]
    public void No_single_exchange_is_left_that_keeps_to_the_plan_and_helps()
    {
        int mixed = 0;
        for (int seed = 1; seed <= 24; seed++)
        {
            SortedLot lot = SortedLot.Of(Request(5, 3, spares: seed % 4, batches: 2 + seed % 3, locks: 0, seed));
            BatchPlan plan = BatchPlan.Of(lot);
            GroupingTrial best = BatchSearch.Arrange(lot, plan, new SearchBudget(20_000_000), seed: 1).Best;
            mixed += plan.Mixed > 0 ? 1 : 0;
            int poor = Array.IndexOf(best.Sum, best.Smallest);
            for (int a = 0; a < best.GroupOf.Length; a++)
            {
                for (int b = 0; b < best.GroupOf.Length; b++)
                {
                    long gain = lot.Problem.Capacity[b] - lot.Problem.Capacity[a];
                    int giver = best.GroupOf[b];
                    bool helps = best.GroupOf[a] == poor && giver != poor && gain > 0 && plan.Allows(b, poor) && plan.Allows(a, giver)
                        && (giver < 0 || best.Sum[giver] - gain > best.Smallest);
                    Assert.False(plan.Mixed > 0 && helps, $"seed {seed}: cell {b} of group {giver} for cell {a} of group {poor}");
                }
            }
        }

        Assert.InRange(mixed, 12, 24);
    }

    private static GroupingRequest Request(int series, int parallel, int spares, int batches, int locks, int seed)
    {
        Random random = new(seed);
        GroupingCell[] cells =
        [
            .. Lots.Used((series * parallel) + spares, seed).Select((mAh, i) =>
                new GroupingCell($"K{i:000}", mAh / 1000.0, null) { Batch = random.Next(15) == 0 ? null : $"{(char)('a' + random.Next(batches))}" }),
        ];
        return new GroupingRequest
        {
            Cells = cells,
            Series = series,
            Parallel = parallel,
            KeepBatches = true,
            Locks = Enumerable.Range(0, locks).ToDictionary(k => cells[k * 3].Label, k => k % series + 1),
        };
    }
}
