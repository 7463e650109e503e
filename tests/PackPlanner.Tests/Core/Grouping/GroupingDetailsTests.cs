using PackPlanner.Core.Cautions;
using PackPlanner.Core.Grouping;

namespace PackPlanner.Tests.Core.Grouping;

/// <summary>Small decisions of the room, each by hand.</summary>
public class GroupingDetailsTests
{
    private static GroupingCell Cell(string label, double ah, double? milliohm = null, string? batch = null, double? restV = null) =>
        new(label, ah, milliohm) { Batch = batch, RestV = restV };

    private static GroupingOutcome Outcome(GroupingRequest request) => GroupMatcher.Match(request, null, TestContext.Current.CancellationToken);

    private static MatchedPack Pack(int series, int parallel, Dictionary<string, int> locks, params GroupingCell[] cells) =>
        Assert.IsType<GroupingOutcome.Matched>(Outcome(new() { Cells = cells, Series = series, Parallel = parallel, Locks = locks })).Pack;

    // By hand: without b group 1 holds 2.0; with g or h the pack is held by group 2 at 4.2, and g stands nearer to it. e, f and i give 4.0: the
    // group had 20 and 20 milliohm, 10 together; f gives 10 again, e 12, i 6.67.
    [Fact]
    public void Spares_are_named_by_pack_then_level_then_resistance()
    {
        Dictionary<string, int> locks = new() { ["a"] = 1, ["b"] = 1, ["c"] = 2, ["d"] = 2 };
        MatchedPack pack = Pack(2, 2, locks, Cell("a", 2.0, 20, null, 3.6), Cell("b", 2.0, 20), Cell("c", 2.1, 20), Cell("d", 2.1, 20),
            Cell("e", 2.0, 30), Cell("f", 2.0, 20), Cell("g", 2.2, 20), Cell("h", 2.3, 20), Cell("i", 2.0, 10));

        IReadOnlyList<SpareOption> best = SpareAdvice.Best(pack, "b", most: 9);

        Assert.Equal(["g", "h", "f", "e", "i"], best.Select(option => option.Cell));
        Assert.Equal([4.2, 4.3, 4.0, 4.0, 4.0], best.Select(option => Math.Round(option.GroupAh, 9)));
        Assert.Equal([4.2, 4.2, 4.0, 4.0, 4.0], best.Select(option => Math.Round(option.PackAh, 9)));
        Assert.Equal([10.0, 10, 10, 12, 6.666667], best.Select(option => Math.Round(option.GroupResistanceMilliohm!.Value, 6)));
        Assert.All(best, option => Assert.Equal((1, 3.6), (option.Group, option.BringToV)));
        Assert.Equal(["g", "h", "f"], SpareAdvice.Best(pack, "b").Select(option => option.Cell));
        Assert.Throws<ArgumentException>(() => SpareAdvice.Best(pack, "e"));
    }

    // By hand: the others hold 4.0 and 4.4, so the pack holds 4.0 with either spare; 4.25 is nearer to their 4.2 than 4.1.
    [Fact]
    public void Of_spares_that_serve_the_pack_alike_the_one_nearer_to_the_other_groups_comes_first()
    {
        Dictionary<string, int> locks = new() { ["a"] = 1, ["b"] = 1, ["c"] = 2, ["d"] = 2, ["e"] = 3, ["f"] = 3 };
        MatchedPack pack = Pack(3, 2, locks, Cell("a", 2.0), Cell("b", 2.0), Cell("c", 2.0), Cell("d", 2.0), Cell("e", 2.2), Cell("f", 2.2), Cell("s", 2.1), Cell("t", 2.25));

        Assert.Equal(["t", "s"], SpareAdvice.Best(pack, "a").Select(option => option.Cell));
    }

    [Fact]
    public void An_exchanged_cell_changes_its_group_and_no_more()
    {
        MatchedPack pack = Pack(1, 2, [], Cell("a", 2.0, 20), Cell("b", 2.1, 20));
        MatchedGroup group = pack.Groups[0].Exchanged(pack.Groups[0].Cells.Single(cell => cell.Label == "a"), Cell("x", 2.5, 30));

        // By hand: 4.1 - 2.0 + 2.5 Ah; 20 and 30 milliohm are 12 together, and b carries 30 of 50 parts.
        Assert.Equal(4.6, group.CapacityAh, tolerance: 1e-9);
        Assert.Equal(12, group.ResistanceMilliohm!.Value, tolerance: 1e-9);
        Assert.Equal(["b", "x"], group.Cells.Select(cell => cell.Label));
        Assert.Equal(0.6, group.PartOf(group.Cells[0])!.Value, tolerance: 1e-9);
        Assert.Null(group.Exchanged(group.Cells[0], Cell("y", 2)).ResistanceMilliohm);
    }

