using CsCheck;
using PackPlanner.Core.Grouping;

namespace PackPlanner.Tests.Core.Grouping;

/// <summary>Exact searches over a few groups against every way to fill them.</summary>
public class PoolResplitTests
{
    // Groups of other lots are mixed in, so that the pool's own numbers differ from the problem's; some groups hold locked cells.
    private static readonly Gen<(int Groups, int Spares, int Parallel, int Locks, int Seed)> Pools =
        Gen.Select(Gen.Int[2, 3], Gen.Int[0, 2], Gen.Int[2, 3], Gen.Int[0, 3], Gen.Int[0, 1_000_000]);

    [Fact]
    public void A_split_is_found_exactly_where_there_is_one()
    {
        (int found, int none) = (0, 0);
        Pools.Sample(draw =>
        {
            (GroupingProblem problem, int[] cells, int[] groups) = Pool(draw);
            int[] places = [.. groups.Select(g => problem.Places[g])];
            Random random = new(draw.Seed);
            long average = (groups.Sum(g => problem.BaseSum[g]) + cells.Take(places.Sum()).Sum(i => problem.Capacity[i])) / groups.Length;
            (long low, long high) = (average - random.Next(5), average + random.Next(-2, 6));
            int[] groupOf = [.. Enumerable.Repeat(-7, problem.Capacity.Length)];

            bool split = PoolResplit.TrySplit(problem, cells, groups, low, high, new SearchBudget(10_000_000), groupOf);

            bool exists = Enumeration.All(cells.Length, places).Any(way => Sums(problem, cells, groups, way).All(sum => sum >= low && sum <= high));
            Assert.Equal(exists, split);
            (found, none) = (found + (exists ? 1 : 0), none + (exists ? 0 : 1));
            Assert.All(Enumerable.Range(0, groupOf.Length).Except(cells), i => Assert.Equal(-7, groupOf[i]));
            if (!split)
                return;
            int[] answer = [.. cells.Select(i => groupOf[i] < 0 ? -1 : Array.IndexOf(groups, groupOf[i]))];
            Assert.Equal(places, Enumerable.Range(0, groups.Length).Select(k => answer.Count(k2 => k2 == k)));
            Assert.All(Sums(problem, cells, groups, answer), sum => Assert.InRange(sum, low, high));
        }, seed: "0000KIcCwDG2", iter: 400, threads: 1);
        Assert.True(found > 100 && none > 100, $"{found} found, {none} not there");
    }

    [Fact]
    public void A_window_is_refused_only_where_nothing_lies_in_it()
    {
        (int found, int none) = (0, 0);
        Pools.Sample(draw =>
        {
            (GroupingProblem problem, int[] cells, int[] groups) = Pool(draw);
            long[] capacity = [.. cells.Select(i => problem.Capacity[i])], bases = [.. groups.Select(g => problem.BaseSum[g])];
            int[] places = [.. groups.Select(g => problem.Places[g])], groupOf = new int[cells.Length];
            Random random = new(draw.Seed);
            WindowCover cover = new(capacity, bases, places);

            // The same cover is asked again with other windows, as the proofs do.
            for (int ask = 0; ask < 3; ask++)
            {
                long low = (bases.Sum() + capacity.Sum()) / groups.Length - random.Next(300) + 100;
                long high = random.Next(3) == 0 ? long.MaxValue / 4 : low + random.Next(40);
                CoverVerdict verdict = cover.Search(low, high, new SearchBudget(10_000_000), groupOf);

                bool exists = Enumeration.All(cells.Length, places).Any(way => Sums(problem, cells, groups, way).All(sum => sum >= low && sum <= high));
                Assert.Equal(exists ? CoverVerdict.Found : CoverVerdict.None, verdict);
                (found, none) = (found + (exists ? 1 : 0), none + (exists ? 0 : 1));
                if (exists)
                    Assert.All(Sums(problem, cells, groups, groupOf), sum => Assert.InRange(sum, low, high));
            }
        }, seed: "0000KIcCwDG2", iter: 200, threads: 1);
        Assert.True(found > 80 && none > 100, $"{found} found, {none} not there");
    }

    [Fact]
    public void A_search_without_steps_gives_up_and_one_of_too_many_cells_is_a_fault()
    {
        long[] cells = Lots.Used(40, 1);
        long average = cells.Sum() / 8;

        WindowCover cover = new(cells, new long[8], [5, 5, 5, 5, 5, 5, 5, 5]);

        Assert.Equal(CoverVerdict.GaveUp, cover.Search(average - 5, average + 5, new SearchBudget(50), new int[40]));
        Assert.Throws<ArgumentException>(() => new WindowCover(Lots.Used(129, 1), new long[1], [1]));
    }

    private static (GroupingProblem Problem, int[] Cells, int[] Groups) Pool((int Groups, int Spares, int Parallel, int Locks, int Seed) draw)
    {
        Random random = new(draw.Seed);
        WorkLot lot = new(draw.Seed % 2 == 0 ? "coarse" : "narrow", draw.Groups + 2, draw.Parallel, draw.Spares, draw.Locks, draw.Seed);
        GroupingProblem problem = lot.Problem();
        int[] groups = [.. Enumerable.Range(0, lot.Series).OrderBy(_ => random.Next()).Take(draw.Groups)];
        int needed = groups.Sum(g => problem.Places[g]);
        int[] cells = [.. Enumerable.Range(0, problem.Capacity.Length).OrderBy(_ => random.Next()).Take(needed + draw.Spares).Order()];
        return (problem, cells, groups);
    }

    private static long[] Sums(GroupingProblem problem, int[] cells, int[] groups, int[] way)
    {
        long[] sums = [.. groups.Select(g => problem.BaseSum[g])];
        for (int i = 0; i < way.Length; i++)
            if (way[i] >= 0)
                sums[way[i]] += problem.Capacity[cells[i]];
        return sums;
    }
}
