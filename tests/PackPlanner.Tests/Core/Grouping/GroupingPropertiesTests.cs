using CsCheck;
using PackPlanner.Core.Grouping;

namespace PackPlanner.Tests.Core.Grouping;

/// <summary>The small parts of the search against counting.</summary>
public class GroupingPropertiesTests
{
    private static readonly Gen<int[]> Members = Gen.Int[0, CellSet.Most - 1].Array[0, 40].Select(members => members.Distinct().ToArray());

    [Fact]
    public void A_set_of_cells_does_what_a_plain_set_does()
    {
        Gen.Select(Members, Members, Gen.Int[0, CellSet.Most]).Sample((one, other, count) =>
        {
            CellSet a = Of(one), b = Of(other);
            Assert.Equal(one.Order(), All(a));
            Assert.Equal((one.Length, one.Length == 0), (a.Count, a.IsEmpty));
            Assert.Equal(one.Except(other).Order(), All(a.Without(b)));
            Assert.Equal(one.Intersect(other).Order(), All(a.And(b)));
            Assert.Equal(one.Union(other).Order(), All(a.Or(b)));
            Assert.Equal(one.Intersect(other).Any(), a.Touches(b));
            Assert.Equal(one.All(other.Contains), a.IsWithin(b));
            Assert.Equal(one.Where(i => i > 0).Select(i => i - 1).Order(), All(a.OneDown));
            Assert.Equal(Enumerable.Range(0, count), All(CellSet.First(count)));
            if (one.Length > 0 && other.Length > 0)
                Assert.Equal(one.Max() < other.Min(), a.IsBefore(b));
            List<int> taken = [];
            for (CellSet rest = a; !rest.IsEmpty;)
                taken.Add(CellSet.TakeFirst(ref rest));
            Assert.Equal(one.Order(), taken);
        }, seed: "0000KIcCwDG2", iter: 2000);
    }

    private static CellSet Of(int[] members) => members.Aggregate(default(CellSet), (set, i) => set.With(i));

    private static int[] All(CellSet set) => [.. Enumerable.Range(0, CellSet.Most).Where(set.Has)];

    // Every choice of cells to leave out is looked at; with at most eight spares none is beyond the search.
    [Fact]
    public void A_choice_of_spares_with_a_wanted_total_is_found_where_there_is_one()
    {
        int found = 0, none = 0;
        Gen.Select(Gen.Int[1, 40].Array[5, 12], Gen.Int[1, 3], Gen.Int[1, 3], Gen.Int[0, 30]).Sample((cells, series, parallel, less) =>
        {
            int needed = series * parallel;
            if (needed > cells.Length)
                return;
            long[] sorted = [.. cells.OrderDescending().Select(c => (long)c)];
            GroupingProblem problem = GroupingProblem.Free(sorted, series, parallel);
            int[]? used = SpareChoice.Using(problem, less, out bool noneExists);
            long wanted = sorted.Take(needed).Sum() - less;
            bool exists = Enumerable.Range(0, 1 << sorted.Length).Any(set =>
                System.Numerics.BitOperations.PopCount((uint)set) == needed && Enumerable.Range(0, sorted.Length).Sum(i => (set >> i & 1) * sorted[i]) == wanted);
            Assert.Equal(exists, used is not null);
            Assert.Equal(!exists, noneExists);
            (found, none) = (found + (exists ? 1 : 0), none + (exists ? 0 : 1));
            if (used is null)
                return;
            Assert.Equal(used.Distinct().Order(), used);
            Assert.Equal((needed, wanted), (used.Length, used.Sum(i => sorted[i])));
        }, seed: "0000KIcCwDG2", iter: 1500, threads: 1);
        Assert.True(found > 200 && none > 200, $"{found} found, {none} not there");
    }

