using CsCheck;
using PackPlanner.Core.Cautions;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Screening;

namespace PackPlanner.Tests.Core.Screening;

public class LotScreeningTests
{
    private static readonly ScreeningRequest Rated5 = new() { RatedAh = 5, Chemistry = Chemistries.NickelManganeseCobalt };

    private static ScreenedCell Judge(CellRow cell, ScreeningRequest? request = null) =>
        LotScreening.Judge([.. Lots.Ten, cell], request ?? Rated5).Cells.Single(judged => judged.Label == cell.Label);

    private static string[] Codes(ScreenedCell cell) => [.. cell.Reasons.Select(reason => reason.Code)];

    // 80 % of 5 Ah is 4 Ah; twice 1.5 % of 3.9 Ah is 0.117 Ah.
    [Theory]
    [InlineData(4.000, Verdict.Use)]
    [InlineData(3.999, Verdict.Hold)]
    [InlineData(3.890, Verdict.Hold)]
    [InlineData(3.880, Verdict.Reject)]
    public void A_capacity_under_its_limit_is_held_within_twice_its_spread_and_rejected_beyond(double ah, Verdict expected)
    {
        ScreenedCell judged = LotScreening.Judge([Lots.Cell("A", ah), Lots.Cell("B", 4.1), Lots.Cell("C", 4.2)], Rated5).Cells[0];

        Assert.Equal(expected, judged.Verdict);
        if (expected != Verdict.Use)
        {
            VerdictReason reason = judged.Reasons[0];
            Assert.Equal(ah, reason.Value);
            Assert.Equal(4.0, reason.Limit!.Value, 1e-12);
            Assert.Equal(LimitOrigin.DataSheet, reason.LimitFrom);
        }
    }

    [Fact]
    public void A_stated_percentage_is_the_users_limit_and_without_a_rated_capacity_it_is_of_the_lots_median()
    {
        Assert.Equal(LimitOrigin.User, Judge(Lots.Cell("X", 3.0), Rated5 with { LeastFraction = 0.7 }).Reasons[0].LimitFrom);

        VerdictReason reason = Judge(Lots.Cell("X", 3.0), new ScreeningRequest { LeastFraction = 0.7 }).Reasons
            .Single(found => found.Code == ReasonCodes.LowCapacity);

        Assert.Equal(LimitOrigin.LotMedian, reason.LimitFrom);
        Assert.Equal(0.7 * 4.60, reason.Limit!.Value, 1e-9);
    }

    [Fact]
    public void A_lot_that_is_old_as_a_whole_is_told_apart_by_its_own_median()
    {
        CellRow[] old = [.. Lots.Ten.Select(cell => cell with { CapacityAh = cell.CapacityAh * 0.6 }), Lots.Cell("weak", 1.5)];

        ScreenedLot lot = LotScreening.Judge(old, Rated5);

        Assert.Equal(10, lot.Count(Verdict.Use));
        Assert.Equal(Verdict.Reject, lot.Cells[^1].Verdict);
        Assert.True(lot.Models[0].RatedLimitSetAside);
        Assert.Equal(LimitOrigin.LotMedian, lot.Models[0].LeastFrom);
    }

    [Fact]
    public void Without_a_capacity_a_cell_is_held_and_without_another_reading_it_is_used_and_said_so()
    {
        ScreenedLot lot = LotScreening.Judge([.. Lots.Ten, Lots.Cell("none", null), Lots.Cell("blind", 4.6, milliohm: null)], Rated5);

        ScreenedCell none = lot.Cells.Single(cell => cell.Label == "none");
        ScreenedCell blind = lot.Cells.Single(cell => cell.Label == "blind");
        Assert.Equal(Verdict.Hold, none.Verdict);
        Assert.Contains(ReasonCodes.NoCapacity, Codes(none));
        Assert.Equal(Verdict.Use, blind.Verdict);
        Assert.Contains(blind.Reasons, reason => reason is { Code: ReasonCodes.NotChecked, What: ReadingName.Resistance });
        Assert.Contains(lot.Cautions, caution => caution.Signal == SignalWord.Notice && caution.Where.Contains("blind", StringComparison.Ordinal));
    }

