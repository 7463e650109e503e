using PackPlanner.Core.Grouping;

namespace PackPlanner.Tests.Core.Grouping;

/// <summary>Like resistances first, then capacity, against every grouping there is.</summary>
public class EvenCurrentsTests
{
    // Six cells in three pairs: fifteen ways. Neighbours in the order of resistance set the share that no way may pass; of those that keep it the one with the
    // largest smallest group is wanted.
    [Fact]
    public void Of_all_pairs_that_keep_the_share_those_with_the_largest_smallest_group_are_found()
    {
        Random random = new(3);
        int best = 0, better = 0;
        const int lots = 80;
        for (int lot = 0; lot < lots; lot++)
        {
            GroupingCell[] cells = [.. Enumerable.Range(0, 6).Select(i => new GroupingCell($"K{i}", random.Next(1900, 2300) / 1000.0, random.Next(20, 44)))];
            MatchedPack pack = Assert.IsType<GroupingOutcome.Matched>(GroupMatcher.Match(
                new() { Cells = cells, Series = 3, Parallel = 2, Prefer = GroupingPreference.EvenCurrents, SearchSteps = 2_000_000, LevellingSteps = 2_000_000 },
                null, TestContext.Current.CancellationToken)).Pack;

            GroupingCell[] byOhm = [.. cells.OrderByDescending(cell => cell.ResistanceMilliohm)];
            // A share up to a tenth above an equal one is taken as even.
            (double limit, double plain) = (Math.Max(1.10, Worst(byOhm)), Smallest(byOhm));
            double worst = Worst([.. pack.Groups.SelectMany(group => group.Cells)]);
            Assert.True(worst <= limit * (1 + 1e-8), $"lot {lot}: {worst} over {limit}");
            double wanted = Pairings(cells).Where(order => Worst(order) <= limit * (1 + 1e-9)).Max(Smallest);
            best += Math.Abs(pack.SmallestAh - wanted) < 1e-9 || pack.SmallestAh > wanted ? 1 : 0;
            better += pack.SmallestAh > plain + 1e-9 ? 1 : 0;
        }

        Assert.True(best >= lots * 95 / 100, $"{best} of {lots} reach the best");
        Assert.True(better > lots / 5, $"only {better} of {lots} lots have anything to choose");
    }

    // One cell is locked: its pair begins with the cell that conducts most nearly as it does, the others with neighbours, and that sets the share. The lock is kept.
    [Fact]
    public void A_locked_cell_takes_the_likest_to_its_group_and_the_share_goes_by_that()
    {
        Random random = new(5);
        int best = 0;
        const int lots = 60;
        for (int lot = 0; lot < lots; lot++)
        {
            GroupingCell[] cells = [.. Enumerable.Range(0, 6).Select(i => new GroupingCell($"K{i}", random.Next(1900, 2300) / 1000.0, random.Next(20, 44)))];
            MatchedPack pack = Assert.IsType<GroupingOutcome.Matched>(GroupMatcher.Match(
                new() { Cells = cells, Series = 3, Parallel = 2, Prefer = GroupingPreference.EvenCurrents, SearchSteps = 2_000_000, LevellingSteps = 1_000_000, Locks = new Dictionary<string, int> { ["K0"] = 2 } },
                null, TestContext.Current.CancellationToken)).Pack;

            Assert.Contains(cells[0], pack.Groups[1].Cells);
            GroupingCell likest = cells.Skip(1).MinBy(cell => Math.Abs((1 / cell.ResistanceMilliohm!.Value) - (1 / cells[0].ResistanceMilliohm!.Value)))!;
            double limit = Math.Max(1.10, Worst([cells[0], likest, .. cells.Skip(1).Where(cell => cell != likest).OrderByDescending(cell => cell.ResistanceMilliohm)]));
            Assert.True(Worst([.. pack.Groups.SelectMany(group => group.Cells)]) <= limit * (1 + 1e-8), $"lot {lot}");
            double wanted = Pairings(cells).Where(order => Worst(order) <= limit * (1 + 1e-9)).Max(Smallest);
            best += pack.SmallestAh >= wanted - 1e-9 ? 1 : 0;
        }

        Assert.True(best >= lots * 9 / 10, $"{best} of {lots} reach the best");
    }

    private static double Worst(GroupingCell[] order) => order.Chunk(2).Max(pair => pair.Max(cell => 2 / cell.ResistanceMilliohm!.Value / pair.Sum(other => 1 / other.ResistanceMilliohm!.Value)));

    private static double Smallest(GroupingCell[] order) => order.Chunk(2).Min(pair => pair.Sum(cell => cell.CapacityAh));

    private static IEnumerable<GroupingCell[]> Pairings(GroupingCell[] cells)
    {
        if (cells.Length == 0)
            return [[]];
        return Enumerable.Range(1, cells.Length - 1).SelectMany(i => Pairings([.. cells.Where((_, k) => k != 0 && k != i)]).Select(rest => (GroupingCell[])[cells[0], cells[i], .. rest]));
    }

    // By hand: equal pairs are {a, d} and {b, c}; of the old grouping d comes to group 1 and b goes to group 2, and e was never in one.
    [Fact]
    public void Moves_are_told_by_where_a_cell_goes_then_from_where_then_by_label()
    {
        MatchedPack pack = Assert.IsType<GroupingOutcome.Matched>(GroupMatcher.Match(new()
        {
            Cells = [new("a", 2.3, null), new("b", 2.2, null), new("c", 2.1, null), new("d", 2.0, null), new("e", 1.0, null)],
            Series = 2,
            Parallel = 2,
            Existing = [["a", "b"], ["c", "e"]],
            Locks = new Dictionary<string, int> { ["a"] = 1, ["d"] = 1, ["b"] = 2, ["c"] = 2 },
        }, null, TestContext.Current.CancellationToken)).Pack;

        Assert.Equal([new CellMove("d", null, 1), new CellMove("b", 1, 2), new CellMove("e", 2, null)], pack.Moves);
    }
}
