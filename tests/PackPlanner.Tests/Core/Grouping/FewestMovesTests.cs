using PackPlanner.Core.Grouping;

namespace PackPlanner.Tests.Core.Grouping;

/// <summary>Bettering an existing grouping by exchanges, against the rule written out plainly.</summary>
public class FewestMovesTests
{
    [Fact]
    public void Each_exchange_is_the_best_there_is_and_moves_fewest_of_equals()
    {
        int exchanged = 0;
        for (int seed = 1; seed <= 80; seed++)
        {
            Random random = new(seed);
            WorkLot lot = new(WorkLot.Kinds[seed % 4], 3 + seed % 3, 2 + seed % 4, seed % 5, seed % 3, seed);
            GroupingProblem problem = lot.Problem();
            int[] existing = Shuffled(problem, random);
            long goodEnough = seed % 2 == 0 ? long.MaxValue : problem.BestTotal / problem.Series - random.Next(200);

            GroupingTrial found = FewestMovesSearch.Improve(problem, existing, goodEnough);

            GroupingTrial plain = GroupingTrial.Of(problem, existing);
            while (plain.Smallest < goodEnough && Best(problem, plain, existing) is { } next)
            {
                plain = next;
                exchanged++;
            }

            Assert.Equal((plain.Smallest, Moves(plain.GroupOf, existing)), (found.Smallest, Moves(found.GroupOf, existing)));
            Assert.Equal(plain.GroupOf, found.GroupOf);
        }

        Assert.InRange(exchanged, 100, 1000);
    }

    [Fact]
    public void Empty_places_take_the_largest_spares_the_poorest_group_first()
    {
        // By hand: 30 alone is poorer than 40, so it takes 22; 52 is now richer than 40, which takes 21; the third place is in group 3, with 10 and then 20.
        GroupingProblem problem = GroupingProblem.Free([40, 30, 22, 21, 20, 10, 9], 3, 2);

        GroupingTrial filled = FewestMovesSearch.Improve(problem, [0, 1, -1, -1, -1, 2, -1], long.MinValue);

        Assert.Equal([0, 1, 2, 1, 0, 2, -1], filled.GroupOf);
    }

    // Written out: of all exchanges of a cell of the poorest group for a larger one, the one with the largest smaller of the two groups; of equal ones
    // fewest moved against the beginning, spares before groups, then the two groups most alike; the first that is met of those.
    private static GroupingTrial? Best(GroupingProblem problem, GroupingTrial now, int[] before)
    {
        int poor = Array.IndexOf(now.Sum, now.Smallest);
        var ways =
            from a in Enumerable.Range(0, now.GroupOf.Length)
            where now.GroupOf[a] == poor
            from b in Enumerable.Range(0, now.GroupOf.Length)
            let giver = now.GroupOf[b]
            let gain = problem.Capacity[b] - problem.Capacity[a]
            where giver != poor && gain > 0
            let given = giver < 0 ? long.MaxValue : now.Sum[giver] - gain
            let smaller = Math.Min(now.Smallest + gain, given)
            where smaller > now.Smallest
            let moved = Exchanged(now.GroupOf, a, b)
            orderby smaller descending, Moves(moved, before), giver < 0 ? 0 : Math.Abs(now.Smallest + gain - given) + 1
            select moved;
        int[]? best = ways.FirstOrDefault();
        return best is null ? null : GroupingTrial.Of(problem, best);
    }

    private static int[] Exchanged(int[] groupOf, int a, int b)
    {
        int[] then = [.. groupOf];
        (then[a], then[b]) = (then[b], then[a]);
        return then;
    }

    // A spare that stays out, or a cell that goes out, is no move of its own: the one that comes in is.
    private static int Moves(int[] groupOf, int[] before) => Enumerable.Range(0, before.Length).Count(i => groupOf[i] >= 0 && groupOf[i] != before[i]);

    private static int[] Shuffled(GroupingProblem problem, Random random)
    {
        int[] seats = [.. problem.Places.SelectMany((open, g) => Enumerable.Repeat(g, open)), .. Enumerable.Repeat(-1, problem.Spares)];
        random.Shuffle(seats);
        return seats;
    }
}
