using PackPlanner.Core.Cells;
using PackPlanner.Core.Screening;

namespace PackPlanner.Tests.Core.Screening;

/// <summary>How the rows of one label become one cell.</summary>
public class CellGatheringTests
{
    private static readonly DateTime March = new(2026, 3, 1);

    private static CellDraft Cell(params CellRow[] rows) => CellGathering.Of(rows, new ScreeningRequest())[0];

    [Theory]
    [InlineData(3.05, false)]
    [InlineData(3.051, true)]
    public void A_test_that_ends_more_than_five_hundredths_above_its_cut_off_was_broken_off(double endV, bool aborted)
    {
        CellDraft cell = Cell(Lots.Cell("A", 4.6) with { TestEndV = endV, TestCutoffV = 3.0 });

        Assert.Equal(aborted ? null : 4.6, cell.CapacityAh);
        Assert.Equal(aborted, cell.Aborted is not null);
    }

    // Nobody wrote the cut-off: from three tests on most of the lot shows it.
    [Theory]
    [InlineData(2, true)]
    [InlineData(1, false)]
    public void The_usual_end_stands_in_for_a_cut_off_that_is_not_written(int others, bool told)
    {
        CellRow[] rows = [Lots.Cell("A", 2.0) with { TestEndV = 3.4 }, .. Enumerable.Range(0, others).Select(i => Lots.Cell($"T{i}", 4.6) with { TestEndV = 3.0 })];
        CellDraft cell = Cell(rows);

        Assert.Equal(told, cell.CapacityAh is null);
        Assert.Equal(told ? 3.0 : null, cell.AbortedCutoffV);
    }

    [Fact]
    public void Of_two_tests_broken_off_the_longer_is_shown()
    {
        CellRow half = Lots.Cell("A", 2.0) with { TestEndV = 3.4, TestCutoffV = 3.0, Slot = "1" };

        Assert.Equal(2.6, Cell(half, half with { CapacityAh = 2.6, TestEndV = 3.3, Slot = "2" }).Aborted!.CapacityAh);
    }

    [Fact]
    public void One_figure_in_several_rows_is_one_test_unless_slot_or_date_says_otherwise()
    {
        CellRow test = Lots.Cell("A", 4.6) with { Slot = "1", Date = March };

        Assert.Single(Cell(test, test, test).Tests);
        Assert.Equal(2, Cell(test, test with { Slot = "2" }).Tests.Count);
        Assert.Equal(2, Cell(test, test with { Date = March.AddDays(1) }).Tests.Count);
    }

    [Fact]
    public void Resistances_of_the_kind_that_was_read_most_often_are_averaged_and_the_others_left_out()
    {
        CellRow dc = Lots.Cell("A", 4.6, 40) with { ResistanceKind = ResistanceKind.Dc };
        CellRow ac = Lots.Cell("A", null, 20) with { ResistanceKind = ResistanceKind.Ac1Khz };
        CellDraft cell = Cell(ac, dc, dc with { ResistanceMilliohm = 42, ResistanceAfterS = 10 });

        Assert.Equal((41.0, ResistanceKind.Dc, 2), (cell.ResistanceMilliohm, cell.ResistanceKind, cell.ResistanceReadings));
        Assert.Equal(10, cell.ResistanceAfterS);
        // As many of a known kind as of an unknown one: the known one.
        Assert.Equal(20, Cell(Lots.Cell("A", 4.6, 40), ac).ResistanceMilliohm);
        Assert.Null(Cell(Lots.Cell("A", 4.6, 0)).ResistanceMilliohm);
    }

