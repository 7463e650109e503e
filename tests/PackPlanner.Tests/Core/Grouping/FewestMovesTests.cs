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

    // Group 1 is full of old cells and a newcomer is locked into it: the last of them in the order of capacity goes out, and the largest spare fills the hole.
    [Fact]
    public void A_locked_newcomer_crowds_an_old_cell_out()
    {
        GroupingRequest request = new()
        {
            Cells = [new("a", 2.3, null), new("b", 2.2, null), new("c", 2.1, null), new("d", 2.0, null), new("n", 2.25, null)],
            Series = 2,
            Parallel = 2,
            Existing = [["a", "b"], ["c", "d"]],
            FewestMoves = true,
            AsItIs = true,
            Locks = new Dictionary<string, int> { ["n"] = 1 },
        };
        MatchedPack pack = Assert.IsType<GroupingOutcome.Matched>(GroupMatcher.Match(request, null, TestContext.Current.CancellationToken)).Pack;

        Assert.Equal(["a n", "c d"], pack.Groups.Select(group => string.Join(' ', group.Cells.Select(cell => cell.Label))));
        Assert.Equal([new CellMove("n", null, 1), new CellMove("b", 1, null)], pack.Moves);
    }

    [Fact]
    public void Fewest_moves_of_no_grouping_are_an_ordinary_search_and_an_existing_one_alone_costs_nothing()
    {
        for (int seed = 1; seed <= 12; seed++)
        {
            GroupingCell[] cells = [.. Lots.Used(13, seed).Select((mAh, i) => new GroupingCell($"K{i:00}", mAh / 1000.0, null))];
            GroupingRequest plain = new() { Cells = cells, Series = 4, Parallel = 3 };
            double bestAh = Smallest(plain);

            Assert.Equal(bestAh, Smallest(plain with { FewestMoves = true }));
            Assert.Equal(bestAh, Smallest(plain with { Existing = [.. Enumerable.Range(0, 4).Select(g => cells.Skip(3 * g).Take(3).Select(cell => cell.Label).ToArray())] }));
        }

        static double Smallest(GroupingRequest request) => Assert.IsType<GroupingOutcome.Matched>(GroupMatcher.Match(request, null, TestContext.Current.CancellationToken)).Pack.SmallestAh;
    }

    // Every grouping there is, with how many cells it moves: for each aim the fewest, and of those the best.
    [Fact]
    public void The_ways_that_move_fewest_cells_are_those_of_all_groupings()
    {
        int[] seen = new int[8];
        for (int seed = 1; seed <= 60; seed++)
        {
            (int series, int parallel, int spares) = new[] { (3, 2, 1), (4, 2, 0), (2, 3, 2), (2, 4, 0), (3, 2, 2) }[seed % 5];
            GroupingProblem problem = new WorkLot(seed % 2 == 0 ? "coarse" : "used", series, parallel, spares, 0, seed).Problem();
            int[] before = Shuffled(problem, new Random(seed));
            GroupingTrial old = GroupingTrial.Of(problem, before);
            List<(GroupingTrial Way, int Moved)> all = [.. Enumeration.All(before.Length, problem.Places).Select(way => (GroupingTrial.Of(problem, way), Away(way, before)))];
            foreach (long aim in all.Select(way => way.Way.Smallest).Where(smallest => smallest > old.Smallest).Distinct().OrderDescending().Take(6))
            {
                int fewest = all.Where(way => way.Way.Smallest >= aim).Min(way => way.Moved);
                GroupingTrial best = all.Where(way => way.Moved == fewest).Select(way => way.Way).Aggregate((a, b) => b.IsBetterThan(a) ? b : a);

                (int least, GroupingTrial? better) = FewestMovesDeepening.Solve(problem, old, aim, before.Length + 1, new SearchBudget(long.MaxValue));

                Assert.Equal(fewest, least);
                Assert.NotNull(better);
                Assert.Equal((fewest, best.Smallest, best.Largest), (Away(better.GroupOf, before), better.Smallest, better.Largest));
                Assert.Equal((fewest, null), FewestMovesDeepening.Solve(problem, old, aim, fewest, new SearchBudget(long.MaxValue)));
                (int early, GroupingTrial? soFar) = FewestMovesDeepening.Solve(problem, old, aim, before.Length + 1, new SearchBudget(1 + 7 * seed));
                Assert.InRange(early, 2, fewest);
                Assert.True(soFar is null || (early == fewest && soFar.Smallest >= aim));
                seen[fewest]++;
            }
        }

        Assert.All(seen[2..7], count => Assert.InRange(count, 3, 400));
    }

    [Fact]
    public void What_is_good_enough_already_moves_nothing()
    {
        GroupingProblem problem = GroupingProblem.Free([40, 30, 20, 10], 2, 2);
        GroupingTrial before = GroupingTrial.Of(problem, [0, 1, 1, 0]);

        Assert.Equal((0, null), FewestMovesDeepening.Solve(problem, before, 50, 0, new SearchBudget(100)));
        Assert.Equal((0, before), FewestMovesDeepening.Solve(problem, before, 50, 2, new SearchBudget(100)));
    }

    // The descent takes three exchanges here, six cells; two suffice: M00 and M06 change places, and M07 comes in for M05.
    [Fact]
    public void A_longer_descent_gives_way_to_fewer_moves()
    {
        double[] ah = [2.310, 2.255, 2.190, 2.140, 2.085, 2.030, 1.900, 2.222, 2.111];
        GroupingRequest request = new()
        {
            Cells = [.. ah.Select((capacityAh, i) => new GroupingCell($"M{i:00}", capacityAh, null))],
            Series = 3,
            Parallel = 2,
            Existing = [["M00", "M01"], ["M02", "M03"], ["M04", "M05"]],
            FewestMoves = true,
        };

        MatchedPack pack = Assert.IsType<GroupingOutcome.Matched>(GroupMatcher.Match(request, null, TestContext.Current.CancellationToken)).Pack;

        Assert.Equal((4.395, 4, 4), (Math.Round(pack.SmallestAh, 9), pack.Moves?.Count, pack.FewestMoves));
    }

    // 4 groups of 3 and six spares: one cell is lost, and the best of all would move nearly everything. Whatever is lost, one spare comes in, and it is the best
    // of those that do not hang back; 1.9 Ah alone lie further below the strict answer than noise, and then more must move.
    [Fact]
    public void A_lost_cell_costs_one_spare_and_moves_no_other()
    {
        int shunned = 0;
        for (int seed = 1; seed <= 20; seed++)
        {
            GroupingCell[] cells = [.. Lots.Used(18, seed).Select((mAh, i) => new GroupingCell($"K{i:00}", mAh / 1000.0, null))];
            GroupingRequest request = new() { Cells = cells, Series = 4, Parallel = 3, NoiseFraction = 0.05 };
            MatchedPack before = Pack(request);
            string lost = before.Groups[seed % 4].Cells[seed % 3].Label;
            request = request with { Cells = [.. cells.Where(cell => cell.Label != lost)], Existing = [.. before.Groups.Select(group => group.Cells.Select(cell => cell.Label).ToArray())], FewestMoves = true };

            MatchedPack after = Pack(request);

            CellMove comes = Assert.Single(after.Moves!, move => move.FromGroup is null);
            Assert.Equal(new CellMove(lost, 1 + seed % 4, null), Assert.Single(after.Moves!, move => move != comes));
            Assert.Equal((1 + seed % 4, 2), (comes.ToGroup, after.FewestMoves));
            double Smallest(GroupingCell spare) => before.Groups.Min(group => group.CapacityAh + (group.Number == comes.ToGroup ? spare.CapacityAh - cells.Single(cell => cell.Label == lost).CapacityAh : 0));
            Assert.Equal(before.LeftOut.Max(Smallest), after.SmallestAh, 9);

            MatchedPack other = Pack(request with { Shunned = new HashSet<string> { comes.Cell } });
            Assert.DoesNotContain(other.Moves!, move => move.Cell == comes.Cell);
            shunned += other.Moves!.Count == 2 ? 1 : 0;
        }

        Assert.Equal(20, shunned);
    }

    // Without noise to bear a loss by, the same hole is filled and then bettered; with all cells as they stood, noise keeps all of them where the job asks so.
    [Fact]
    public void What_noise_would_show_anyway_moves_no_cell_of_a_job()
    {
        GroupingCell[] cells = [.. Lots.Used(16, 3).Select((mAh, i) => new GroupingCell($"K{i:00}", mAh / 1000.0, null))];
        GroupingRequest request = new() { Cells = cells, Series = 4, Parallel = 3, NoiseFraction = 0.02, FewestMoves = true };
        IReadOnlyList<GroupingCell>[] groups = [.. Pack(request with { FewestMoves = false }).Groups.Select(group => group.Cells)];
        (string one, string two) = (groups[0][0].Label, groups[1][0].Label);
        request = request with { Existing = [.. groups.Select(group => group.Select(cell => cell.Label == one ? two : cell.Label == two ? one : cell.Label).ToArray())] };

        Assert.Empty(Pack(request with { LossWithinNoise = true }).Moves!);
        Assert.NotEmpty(Pack(request).Moves!);
    }

    private static MatchedPack Pack(GroupingRequest request) =>
        Assert.IsType<GroupingOutcome.Matched>(GroupMatcher.Match(request, null, TestContext.Current.CancellationToken)).Pack;

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

    private static int Away(int[] groupOf, int[] before) => Enumerable.Range(0, before.Length).Count(i => groupOf[i] != before[i]);

    private static int[] Shuffled(GroupingProblem problem, Random random)
    {
        int[] seats = [.. problem.Places.SelectMany((open, g) => Enumerable.Repeat(g, open)), .. Enumerable.Repeat(-1, problem.Spares)];
        random.Shuffle(seats);
        return seats;
    }
}
