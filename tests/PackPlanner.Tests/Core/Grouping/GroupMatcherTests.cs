using PackPlanner.Core.Grouping;

namespace PackPlanner.Tests.Core.Grouping;

public class GroupMatcherTests
{
    [Fact]
    public void Group_sums_are_the_typed_decimals_without_a_trace_of_binary_rounding()
    {
        GroupingCell[] cells = [new("a", 2.31, null), new("b", 2.255, null), new("c", 2.03, null), new("d", 2.085, null)];

        MatchedPack pack = Match(cells, 2, 2);

        Assert.Equal([4.34, 4.34], pack.Groups.Select(g => g.CapacityAh));
        Assert.Equal(0.005, pack.StepAh);
    }

    [Fact]
    public void Order_of_rows_labels_and_units_change_nothing_in_the_figures()
    {
        GroupingCell[] cells = Cells(33, seed: 4);
        MatchedPack first = Match(cells, 7, 4, sigma: 0.01);

        Random random = new(9);
        GroupingCell[] shuffled = [.. cells.OrderBy(_ => random.Next())];
        GroupingCell[] renamed = [.. shuffled.Select((cell, i) => cell with { Label = $"other {i}" })];
        MatchedPack second = Match(renamed, 7, 4, sigma: 0.01);

        Assert.Equal(first.Groups.Select(g => g.CapacityAh), second.Groups.Select(g => g.CapacityAh));
        Assert.Equal(first.Groups.Select(g => g.ResistanceMilliohm), second.Groups.Select(g => g.ResistanceMilliohm));
        Assert.Equal(first.LeftOut.Select(c => c.CapacityAh), second.LeftOut.Select(c => c.CapacityAh));
    }

    [Fact]
    public void Stated_repeatability_levels_resistances_inside_the_band_and_keeps_the_strict_figures()
    {
        GroupingCell[] cells = Cells(65, seed: 11);

        MatchedPack strict = Match(cells, 13, 5);
        MatchedPack levelled = Match(cells, 13, 5, sigma: 0.01);

        double half = Math.Max(strict.SpreadAh, 0.01 * cells.Average(c => c.CapacityAh) * Math.Sqrt(5) / 2) / 2;
        double middle = strict.StrictSmallestAh + (strict.StrictSpreadAh / 2);
        Assert.All(levelled.Groups, g => Assert.InRange(g.CapacityAh, middle - half - 1e-9, middle + half + 1e-9));
        Assert.Equal(strict.StrictSmallestAh, levelled.StrictSmallestAh);
        Assert.Equal(strict.StrictSpreadAh, levelled.StrictSpreadAh);
        Assert.True(SpreadMilliohm(levelled) < SpreadMilliohm(strict) / 4);
        Assert.Null(strict.NoiseSpreadAh);
        Assert.NotNull(levelled.NoiseSpreadAh);
    }

    [Fact]
    public void Locked_cells_stay_in_their_groups()
    {
        GroupingCell[] cells = Cells(20, seed: 2);
        Dictionary<string, int> locks = new() { ["c0"] = 3, ["c1"] = 3, ["c19"] = 1 };

        MatchedPack pack = Matched(Request(cells, 4, 4) with { Locks = locks });

        Assert.Contains(pack.Groups[2].Cells, c => c.Label == "c0");
        Assert.Contains(pack.Groups[2].Cells, c => c.Label == "c1");
        Assert.Contains(pack.Groups[0].Cells, c => c.Label == "c19");
        Assert.Equal(16, pack.Groups.SelectMany(g => g.Cells).Select(c => c.Label).Distinct().Count());
        Assert.Equal(4, pack.LeftOut.Count);
    }