    [Fact]
    public void The_latest_dated_rest_speaks_and_without_dates_the_lowest()
    {
        CellRow then = Lots.Cell("A", null, restV: 3.5) with { Date = March };
        CellRow now = Lots.Cell("A", null, restV: 3.7) with { Date = March.AddDays(8) };

        Assert.Equal(3.7, Cell(now, then).RestV);
        Assert.Equal(3.5, Cell(now with { Date = null }, then with { Date = null }).RestV);
        Assert.Equal(3.6, Cell(then with { LaterRestV = 3.6, LaterDate = March.AddDays(2) }).RestV);
        Assert.Equal(3.7, Cell(then with { LaterRestV = 3.6, LaterDate = March.AddDays(2) }, now).RestV);
        Assert.Equal(3.6, Cell(then with { LaterRestV = 3.6 }, now).RestV);
        Assert.Equal([3.5, 3.6], Cell(then with { LaterRestV = 3.6 }).AllRestV);
    }

    // By hand: 8 mV in 8 days.
    [Fact]
    public void Dated_rests_tell_the_loss_unless_the_cell_was_cycled_between_them()
    {
        CellRow then = Lots.Cell("A", 4.6, restV: 3.600) with { Date = March };
        CellRow now = Lots.Cell("A", null, restV: 3.592) with { Date = March.AddDays(8) };

        Assert.Equal(1, Cell(then, now).SelfDischarge!.MillivoltPerDay, tolerance: 1e-9);
        Assert.Equal(8, Cell(then, now).SelfDischarge!.Days);
        Assert.Null(Cell(then, now with { CapacityAh = 4.5 }).SelfDischarge);
        Assert.Null(Cell(then, now with { Date = March }).SelfDischarge);
        Assert.Equal(2, Cell(then with { SelfDischargeMillivoltPerDay = 1.5 }, then with { SelfDischargeMillivoltPerDay = 2.5 }).SelfDischarge!.MillivoltPerDay);
    }

    // On assembly day cells have been charged since the table was written, which tells no dates: what is typed then is higher, and is the latest all the same.
    [Theory]
    [InlineData(3.66, false)]
    [InlineData(4.45, true)]
    [InlineData(3.60, false)]
    public void A_later_reading_is_the_latest_whatever_an_undated_one_says(double laterV, bool overFull)
    {
        CellRow row = Lots.Cell("A", 4.6) with { RestV = 3.641, LaterRestV = laterV, LaterDate = March };

        Assert.Equal(laterV, Cell(row).RestV);
        Assert.Equal(laterV, Cell(Lots.Cell("A", 4.7) with { RestV = 3.60, Slot = "2" }, row).RestV);
        ScreenedCell judged = LotScreening.Judge([.. Lots.Ten, row with { Label = "X" }], new ScreeningRequest { Chemistry = Chemistries.NickelManganeseCobalt }).Cells.Single(cell => cell.Label == "X");
        Assert.Equal(overFull ? Verdict.Reject : Verdict.Use, judged.Verdict);
        // A dated one of a later day is later still.
        Assert.Equal(3.7, Cell(row, Lots.Cell("A", null) with { RestV = 3.7, Date = March.AddDays(1) }).RestV);
    }

    [Theory]
    [InlineData("Abbruch bei 3,2 V", true)]
    [InlineData("abgebrochen", true)]
    [InlineData("test aborted, charger fault", true)]
    [InlineData("Test interrompu à 3,1 V", true)]
    [InlineData("broken off", true)]
    [InlineData("nicht abgebrochen", false)]
    [InlineData("not interrupted", false)]
    [InlineData("tab broken", false)]
    [InlineData("noch testen", false)]
    [InlineData(null, false)]
    public void A_test_that_somebody_noted_as_broken_off_is_no_capacity(string? remark, bool broken)
    {
        CellRow row = Lots.Cell("A", 1.21) with { Remark = remark };
        ScreenedCell judged = LotScreening.Judge([.. Lots.Ten, row], new ScreeningRequest { RatedAh = 5 }).Cells.Single(cell => cell.Label == "A");

        Assert.Equal(broken ? null : 1.21, Cell(row).CapacityAh);
        Assert.Equal(broken ? Verdict.Hold : Verdict.Reject, judged.Verdict);
        Assert.Equal(broken ? remark : null, judged.Reasons.FirstOrDefault(reason => reason.Code == ReasonCodes.AbortedTest)?.Noted);
    }
}