    [Fact]
    public void A_reading_that_the_user_requires_holds_the_cell_that_lacks_it()
    {
        ScreenedCell judged = Judge(Lots.Cell("X", 4.6, milliohm: null), Rated5 with { Required = [ReadingName.Resistance] });

        Assert.Equal(Verdict.Hold, judged.Verdict);
        Assert.Contains(ReasonCodes.RequiredReadingMissing, Codes(judged));
    }

    [Fact]
    public void An_aborted_test_is_held_and_never_counted_as_a_capacity()
    {
        CellRow aborted = Lots.Cell("X", 2.1) with { TestEndV = 3.52, TestCutoffV = 3.00 };

        ScreenedCell judged = Judge(aborted);

        Assert.Equal(Verdict.Hold, judged.Verdict);
        Assert.Equal([ReasonCodes.AbortedTest], Codes(judged));
        Assert.Null(judged.CapacityAh);
        Assert.Equal(2.1, judged.AbortedAh);
    }

    [Fact]
    public void A_whole_repeat_of_an_aborted_test_counts_alone()
    {
        CellRow aborted = Lots.Cell("X", 2.1) with { TestEndV = 3.52, TestCutoffV = 3.00 };
        CellRow whole = Lots.Cell("X", 4.6) with { TestEndV = 3.00, TestCutoffV = 3.00 };

        ScreenedCell judged = LotScreening.Judge([.. Lots.Ten, aborted, whole], Rated5).Cells[^1];

        Assert.Equal(Verdict.Use, judged.Verdict);
        Assert.Equal(4.6, judged.CapacityAh);
    }

    [Fact]
    public void Tests_of_one_cell_that_differ_beyond_any_tester_are_held_and_not_averaged_into_a_rejection()
    {
        ScreenedLot lot = LotScreening.Judge([.. Lots.Ten, Lots.Cell("X", 1.4), Lots.Cell("X", 4.4)], Rated5);

        Assert.Equal(Verdict.Hold, lot.Cells[^1].Verdict);
        Assert.Contains(ReasonCodes.RepeatsDisagree, Codes(lot.Cells[^1]));
        Assert.DoesNotContain(ReasonCodes.LowCapacity, Codes(lot.Cells[^1]));
        Assert.Null(lot.Repeatability.PooledFraction);
    }

    [Fact]
    public void A_capacity_far_from_its_lot_is_held_not_rejected()
    {
        ScreenedCell judged = Judge(Lots.Cell("X", 5.2));

        Assert.Equal(Verdict.Hold, judged.Verdict);
        Assert.Equal([ReasonCodes.UnlikeItsLot], Codes(judged));
    }

    [Fact]
    public void A_difference_finer_than_the_tester_repeats_is_no_outlier()
    {
        CellRow[] tight = [.. Enumerable.Range(0, 20).Select(i => Lots.Cell($"A{i}", 4.600 + 0.001 * (i % 3)))];

        ScreenedLot lot = LotScreening.Judge([.. tight, Lots.Cell("X", 4.65)], Rated5);

        Assert.Equal(Verdict.Use, lot.Cells[^1].Verdict);
    }

    [Fact]
    public void A_resistance_above_the_users_limit_is_held_within_twice_its_spread_and_rejected_beyond()
    {
        ScreeningRequest request = Rated5 with { HighestMilliohm = 40 };
        CellRow near = Lots.Cell("X", 4.6, 41) with { ResistanceKind = ResistanceKind.Ac1Khz };

        Assert.Contains(ReasonCodes.ResistanceNearLimit, Codes(Judge(near, request)));
        Assert.Equal(Verdict.Reject, Judge(near with { ResistanceMilliohm = 50 }, request).Verdict);
        Assert.DoesNotContain(ReasonCodes.ResistanceNearLimit, Codes(Judge(near with { ResistanceMilliohm = 40 }, request)));
    }