    [Theory]
    [InlineData("c0", 5, "groups 1 to 4")]
    [InlineData("c99", 1, "no usable cell")]
    public void A_lock_that_cannot_be_kept_is_a_contradiction(string cell, int group, string says)
    {
        GroupingOutcome outcome = Outcome(
            Request(Cells(16, seed: 2), 4, 4) with { Locks = new Dictionary<string, int> { [cell] = group } });

        Assert.Contains(says, Assert.IsType<GroupingOutcome.Contradicts>(outcome).Problem.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void More_locks_than_places_in_a_group_are_a_contradiction()
    {
        Dictionary<string, int> locks = new() { ["c0"] = 1, ["c1"] = 1, ["c2"] = 1 };

        GroupingOutcome outcome = Outcome(Request(Cells(8, seed: 2), 4, 2) with { Locks = locks });

        Assert.Contains("3 cells are locked", Assert.IsType<GroupingOutcome.Contradicts>(outcome).Problem.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void Too_few_cells_name_the_shape_with_the_same_series_first()
    {
        GroupingOutcome.TooFewCells few =
            Assert.IsType<GroupingOutcome.TooFewCells>(Outcome(Request(Cells(50, seed: 2), 13, 4)));

        Assert.Equal((50, 52), (few.Usable, few.Needed));
        Assert.Equal([(13, 3), (12, 4)], few.Shapes);
    }

    [Fact]
    public void The_share_of_the_first_current_follows_conductance()
    {
        // By hand: 20 and 30 milliohm: 3/5 and 2/5 of the current, so 1.2 times the equal half.
        MatchedPack pack = Match([new("a", 2.0, 20), new("b", 2.0, 30)], 1, 2);

        Assert.Equal("a", pack.LargestShare!.Cell);
        Assert.Equal(1.2, pack.LargestShare.TimesEqual, tolerance: 1e-12);
        Assert.Equal(12, pack.Groups[0].ResistanceMilliohm!.Value, tolerance: 1e-12);

        // Of several groups the largest share is told: 1.2 here beside 40 and 50 milliohm, 5/9 of the current and 1.11 times.
        MatchedPack two = Matched(Request([new("a", 2.0, 20), new("b", 2.0, 30), new("c", 2.0, 40), new("d", 2.0, 50)], 2, 2) with { Locks = new Dictionary<string, int> { ["c"] = 1, ["d"] = 1, ["a"] = 2, ["b"] = 2 } });
        Assert.Equal((2, "a"), (two.LargestShare!.Group, two.LargestShare.Cell));
        Assert.Equal(1.2, two.LargestShare.TimesEqual, tolerance: 1e-12);
    }

    [Fact]
    public void An_unknown_resistance_makes_the_share_unknown_not_equal()
    {
        MatchedPack pack = Match([new("a", 2.0, 20), new("b", 2.0, null)], 1, 2);

        Assert.Null(pack.LargestShare);
        Assert.Null(pack.Groups[0].ResistanceMilliohm);
    }

    [Fact]
    public void Even_currents_lower_the_largest_share_and_say_what_it_costs()
    {
        GroupingCell[] cells = Cells(56, seed: 6);

        MatchedPack equal = Match(cells, 7, 8);
        MatchedPack even = Matched(Request(cells, 7, 8) with { Prefer = GroupingPreference.EvenCurrents });

        Assert.True(even.LargestShare!.TimesEqual < 1 + ((equal.LargestShare!.TimesEqual - 1) * 0.7));
        Assert.Equal(equal.StrictSmallestAh, even.StrictSmallestAh);
        Assert.True(even.SmallestAh <= even.StrictSmallestAh);
    }

    [Fact]
    public void Two_cells_exchanged_in_a_perfect_pack_are_found_as_the_only_moves()
    {
        // Three groups of 6.45; then 2.305 and 2.075 change places.
        string[][] existing = [["2.075", "1.995", "2.15"], ["2.23", "2.145", "2.305"], ["2.37", "1.905", "2.175"]];
        GroupingCell[] cells =
        [
            .. existing.SelectMany(g => g).Select(l => new GroupingCell(l, double.Parse(l, System.Globalization.CultureInfo.InvariantCulture), null)),
        ];

        MatchedPack pack = Matched(Request(cells, 3, 3) with { Existing = existing, FewestMoves = true });

        Assert.Equal(6.45, pack.SmallestAh);
        Assert.Equal(
            [new CellMove("2.305", 2, 1), new CellMove("2.075", 1, 2)], pack.Moves!);
    }

    [Fact]
    public void A_lost_cell_of_an_existing_pack_is_replaced_by_a_spare_and_nothing_else_moves_needlessly()
    {
        string[][] existing = [["a", "b"], ["c", "lost"]];
        GroupingCell[] cells = [new("a", 2.1, 30), new("b", 2.0, 30), new("c", 2.1, 30), new("s", 2.0, 30), new("t", 1.5, 30)];

        MatchedPack pack = Matched(Request(cells, 2, 2) with { Existing = existing, FewestMoves = true });

        Assert.Equal([new CellMove("s", null, 2), new CellMove("lost", 2, null)], pack.Moves!);
        Assert.Equal(4.1, pack.SmallestAh);
    }

    [Fact]
    public void The_best_spare_is_the_one_that_serves_the_pack()
    {
        GroupingCell[] cells =
        [
            new("a", 2.2, 30) { RestV = 3.61 }, new("b", 2.2, 30) { RestV = 3.61 }, new("c", 2.2, 30), new("d", 2.2, 30),
            new("s1", 2.1, 60) { RestV = 3.4 }, new("s2", 2.0, 30), new("s3", 1.9, 30), new("s4", 1.0, 30),
        ];
        MatchedPack pack = Matched(Request(cells, 2, 2) with { Locks = new Dictionary<string, int> { ["a"] = 1, ["b"] = 1 } });

        IReadOnlyList<SpareOption> spares = SpareAdvice.Best(pack, "a");

        Assert.Equal(["s1", "s2", "s3"], spares.Select(option => option.Cell));
        Assert.Equal((1, 4.3, 4.3), (spares[0].Group, spares[0].GroupAh, spares[0].PackAh));
        Assert.Equal(20, spares[0].GroupResistanceMilliohm!.Value, tolerance: 1e-12);
        Assert.Equal(3.61, spares[0].BringToV!.Value, tolerance: 1e-12);
    }

    private static GroupingRequest Request(GroupingCell[] cells, int series, int parallel) =>
        new()
        {
            Cells = cells,
            Series = series,
            Parallel = parallel,
            SearchSteps = 50_000_000,
            LevellingSteps = 60_000_000,
        };

    private static MatchedPack Match(GroupingCell[] cells, int series, int parallel, double? sigma = null) =>
        Matched(Request(cells, series, parallel) with { RepeatabilityFraction = sigma });

    private static MatchedPack Matched(GroupingRequest request) =>
        Assert.IsType<GroupingOutcome.Matched>(Outcome(request)).Pack;

    private static GroupingOutcome Outcome(GroupingRequest request) =>
        GroupMatcher.Match(request, stop: TestContext.Current.CancellationToken);

    private static double SpreadMilliohm(MatchedPack pack) =>
        pack.Groups.Max(g => g.ResistanceMilliohm!.Value) - pack.Groups.Min(g => g.ResistanceMilliohm!.Value);

    /// <summary>Invented used cells; the resistances repeat, so that some cells are alike.</summary>
    private static GroupingCell[] Cells(int count, int seed)
    {
        Random random = new(seed * 31);
        return [.. Lots.Used(count, seed).Select((mah, i) => new GroupingCell($"c{i}", mah / 1000.0, 30 + random.Next(40)))];
    }

    [Fact]
    public void A_lock_on_what_stands_moves_nothing()
    {
        GroupingCell[] cells = Cells(20, seed: 2);
        MatchedPack free = Matched(Request(cells, 4, 4));
        Dictionary<string, int> locks = new() { [free.Groups[1].Cells[2].Label] = 2, [free.Groups[3].Cells[0].Label] = 4 };

        MatchedPack locked = Matched(Request(cells, 4, 4) with { Locks = locks });
        MatchedPack moved = Matched(Request(cells, 4, 4) with { Locks = new Dictionary<string, int> { [free.Groups[1].Cells[2].Label] = 3 } });

        Assert.Equal(free.Groups.Select(group => string.Join(' ', group.Cells.Select(cell => cell.Label))), locked.Groups.Select(group => string.Join(' ', group.Cells.Select(cell => cell.Label))));
        Assert.Contains(moved.Groups[2].Cells, cell => cell.Label == free.Groups[1].Cells[2].Label);
    }
}