    // Batch 1 has two free cells beside the locked one; a group of three needs both, and a second locked group would need two more.
    [Fact]
    public void A_locked_cell_draws_its_batch_into_its_group_while_there_are_enough_of_it()
    {
        GroupingCell[] cells = [Cell("a", 2.3, batch: "1"), Cell("b", 2.2, batch: "1"), Cell("c", 2.1, batch: "1"), Cell("d", 2.0, batch: "2"), Cell("e", 1.9, batch: "2"), Cell("f", 1.8, batch: "2")];
        MatchedPack one = Kept(new() { ["c"] = 2 }, cells);
        MatchedPack two = Kept(new() { ["a"] = 1, ["c"] = 2 }, cells);

        Assert.Equal(["a", "b", "c"], one.Groups[1].Cells.Select(cell => cell.Label).Order());
        Assert.Equal(0, one.Batches!.MixedGroups);
        Assert.Equal(2, two.Batches!.MixedGroups);
        MatchedPack Kept(Dictionary<string, int> locks, GroupingCell[] lot) =>
            Assert.IsType<GroupingOutcome.Matched>(Outcome(new() { Cells = lot, Series = 2, Parallel = 3, KeepBatches = true, Locks = locks })).Pack;
    }

    // Four groups of one batch could be made and two are wanted. By hand: with 2.0 2.0 1.0 1.0 and 1.9 1.9 1.8 1.8 one group of each, 3.8 the
    // poorer; with 2.0 2.0 1.95 1.95 both of the first batch, 3.95 each.
    [Theory]
    [InlineData(1.0, 3.8, 3.8)]
    [InlineData(1.95, 3.95, 3.95)]
    public void Groups_of_one_batch_are_taken_from_the_batches_that_hold_most(double weak, double smallestAh, double boundAh)
    {
        MatchedPack pack = Assert.IsType<GroupingOutcome.Matched>(Outcome(new()
        {
            Cells = [.. new[] { 2.0, 2.0, weak, weak }.Select((ah, i) => Cell($"a{i}", ah, batch: "a")), .. new[] { 1.9, 1.9, 1.8, 1.8 }.Select((ah, i) => Cell($"b{i}", ah, batch: "b"))],
            Series = 2,
            Parallel = 2,
            KeepBatches = true,
        })).Pack;

        Assert.Equal((0, 0), (pack.Batches!.MixedGroups, pack.Batches.FewestMixedGroups));
        Assert.Equal(smallestAh, pack.SmallestAh, tolerance: 1e-9);
        Assert.Equal(boundAh, pack.Batches.BoundAh, tolerance: 1e-9);
    }

    [Fact]
    public void Of_batches_that_are_equally_good_the_first_by_name_is_taken()
    {
        MatchedPack pack = Assert.IsType<GroupingOutcome.Matched>(Outcome(new()
        {
            Cells = [Cell("x", 2.0, batch: "q"), Cell("y", 2.0, batch: "q"), Cell("v", 2.0, batch: "p"), Cell("w", 2.0, batch: "p")],
            Series = 1,
            Parallel = 2,
            KeepBatches = true,
        })).Pack;

        Assert.Equal(["v", "w"], pack.Groups[0].Cells.Select(cell => cell.Label));
    }

    // 10 A over two cells are 5 A each; aged to half, a rating of 8 A is 4 A.
    [Theory]
    [InlineData(10.0, 5.0, null, false)]
    [InlineData(10.1, 5.0, null, true)]
    [InlineData(-10.1, 5.0, null, true)]
    [InlineData(8.0, 8.0, 4.0, false)]
    [InlineData(8.1, 8.0, 4.0, true)]
    [InlineData(10.0, 5.0, 1.0, false)]
    public void A_cell_above_its_rating_is_named(double loadA, double ratingA, double? ratedAh, bool raised)
    {
        MatchedPack pack = Pack(1, 2, [], Cell("a", 2.0), Cell("b", 2.0));

        Assert.Equal(raised, GroupingCautions.Of(pack, null, null, loadA, ratingA, ratedAh).Any(caution => caution is { Code: "caution-24", Signal: SignalWord.Warning }));
    }

    // 20 and 30 milliohm: the first carries 1.2 times an equal share.
    [Theory]
    [InlineData(10.0, false)]
    [InlineData(10.01, true)]
    public void The_cell_of_the_least_resistance_is_the_one_held_against_its_rating(double loadA, bool raised)
    {
        MatchedPack pack = Pack(1, 2, [], Cell("a", 2.0, 20), Cell("b", 2.0, 30));

        Assert.Equal(raised ? ["group 1, cell a"] : [], GroupingCautions.Of(pack, null, null, loadA, 6, null).Select(caution => caution.Where));
    }