    [Fact]
    public void Two_models_are_judged_by_the_health_of_their_own_nominal()
    {
        CellRow[] small = [.. Lots.Ten.Select(cell => cell with { Model = "A", RatedAh = 5 })];
        CellRow[] large = [.. Lots.Ten.Select(cell => cell with { Label = "L" + cell.Label, Model = "B", RatedAh = 10, CapacityAh = cell.CapacityAh * 2 })];

        ScreenedLot lot = LotScreening.Judge([.. small, .. large], new ScreeningRequest());

        Assert.Equal(20, lot.Count(Verdict.Use));
        Assert.Equal([4.60, 9.20], lot.Models.Select(model => Math.Round(model.MedianCapacityAh!.Value, 9)));
    }

    [Fact]
    public void Medians_are_taken_over_all_cells_with_a_value_before_any_verdict()
    {
        ScreenedLot lot = LotScreening.Judge(
            [Lots.Cell("A", 5, 20), Lots.Cell("B", 4, 30), Lots.Cell("C", 1, 90), Lots.Cell("D", null, null)], Rated5);

        Assert.Equal(4, lot.MedianCapacityAh);
        Assert.Equal(30, lot.MedianResistanceMilliohm);
    }

    [Fact]
    public void No_verdict_changes_when_rows_are_reordered_or_units_are_changed()
    {
        Gen<CellRow> row = Gen.Select(Gen.Int[1, 25], Gen.Double[3.0, 5.2], Gen.Double[20, 70], Gen.Double[1.8, 4.3], Gen.Int[1, 4])
            .Select((label, ah, milliohm, volts, slot) => new CellRow
            {
                Label = $"C{label}",
                CapacityAh = Math.Round(ah, 3),
                ResistanceMilliohm = Math.Round(milliohm, 1),
                RestV = Math.Round(volts, 3),
                Slot = $"{slot}",
            });
        Gen.Select(row.Array[1, 60], Gen.Int[0, 10_000]).Sample(
            (rows, seed) =>
            {
                CellRow[] other = [.. rows.Select(cell => cell with { CapacityAh = cell.CapacityAh * 1000 / 1000, ResistanceMilliohm = cell.ResistanceMilliohm / 1000 * 1000 })];
                new Random(seed).Shuffle(other);
                string Told(ScreenedLot lot) => string.Join(";", lot.Cells.OrderBy(cell => cell.Label, StringComparer.Ordinal)
                    .Select(cell => $"{cell.Label} {cell.Verdict} {string.Join(",", Codes(cell))}"));
                Assert.Equal(Told(LotScreening.Judge(rows, Rated5)), Told(LotScreening.Judge(other, Rated5)));
            },
            seed: "0000KOIPe836", iter: 300);
    }

    // 80 % of 3.0 Ah are 2.4 Ah. A lot of three or more may all be old; one or two cells are no lot.
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void One_or_two_cells_are_held_against_their_rated_capacity_however_old_they_are(int cells)
    {
        ScreenedLot lot = LotScreening.Judge([.. Enumerable.Range(0, cells).Select(i => Lots.Cell($"X{i}", 0.6))], new ScreeningRequest { RatedAh = 3 });

        Assert.All(lot.Cells, cell => Assert.Equal(Verdict.Reject, cell.Verdict));
    }

    [Fact]
    public void The_test_of_a_cell_that_was_least_like_the_others_is_the_one_that_is_named()
    {
        CellRow[] rows = [.. Lots.Ten.Select(cell => cell with { TestCurrentA = 1 }), Lots.Cell("X", 4.6) with { TestCurrentA = 1, Slot = "1" }, Lots.Cell("X", 4.5) with { TestCurrentA = 3, Slot = "2" }];

        VerdictReason said = LotScreening.Judge(rows, Rated5).Cells.Single(cell => cell.Label == "X").Reasons.Single(reason => reason.Code == ReasonCodes.TestedOtherwise);

        Assert.Equal((3.0, 1.0), (said.Value, said.Limit));
    }
}
