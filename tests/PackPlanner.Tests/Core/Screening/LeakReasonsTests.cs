using PackPlanner.Core.Bench;
using PackPlanner.Core.Screening;

namespace PackPlanner.Tests.Core.Screening;

/// <summary>Which loss of charge at rest is a finding: against its own lot first, then against five percent a month.</summary>
public class LeakReasonsTests
{
    private static CellDraft Told(string label, double percent, double? days = 14, double spread = 0.2) =>
        Draft(label, new SelfDischarge(0.1, 0.01, percent, spread, days, LeakAnswer.Told, null), 3.6);

    private static CellDraft Bare(string label, double millivoltPerDay, double restV = 3.6, double? days = 14) =>
        Draft(label, new SelfDischarge(millivoltPerDay, 0.05, null, null, days, LeakAnswer.NoCurve, null), restV);

    private static CellDraft Draft(string label, SelfDischarge? loss, double restV) =>
        new() { Label = label, Rows = [], Tests = [], AllRestV = [restV], RestV = restV, SelfDischarge = loss };

    private static (string, double, LimitOrigin?)[] Found(params CellDraft[] cells) =>
        [.. LeakReasons.Of(cells).Select(found => (found.Cell.Label, found.Reason.Limit!.Value, found.Reason.LimitFrom))];

    [Theory]
    [InlineData(5.0, 14.0, false)]
    [InlineData(5.1, 14.0, true)]
    [InlineData(5.1, 7.0, true)]
    [InlineData(5.1, 6.9, false)]
    [InlineData(5.1, null, true)]
    public void Over_five_percent_a_month_counts_from_a_week_on_and_where_the_table_states_it(double percent, double? days, bool held) =>
        Assert.Equal(held ? [("X", 5.0, LimitOrigin.CommonPractice)] : [], Found(Told("A", 2), Told("X", percent, days), Told("B", 2)));

    [Fact]
    public void A_cell_that_loses_more_than_its_lot_is_held_against_the_median_and_one_that_loses_less_is_not()
    {
        CellDraft[] lot = [.. Enumerable.Range(0, 10).Select(i => Told($"T{i}", 2 + 0.05 * (i % 3)))];

        VerdictReason reason = Assert.Single(LeakReasons.Of([.. lot, Told("X", 4.5)])).Reason;

        // By hand: the middle one of 2.0 four times, 2.05 three, 2.1 three times and 4.5 is the sixth, 2.05.
        Assert.Equal((4.5, 2.05, LimitOrigin.LotMedian, "%/month", "caution-14", Verdict.Hold), (reason.Value, reason.Limit, reason.LimitFrom, reason.Unit, reason.Caution, reason.Bears));
        Assert.Empty(Found([.. lot, Told("X", 0)]));
        // Twice its own spread reaches back to the others.
        Assert.Empty(Found([.. lot, Told("X", 4.5, spread: 1.3)]));
    }

    [Fact]
    public void Without_a_curve_millivolts_are_compared_between_cells_that_rest_alike()
    {
        CellDraft[] lot = [.. Enumerable.Range(0, 10).Select(i => Bare($"T{i}", 0.30 + 0.01 * (i % 3), 3.60 + 0.01 * (i % 2)))];

        Assert.Equal([("X", 0.31, LimitOrigin.LotMedian)], Found([.. lot, Bare("X", 2)]));
        Assert.Equal("mV/day", LeakReasons.Of([.. lot, Bare("X", 2)]).Single().Reason.Unit);
        Assert.Empty(Found([.. lot, Bare("X", 2, restV: 3.71)]));
        Assert.Single(Found([.. lot, Bare("X", 2, restV: 3.67)]));
        // Readings less than three days apart show settling.
        Assert.Empty(Found([.. lot, Bare("X", 2, days: 2.9)]));
        Assert.Single(Found([.. lot, Bare("X", 2, days: 3)]));
        Assert.Empty(Found(Draft("A", null, 3.6)));
    }

    // 15 days at 10 mV: it began at 3.90 V like the others and lies 0.15 V below them now.
    [Fact]
    public void A_leaker_that_has_fallen_out_of_its_lot_is_compared_by_the_volts_at_which_it_began()
    {
        CellDraft[] lot = [.. Enumerable.Range(0, 10).Select(i => Bare($"T{i}", 0.30 + 0.01 * (i % 3), 3.90, days: 15))];

        Assert.Equal([("X", 0.31, LimitOrigin.LotMedian)], Found([.. lot, Bare("X", 10, restV: 3.75, days: 15)]));
    }

    [Fact]
    public void Compared_are_only_cells_that_stood_with_at_least_six_others()
    {
        CellDraft[] lot = [.. Enumerable.Range(0, 7).Select(i => Bare($"T{i}", 0.3, 3.90))];

        Assert.Equal(lot.Select(cell => cell.Label), LeakReasons.Compared([.. lot, Bare("X", 0.3, 3.5)]).Select(cell => cell.Label));
        Assert.Empty(LeakReasons.Compared(lot[..6]));
    }
}