    // The cell that carries most, by its own 2.0 Ah of 4.0 on the label, may have 3 A of 6; by the other's 3.0 Ah it might have 4.5.
    [Theory]
    [InlineData(5.0, false)]
    [InlineData(5.01, true)]
    public void A_rating_falls_with_the_capacity_of_the_cell_that_carries_most(double loadA, bool raised)
    {
        MatchedPack pack = Pack(1, 2, [], Cell("a", 2.0, 20), Cell("b", 3.0, 30));

        Assert.Equal(raised, GroupingCautions.Of(pack, null, null, loadA, 6, 4).Count > 0);
    }

    [Fact]
    public void A_pack_of_one_group_takes_the_spare_that_brings_it_back_to_what_it_was()
    {
        MatchedPack pack = Pack(1, 2, new() { ["a"] = 1, ["b"] = 1 }, Cell("a", 2.0, 20), Cell("b", 2.1, 20), Cell("c", 2.1, 25), Cell("d", 2.0, 20), Cell("e", 2.1, 20));

        Assert.Equal(["e", "c", "d"], SpareAdvice.Best(pack, "b").Select(option => option.Cell));
    }

    [Fact]
    public void A_problem_that_does_not_fit_its_shape_is_a_fault_of_the_caller()
    {
        Assert.Throws<ArgumentException>(() => GroupingProblem.Free([1, 2], 1, 2));
        Assert.Throws<ArgumentException>(() => GroupingProblem.Free([2, 1], 1, 3));
        Assert.Throws<ArgumentException>(() => new GroupingProblem([3, 2, 1], 2, [0], [1], []));
        Assert.Equal(5, GroupingProblem.Free([3, 2, 1], 1, 2).BestTotal);
    }

    [Theory]
    [InlineData("a b|c d|e f", "it has 3 groups")]
    [InlineData("a b c|d", "it has 3 cells")]
    [InlineData("a b|a d", "cell a stands in it twice")]
    public void An_existing_grouping_that_does_not_fit_is_a_contradiction(string existing, string says)
    {
        GroupingOutcome outcome = Outcome(new()
        {
            Cells = [.. "abcdef".Select(label => Cell($"{label}", 2))],
            Series = 2,
            Parallel = 2,
            FewestMoves = true,
            Existing = [.. existing.Split('|').Select(group => group.Split(' '))],
        });

        Assert.Contains(says, Assert.IsType<GroupingOutcome.Contradicts>(outcome).Problem.Why, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(new[] { 2.31, 2.255, 2.03 }, 0.005)]
    [InlineData(new[] { 4.0, 2.0 }, 2.0)]
    [InlineData(new[] { 0.00000021, 2.0000001 }, 0.0000001)]
    [InlineData(new[] { 2.0000001, 2.0 }, 0.0000001)]
    public void Capacities_are_whole_steps_of_the_coarsest_size_that_holds_them_all(double[] ah, double stepAh)
    {
        CapacitySteps steps = CapacitySteps.Of(ah);

        Assert.Equal(stepAh, steps.StepAh, tolerance: 1e-15);
        Assert.All(ah.Zip(steps.Steps), pair => Assert.Equal(pair.First, steps.InAh(pair.Second), tolerance: 0.6e-7));
        Assert.Equal(steps.Steps[0], steps.StepsOf(ah[0]));
    }

    // By hand: 20 A over 20 and 21 milliohm are 10.24 and 9.76 A; aged to a half, b may carry 5.5 of its 11 A, and a carries less than its 11.
    [Fact]
    public void A_tired_cell_is_held_against_its_own_rating_though_another_carries_more()
    {
        MatchedPack pack = Pack(1, 2, [], Cell("a", 2.5, 20), Cell("b", 1.25, 21));

        Caution caution = Assert.Single(GroupingCautions.Of(pack, null, null, loadA: 20, ratingA: 11, ratedAh: 2.5));

        Assert.Equal(("caution-24", "group 1, cell b"), (caution.Code, caution.Where));
        Assert.StartsWith("9.76 A at first, rated 11.0 A, 5.5 A after ageing", caution.Saw, StringComparison.Ordinal);
    }

    [Fact]
    public void A_spare_of_unknown_resistance_comes_after_those_that_are_known()
    {
        Dictionary<string, int> locks = new() { ["a"] = 1, ["b"] = 1 };
        MatchedPack pack = Pack(1, 2, locks, Cell("a", 2.0, 20), Cell("b", 2.0, 20), Cell("c", 2.0), Cell("d", 2.0, 90));

        Assert.Equal(["d", "c"], SpareAdvice.Best(pack, "b").Select(option => option.Cell));
    }
}