    // A tester of coarse steps: many cells alike on both sides of the border, so that which are listed matters. All totals by adding cell after cell.
    [Fact]
    public void Among_many_cells_that_are_alike_a_choice_of_spares_is_found_and_refused_rightly()
    {
        (int found, int none, int missed) = (0, 0, 0);
        Gen.Select(Gen.Int[12, 60], Gen.Int[1, 60], Gen.Int[1, 12], Gen.Int[1, 40], Gen.Int[0, 1_000_000]).Sample((count, needed, values, less, seed) =>
        {
            if (needed >= count)
                return;
            Random random = new(seed);
            long[] sorted = [.. Enumerable.Range(0, count).Select(_ => 100L + 2 * random.Next(values)).OrderDescending()];
            int[]? used = SpareChoice.Using(GroupingProblem.Free(sorted, 1, needed), less, out bool noneExists);
            long wanted = sorted.Take(needed).Sum() - less;
            bool exists = Totals(sorted, needed).Contains(wanted);
            Assert.True(!noneExists || !exists, $"{count} cells, {needed} needed, {less} less: there is one");
            Assert.True(exists || used is null);
            (found, none) = (found + (used is null ? 0 : 1), none + (noneExists ? 1 : 0));
            missed += exists && used is null ? 1 : 0;
            if (used is not null)
                Assert.Equal((needed, wanted, needed), (used.Distinct().Count(), used.Sum(i => sorted[i]), used.Length));
        }, seed: "0000KIcCwDG2", iter: 600, threads: 1);
        // Missed are those that want more than eight exchanges.
        Assert.True(found > 100 && none > 60 && missed < 12, $"{found} found, {none} refused, {missed} missed");
    }

    private static HashSet<long> Totals(long[] cells, int count)
    {
        HashSet<long>[] totals = [.. Enumerable.Range(0, count + 1).Select(_ => new HashSet<long>())];
        totals[0].Add(0);
        foreach (long cell in cells)
            for (int k = count; k > 0; k--)
                totals[k].UnionWith(totals[k - 1].Select(total => total + cell));
        return totals[count];
    }

    // Each argument of docs/methods/grouping.md formed by plain sums, without the running totals.
    [Fact]
    public void The_bound_is_the_least_of_its_arguments()
    {
        Gen.Select(Gen.Int[1, 6], Gen.Int[2, 5], Gen.Int[0, 1_000_000]).Sample((series, parallel, seed) =>
        {
            Random random = new(seed);
            long[] cells = [.. Enumerable.Range(0, series * parallel).Select(_ => (long)(random.Next(4) == 0 ? random.Next(1, 60) : random.Next(40, 60))).OrderDescending()];
            Assert.Equal(Bound(cells, series, parallel), GroupingBounds.OnSmallest(cells, series, parallel));
        }, seed: "0000KIcCwDG2", iter: 2000);
    }

    private static long Bound(long[] cells, int series, int parallel)
    {
        static long Floor(long sum, int groups) => (long)Math.Floor((double)sum / groups);
        int n = cells.Length;
        long Sum(int from, int count) => cells.Skip(from).Take(count).Sum();
        long Weakest(int count) => cells.TakeLast(count).Sum();
        long least = Floor(cells.Sum(), series);
        for (int i = 1; i < series; i++)
            least = Math.Min(least, Floor(Sum(i, (series - i) * parallel), series - i));
        // Of the j x S + 1 smallest some group holds j + 1: at best the largest j + 1 of them.
        for (int j = 0; j < parallel; j++)
            least = Math.Min(least, Sum(n - (j * series + 1), j + 1) + Sum(0, parallel - j - 1));
        for (int weak = 1; weak <= Math.Min(2 * series, n); weak++)
        {
            long best = long.MinValue;
            for (int groups = (int)Math.Ceiling((double)weak / parallel); groups <= Math.Min(weak, series); groups++)
            {
                long case_ = Floor(Weakest(weak) + Sum(0, groups * parallel - weak), groups);
                if (groups < weak)
                    case_ = Math.Min(case_, Sum(n - weak, 2) + Sum(0, parallel - 2));
                else
                    for (int j = 1; j < weak && j + (weak - j) * (parallel - 1) <= n - weak; j++)
                        case_ = Math.Min(case_, Floor(Sum(n - weak, weak - j) + Sum(j, (weak - j) * (parallel - 1)), weak - j));
                best = Math.Max(best, case_);
            }

            least = Math.Min(least, best);
        }

        return least;
    }
}
