using PackPlanner.Core.Grouping;

namespace PackPlanner.Tests.Core.Grouping;

public class BatchKeepingTests
{
    [Fact]
    public void Each_group_takes_one_batch_where_the_counts_allow_it()
    {
        // By hand: batch 1 holds 2310 + 2255 + 2190 = 6755, the three largest of batch 2 hold 2140 + 2085 + 2030 = 6255.
        MatchedPack pack = Match(2, 3, ("A", 2310, "1"), ("B", 2255, "1"), ("C", 2190, "1"), ("D", 2140, "2"), ("E", 2085, "2"), ("F", 2030, "2"), ("G", 1900, "2"));

        Assert.Equal(["A", "B", "C"], pack.Groups.Single(group => group.Cells[0].Batch == "1").Cells.Select(cell => cell.Label));
        Assert.Equal(["D", "E", "F"], pack.Groups.Single(group => group.Cells[0].Batch == "2").Cells.Select(cell => cell.Label));
        Assert.Equal(new BatchKeeping(0, 0, 6.255), pack.Batches);
        Assert.Equal(6.48, pack.StrictSmallestAh, 9);
    }

    [Fact]
    public void A_lock_with_a_cell_of_another_batch_makes_a_mixed_group()
    {
        GroupingRequest request = Request(2, 2, ("A", 2300, "1"), ("B", 2200, "1"), ("C", 2100, "2"), ("D", 2000, "2")) with { Locks = new Dictionary<string, int> { ["A"] = 1, ["C"] = 1 } };
        MatchedPack pack = Assert.IsType<GroupingOutcome.Matched>(GroupMatcher.Match(request, null, TestContext.Current.CancellationToken)).Pack;

        Assert.Equal(2, pack.Batches!.MixedGroups);
        Assert.Equal(2, pack.Batches.FewestMixedGroups);
    }

    // Two batches of equal cells but for their resistance: any three of a batch hold the same, so only the resistance is left to choose.
    [Fact]
    public void Resistances_are_levelled_inside_each_batch()
    {
        double[] milliohm = [30, 31, 34, 38, 41, 42, 29, 33, 35, 37, 40, 44, 36, 36];
        GroupingRequest request = new()
        {
            Cells = [.. milliohm.Select((r, i) => new GroupingCell($"K{i:00}", i < 7 ? 2.3 : 2.2, r) { Batch = i < 7 ? "1" : "2" })],
            Series = 4,
            Parallel = 3,
            KeepBatches = true,
            LevellingSteps = 20_000_000,
        };

        MatchedPack pack = Assert.IsType<GroupingOutcome.Matched>(GroupMatcher.Match(request, null, TestContext.Current.CancellationToken)).Pack;

        Assert.Equal(0, pack.Batches!.MixedGroups);
        Assert.Equal(6.6, pack.SmallestAh, tolerance: 1e-9);
        double[] groups = [.. pack.Groups.Select(group => group.ResistanceMilliohm!.Value)];
        // Every way to take twice three of seven from each batch, tried one by one.
        Assert.Equal(LeastSpread(milliohm[..7], milliohm[7..]), groups.Max() - groups.Min(), tolerance: 1e-9);
    }

    private static double LeastSpread(double[] one, double[] other) =>
        Pairs(one).SelectMany(first => Pairs(other), (first, second) => Math.Max(first.Item2, second.Item2) - Math.Min(first.Item1, second.Item1)).Min();

    private static List<(double, double)> Pairs(double[] milliohm)
    {
        double[] ways = [.. Assignments(7, 2, 3).SelectMany(groupOf => new[] { 0, 1 }.Select(g => 1 / milliohm.Where((_, i) => groupOf[i] == g).Sum(r => 1 / r)))];
        return [.. ways.Chunk(2).Select(pair => (pair.Min(), pair.Max())).Distinct()];
    }

