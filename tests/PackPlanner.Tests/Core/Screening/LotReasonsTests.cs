using PackPlanner.Core.Cautions;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Screening;

namespace PackPlanner.Tests.Core.Screening;

/// <summary>Each limit that a cell is held against its lot by, a hair to either side.</summary>
public class LotReasonsTests
{
    private static readonly ScreeningRequest Rated5 = new() { RatedAh = 5, Chemistry = Chemistries.NickelManganeseCobalt };

    private static VerdictReason? Reason(CellRow cell, string code, ScreeningRequest? request = null, CellRow[]? lot = null) =>
        LotScreening.Judge([.. lot ?? Lots.Ten, cell], request ?? Rated5).Cells.Single(judged => judged.Label == cell.Label).Reasons.FirstOrDefault(reason => reason.Code == code);

    // The lot was tested at 2 A to 3.00 V at 25 °C: a tenth, 0.05 V and 5 K are still alike.
    [Theory]
    [InlineData(2.19, 3.0, 25.0, null, 0, 0)]
    [InlineData(2.21, 3.0, 25.0, "A", 2.21, 2)]
    [InlineData(1.79, 3.2, 40.0, "A", 1.79, 2)]
    [InlineData(2.0, 3.04, 25.0, null, 0, 0)]
    [InlineData(2.0, 3.06, 40.0, "V", 3.06, 3)]
    [InlineData(2.0, 2.94, 25.0, "V", 2.94, 3)]
    [InlineData(2.0, 3.0, 30.0, null, 0, 0)]
    [InlineData(2.0, 3.0, 30.1, "degC", 30.1, 25)]
    [InlineData(2.0, 3.0, 19.9, "degC", 19.9, 25)]
    public void A_cell_that_was_tested_otherwise_is_said_to_be(double amps, double cutoffV, double degC, string? unit, double value, double usual)
    {
        CellRow[] lot = [.. Lots.Ten.Select(cell => cell with { TestCurrentA = 2, TestCutoffV = 3.0, TemperatureDegC = 25 })];
        VerdictReason? reason = Reason(Lots.Cell("X", 4.6) with { TestCurrentA = amps, TestCutoffV = cutoffV, TemperatureDegC = degC }, ReasonCodes.TestedOtherwise, lot: lot);

        Assert.Equal(unit, reason?.Unit);
        Assert.Equal((unit is null ? null : value, unit is null ? null : usual), ((double?)reason?.Value, (double?)reason?.Limit));
        Assert.Equal(unit is null ? null : Verdict.Use, reason?.Bears);
    }

    // Half as much again as the median of 30 milliohm; a reading of unknown kind is good to 5 %: twice 2.3 milliohm.
    [Theory]
    [InlineData(45.0, null)]
    [InlineData(45.2, ReasonCodes.ResistanceNearLimit)]
    [InlineData(49.8, ReasonCodes.ResistanceNearLimit)]
    [InlineData(50.2, ReasonCodes.HighResistance)]
    public void A_resistance_is_held_against_half_as_much_again_as_its_lot(double milliohm, string? code)
    {
        CellRow[] lot = [.. Lots.Ten.Select(cell => cell with { ResistanceMilliohm = 30 })];
        VerdictReason[] found = [.. new[] { ReasonCodes.ResistanceNearLimit, ReasonCodes.HighResistance }.Select(each => Reason(Lots.Cell("X", 4.6, milliohm), each, lot: lot)).OfType<VerdictReason>()];

        Assert.Equal(code is null ? [] : [code], found.Select(reason => reason.Code));
        Assert.All(found, reason => Assert.Equal((45.0, LimitOrigin.LotMedian, "mohm"), (reason.Limit, reason.LimitFrom, reason.Unit)));
        Assert.All(found, reason => Assert.Equal(code == ReasonCodes.HighResistance ? Verdict.Reject : Verdict.Hold, reason.Bears));
    }

    [Theory]
    [InlineData(3, false)]
    [InlineData(4, true)]
    public void Fewer_than_five_resistances_have_no_usual_one(int others, bool held) =>
        Assert.Equal(held, Reason(Lots.Cell("X", 4.6, 100), ReasonCodes.HighResistance, lot: [.. Lots.Ten.Take(others)]) is not null);

