using PackPlanner.Core.Cautions;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Sharing;

namespace PackPlanner.Tests.Core.Sharing;

public class SharingDetailsTests
{
    private static ParallelCells Group(double link = 0, int positiveAt = 1, int negativeAt = 1, double? ah = 2.5) =>
        ParallelCells.Alike(1, [new("a", 3.6, 20, ah), new("b", 3.6, 30, ah)], link, positiveAt, negativeAt);

    [Theory]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NaN)]
    [InlineData(-0.1)]
    public void A_link_that_is_no_resistance_is_a_fault_of_the_caller(double link) =>
        Assert.Throws<ArgumentException>(() => CurrentSharing.AtFirstInstant(Group(link), 10));

    [Theory]
    [InlineData(0, 1)]
    [InlineData(3, 1)]
    [InlineData(1, 0)]
    [InlineData(1, 3)]
    public void A_take_off_at_no_cell_is_a_fault_of_the_caller(int positiveAt, int negativeAt) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => CurrentSharing.AtFirstInstant(Group(0.5, positiveAt, negativeAt), 10));

    [Fact]
    public void Volts_that_are_none_are_a_fault_of_the_caller() =>
        Assert.Throws<ArgumentException>(() => CurrentSharing.AtFirstInstant(ParallelCells.Alike(1, [new("a", double.NaN, 20)], 0, 1, 1), 10));

    // By hand: of 10 A the cell of 20 milliohm carries 6; rated 6 A for 5 Ah, it is rated 3 A at 2.5 Ah.
    [Theory]
    [InlineData(10.0, 6.0, null, false)]
    [InlineData(10.1, 6.0, null, true)]
    [InlineData(-10.1, 6.0, null, true)]
    [InlineData(5.0, 6.0, 5.0, false)]
    [InlineData(5.1, 6.0, 5.0, true)]
    [InlineData(10.0, 6.0, 1.0, false)]
    public void The_hardest_worked_cell_is_held_against_its_aged_rating(double loadA, double ratingA, double? ratedAh, bool raised)
    {
        ParallelCells group = Group();
        Caution[] cautions = [.. SharingCautions.Of([group], [CurrentSharing.AtFirstInstant(group, loadA)], ratingA, ratedAh, cellFuses: false)];

        Assert.Equal(raised ? [("caution-24", "group 1, cell a")] : [], cautions.Select(caution => (caution.Code, caution.Where)));
    }

    [Theory]
    [InlineData(4, false, false)]
    [InlineData(5, false, true)]
    [InlineData(5, true, false)]
    public void Many_small_cells_without_fuses_are_named(int cells, bool fuses, bool raised)
    {
        ParallelCells group = ParallelCells.Alike(7, [.. Enumerable.Range(0, cells).Select(i => new CellBranch($"{i}", 3.6, 20, 2.5))], 0, 1, 1);
        Caution[] cautions = [.. SharingCautions.Of([group], [CurrentSharing.AtFirstInstant(group, 1)], null, null, fuses)];

        Assert.Equal(raised ? [("caution-22", "group 7")] : [], cautions.Select(caution => (caution.Code, caution.Where)));
    }

    // Above five thousand cells the two ends and the middle are kept, below it each twentieth of the capacity.
    [Theory]
    [InlineData(100, 20)]
    [InlineData(5001, 3)]
    public void A_large_group_keeps_fewer_moments_and_ends_alike(int cells, int moments)
    {
        Chemistry nmc = Chemistries.NickelManganeseCobalt;
        CellBranch[] row = [.. Enumerable.Range(0, cells).Select(i => new CellBranch($"{i}", 4.2, 30, 2.5))];

        SharedDischargeRun run = SharedDischarge.Run([ParallelCells.Alike(1, row, 0, 1, 1)], nmc, nmc.CutoffV, cells * 25.0, TestContext.Current.CancellationToken);

        Assert.InRange(run.Through.Count, moments - 4, moments + 1);
        Assert.Equal(0, run.Through[0].AtAh);
        // By hand: 25 A through 30 milliohm take 0.75 V; one cell alone ends where its resting volts are as much above the cut-off.
        Assert.Equal(2.5 * (1 - nmc.Curve.FractionAt(nmc.CutoffV + 0.75)), run.Through[^1].AtAh / cells, tolerance: 0.01);
    }

    // By hand: the smaller group holds 5 Ah, so that a moment is kept each 0.25 Ah; without a load 0.1 V over 60 milliohm circulate at first.
    [Fact]
    public void Moments_rise_by_a_twentieth_of_the_smallest_group_and_the_end_stands_once()
    {
        Chemistry nmc = Chemistries.NickelManganeseCobalt;
        CellBranch[] small = [new("a", 4.2, 30, 2.5), new("b", 4.1, 30, 2.5)], large = [new("c", 4.2, 30, 5), new("d", 4.2, 30, 5)];

        SharedDischargeRun run = SharedDischarge.Run(
            [ParallelCells.Alike(1, small, 0, 1, 1), ParallelCells.Alike(2, large, 0, 1, 1)], nmc, nmc.CutoffV, 5, TestContext.Current.CancellationToken);

        double[] at = [.. run.Through.Select(moment => moment.AtAh)];
        Assert.All(at[..^1].Index(), entry => Assert.Equal(0.25 * entry.Index, entry.Item, tolerance: 1e-9));
        Assert.All(at.Zip(at.Skip(1)), pair => Assert.True(pair.Second > pair.First));
        Assert.Equal(nmc.CutoffV, run.Through[^1].Groups[0].TerminalV, tolerance: 0.001);
        Assert.Equal(0.1 / 0.060, run.Through[0].Groups[0].CirculatingA, tolerance: 1e-6);
        Assert.Equal(0, run.Through[0].Groups[1].CirculatingA, tolerance: 1e-9);
        Assert.Equal(1, run.EndedByGroup);
    }

    [Theory]
    [InlineData(0.0, 2.5)]
    [InlineData(-1.0, 2.5)]
    [InlineData(5.0, null)]
    [InlineData(5.0, 0.0)]
    public void A_discharge_needs_a_load_and_capacities(double loadA, double? ah) =>
        Assert.Throws<ArgumentException>(() => SharedDischarge.Run([Group(ah: ah)], Chemistries.NickelManganeseCobalt, 3, loadA, TestContext.Current.CancellationToken));
}