    [Fact]
    public void Complete_enumeration_of_small_lots_never_finds_fewer_mixed_groups_nor_more_than_the_bound()
    {
        Random random = new(5);
        int reached = 0;
        const int lots = 150;
        for (int lot = 0; lot < lots; lot++)
        {
            (int series, int parallel) = random.Next(3) switch { 0 => (2, 3), 1 => (3, 2), _ => (2, 2) };
            (string, double, string?)[] cells =
            [
                .. Enumerable.Range(0, (series * parallel) + random.Next(3))
                    .Select(i => ($"K{i}", (double)random.Next(1800, 2400), random.Next(12) == 0 ? null : "abc"[random.Next(1 + random.Next(1, 3))].ToString())),
            ];
            MatchedPack pack = Match(series, parallel, cells);
            (int mixed, double smallest) = Best(cells, series, parallel);
            Assert.Equal(mixed, pack.Batches!.MixedGroups);
            Assert.Equal(mixed, pack.Batches.FewestMixedGroups);
            Assert.True(pack.SmallestAh <= (smallest / 1000) + 1e-9);
            Assert.True(pack.Batches.BoundAh >= (smallest / 1000) - 1e-9, $"lot {lot}: bound {pack.Batches.BoundAh}, truth {smallest}");
            reached += pack.SmallestAh >= (smallest / 1000) - 1e-9 ? 1 : 0;
        }

        Assert.True(reached >= lots * 95 / 100, $"{reached} of {lots} reach the optimum");
    }

    [Fact]
    public void The_fewest_moves_that_are_claimed_are_the_fewest_of_all_groupings()
    {
        Random random = new(9);
        for (int lot = 0; lot < 60; lot++)
        {
            double[] capacity = [.. Enumerable.Range(0, 6 + (lot % 2)).Select(_ => lot % 3 == 0 ? 100.0 * random.Next(18, 24) : random.Next(1800, 2400))];
            GroupingRequest request = Request(3, 2, [.. capacity.Select((mAh, i) => ($"K{i}", mAh, (string?)null))]) with
            {
                KeepBatches = false,
                FewestMoves = true,
                Existing = [["K0", "K1"], ["K2", "K3"], ["K4", "K5"]],
            };
            MatchedPack pack = Assert.IsType<GroupingOutcome.Matched>(GroupMatcher.Match(request, null, TestContext.Current.CancellationToken)).Pack;
            int fewest = Assignments(capacity.Length, 3, 2)
                .Where(groupOf => Enumerable.Range(0, 3).All(g => Sum(capacity, groupOf, g) >= (pack.SmallestAh * 1000) - 1e-6))
                .Min(groupOf => Enumerable.Range(0, capacity.Length).Count(i => groupOf[i] != (i < 6 ? i / 2 : -1)));
            Assert.InRange(pack.FewestMoves!.Value, 0, fewest);
            Assert.True(fewest > 4 || pack.FewestMoves == fewest, $"lot {lot}: claimed {pack.FewestMoves}, truth {fewest}");
        }
    }

    private static MatchedPack Match(int series, int parallel, params (string, double, string?)[] cells) =>
        Assert.IsType<GroupingOutcome.Matched>(GroupMatcher.Match(Request(series, parallel, cells), null, TestContext.Current.CancellationToken)).Pack;

    private static GroupingRequest Request(int series, int parallel, params (string Label, double MilliampHours, string? Batch)[] cells) => new()
    {
        Cells = [.. cells.Select(cell => new GroupingCell(cell.Label, cell.MilliampHours / 1000, null) { Batch = cell.Batch })],
        Series = series,
        Parallel = parallel,
        KeepBatches = true,
    };

    private static (int Mixed, double Smallest) Best((string, double MilliampHours, string? Batch)[] cells, int series, int parallel)
    {
        double[] capacity = [.. cells.Select(cell => cell.MilliampHours)];
        return Assignments(cells.Length, series, parallel)
            .Select(groupOf => (
                Mixed: Enumerable.Range(0, series).Count(g => cells.Where((_, i) => groupOf[i] == g).Select(cell => cell.Batch).Distinct().Count() > 1 || cells.Where((cell, i) => groupOf[i] == g && cell.Batch is null).Any()),
                Smallest: Enumerable.Range(0, series).Min(g => Sum(capacity, groupOf, g))))
            .OrderBy(found => found.Mixed).ThenByDescending(found => found.Smallest).First();
    }

    private static double Sum(double[] capacity, int[] groupOf, int group) => capacity.Where((_, i) => groupOf[i] == group).Sum();

    private static IEnumerable<int[]> Assignments(int cells, int series, int parallel) => Enumeration.All(cells, [.. Enumerable.Repeat(parallel, series)]);
}