    // By hand: 2 % of 30 milliohm over the root of two readings of a known kind; 1.5 % of 4.6 Ah, over the root of two tests.
    [Fact]
    public void Spreads_shrink_with_the_root_of_the_readings()
    {
        CellRow once = Lots.Cell("X", 4.6) with { ResistanceKind = ResistanceKind.Ac1Khz, Slot = "1" };
        ScreenedCell judged = LotScreening.Judge([once, once with { Slot = "2" }, Lots.Cell("Y", 4.6)], Rated5).Cells[0];

        Assert.Equal(0.02 * 30 / Math.Sqrt(2), judged.ResistanceSpreadMilliohm!.Value, tolerance: 1e-12);
        Assert.Equal(0.015 * 4.6 / Math.Sqrt(2), judged.CapacitySpreadAh!.Value, tolerance: 1e-12);
        Assert.Equal(4.6 / 5, judged.HealthFraction!.Value, tolerance: 1e-12);
        Assert.Equal(2, judged.CapacityTests);
    }

    // A chemistry that nobody knows is other than the lot's, while nobody states the lot's.
    [Theory]
    [InlineData("NMC", false)]
    [InlineData("LFP", true)]
    [InlineData("unobtainium", true)]
    public void A_cell_of_another_chemistry_is_held(string written, bool held)
    {
        CellRow[] lot = [.. Lots.Ten.Select(cell => cell with { Chemistry = "NMC" })];
        CellRow cell = Lots.Cell("X", 4.6) with { Chemistry = written };

        Assert.Equal(held ? LimitOrigin.LotMedian : null, Reason(cell, ReasonCodes.OtherChemistry, new ScreeningRequest { RatedAh = 5 }, lot)?.LimitFrom);
        Assert.Equal(held ? written : null, Reason(cell, ReasonCodes.OtherChemistry, new ScreeningRequest { RatedAh = 5 }, lot)?.Noted);
        // Where the user states the chemistry, a word that nobody knows is no other one.
        Assert.Equal(written == "LFP" ? LimitOrigin.User : null, Reason(cell, ReasonCodes.OtherChemistry, Rated5, lot)?.LimitFrom);
    }

    [Fact]
    public void Notices_name_every_cell_that_lacks_a_reading_however_many_reasons_it_has()
    {
        CellRow[] blind = [.. Enumerable.Range(1, 13).Select(i => Lots.Cell($"B{i:00}", 4.6, milliohm: null, restV: i == 1 ? null : 3.6))];
        IReadOnlyList<Caution> cautions = LotScreening.Judge([.. Lots.Ten, .. blind], Rated5).Cautions;

        Assert.Contains(cautions, caution => caution.Code == "caution-08" && caution.Where.StartsWith("13 cells: B01, B02", StringComparison.Ordinal) && caution.Where.EndsWith("B12 …", StringComparison.Ordinal));
        Assert.Contains(cautions, caution => caution is { Code: "caution-01", Signal: SignalWord.Notice, Where: "1 cell: B01" });
        Assert.DoesNotContain(cautions, caution => caution is { Code: "caution-29" });
    }

    [Theory]
    [InlineData(1, "1 rejected cell to")]
    [InlineData(2, "2 rejected cells to")]
    public void Rejected_cells_are_counted_for_their_disposal(int rejected, string says) =>
        Assert.Contains(
            LotScreening.Judge([.. Lots.Ten, .. Enumerable.Range(0, rejected).Select(i => Lots.Cell($"X{i}", 4.6) with { Condition = "swollen" })], Rated5).Cautions,
            caution => caution.Code == "caution-29" && caution.Saw.StartsWith(says, StringComparison.Ordinal));

    // A lot too small for statistics: only what is over three times its middle.
    [Theory]
    [InlineData(new[] { 1.0, 1.0, 3.0 }, false)]
    [InlineData(new[] { 1.0, 1.0, 3.01 }, true)]
    [InlineData(new[] { 1.0, 9.0 }, false)]
    [InlineData(new[] { -1.0, -1.0, 9.0 }, false)]
    [InlineData(new[] { 1.0, 1.1, 0.9, 1.0, 1.0, 3.1 }, true)]
    [InlineData(new[] { 1.0, 1.1, 0.9, 1.0, 1.05, 0.95, 2.0 }, true)]
    [InlineData(new[] { 1.0, 1.1, 0.9, 1.0, 1.05, 0.95, 0.01 }, true)]
    public void The_last_of_some_readings_is_unlike_the_others(double[] values, bool unlike)
    {
        bool[] found = Outliers.Of(values, [.. values.Select(_ => 0.01)]);

        Assert.Equal(unlike, found[^1]);
        Assert.DoesNotContain(true, found[..^1]);
        Assert.False(Outliers.Of(values, [.. values.Select(_ => 10.0)])[^1] && values.Length >= Outliers.FewestReadings);
    }
}
