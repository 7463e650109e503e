using PackPlanner.Core.Bench;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Screening;

namespace PackPlanner.Tests.Core.Bench;

public class TestCurvesTests
{
    private static TestCurve Curve(params (int Seconds, double A, double FromV, double ToV)[] stretches)
    {
        List<double> time = [];
        List<double> current = [];
        List<double> volts = [];
        foreach ((int seconds, double a, double fromV, double toV) in stretches)
        {
            for (int i = 1; i <= seconds; i++)
            {
                time.Add(time.Count == 0 ? 0 : time[^1] + 1);
                current.Add(a);
                volts.Add(fromV + (toV - fromV) * i / seconds);
            }
        }

        return new TestCurve { TimeS = [.. time], CurrentA = [.. current], Volts = [.. volts], Source = "log" };
    }

    [Fact]
    public void A_log_without_current_holds_nothing()
    {
        CurveReading reading = TestCurves.Read(Curve((600, 0, 3.6, 3.6)), new CurveRequest());

        Assert.Empty(reading.Steps);
        Assert.Empty(reading.Pulses);
    }

    [Fact]
    public void An_empty_log_holds_nothing() =>
        Assert.Empty(TestCurves.Read(Curve(), new CurveRequest()).Steps);

    [Fact]
    public void Lost_rows_are_passed_over_and_do_not_cut_a_step()
    {
        TestCurve curve = Curve((60, 0, 4.1, 4.1), (1800, 2, 4.0, 3.0), (60, 0, 3.2, 3.2));
        curve.CurrentA[900] = double.NaN;
        curve.Volts[901] = double.NaN;

        CurveReading reading = TestCurves.Read(curve, new CurveRequest());

        Assert.Equal(2, reading.RowsLost);
        Assert.Equal(1.0, Assert.Single(reading.Steps).ChargeAh, 1e-3);
    }

    // 4.0 to 3.0 V in 1800 s at 2 A is 1 Ah. Rows lost from the middle are a hole: with the clock run on and the volts where they were, the test stood still too;
    // with the volts moved on it went on, and the tester's counter knows in any case.
    [Theory]
    [InlineData(3600, 0, null, 1.0, 3600)]
    [InlineData(0, 600, null, 1.0, 0)]
    [InlineData(0, 600, 0.0, 0.667, 600)]
    [InlineData(600, 0, 0.333, 1.333, 0)]
    public void A_hole_counts_only_where_something_shows_that_the_current_went_on(int sleptS, int lostRows, double? counterMovedAh, double ampereHours, double notCountedS)
    {
        TestCurve whole = Curve((60, 0, 4.1, 4.1), (1800, 2, 4.0, 3.0), (60, 0, 3.2, 3.2));
        int[] kept = [.. Enumerable.Range(0, whole.TimeS.Length).Where(i => i < 960 || i >= 960 + lostRows)];
        double[] At(double[] column, double later = 0) => [.. kept.Select(i => column[i] + (i >= 960 ? later : 0))];
        double[] counter = [.. kept.Select(i => (Math.Clamp(i < 960 ? i - 60 : i - 60 - lostRows, 0, 1800 - lostRows) * 2 / 3600.0) + (i >= 960 ? counterMovedAh ?? 0 : 0))];
        TestCurve curve = new()
        {
            TimeS = At(whole.TimeS, sleptS),
            CurrentA = At(whole.CurrentA),
            Volts = At(whole.Volts),
            CounterAh = counterMovedAh is null ? null : counter,
            Source = "log",
        };

        TestStep step = Assert.Single(TestCurves.Read(curve, new CurveRequest()).Steps);

        Assert.Equal(ampereHours, step.ChargeAh, 0.002);
        Assert.Equal(notCountedS, step.NotCountedS, 2.0);
        Assert.Equal(1800 + sleptS, step.ToTimeS - step.FromTimeS, 2.0);
    }

    // By hand: 900 rows of 2 A, a second apart, are 899 seconds; half a second at either end makes 900 s, 0.5 Ah, whatever came before.
    [Theory]
    [InlineData(0)]
    [InlineData(-2)]
    [InlineData(-1)]
    public void A_discharge_right_after_a_charge_counts_as_after_a_rest(double beforeA)
    {
        TestCurve curve = Curve((900, beforeA, 3.9, 4.0), (900, 2, 3.9, 3.5), (60, 0, 3.6, 3.6));

        TestStep discharge = TestCurves.Read(curve, new CurveRequest()).Steps.Single(step => step.Direction == CurrentDirection.Discharge);

        Assert.Equal(0.5, discharge.ChargeAh, tolerance: 1e-9);
        Assert.Equal(2, discharge.MeanCurrentA, tolerance: 1e-9);
    }

    [Fact]
    public void A_discharge_that_stops_far_above_the_cut_off_is_aborted_and_a_part_that_goes_on_is_not()
    {
        TestCurve aborted = Curve((60, 0, 4.15, 4.15), (1800, 2, 4.0, 3.52), (60, 0, 3.6, 3.6));
        TestCurve parts = Curve((60, 0, 4.15, 4.15), (900, 2, 4.0, 3.8), (600, 0, 3.85, 3.85), (2700, 2, 3.7, 3.0));

        Assert.Equal(StepEnd.Aborted, TestCurves.Read(aborted, new CurveRequest { CutOffV = 3.0 }).Steps[0].EndedBy);
        Assert.Equal(StepEnd.Aborted, TestCurves.Read(aborted, new CurveRequest { Chemistry = Chemistries.NickelManganeseCobalt }).Steps[0].EndedBy);
        Assert.Equal([StepEnd.Unknown, StepEnd.CutOff], TestCurves.Read(parts, new CurveRequest { CutOffV = 3.0 }).Steps.Select(step => step.EndedBy));
    }

    [Fact]
    public void A_stretch_of_two_minutes_or_less_is_a_pulse_and_no_step()
    {
        CurveReading reading = TestCurves.Read(Curve((60, 0, 3.7, 3.7), (30, 10, 3.6, 3.58), (60, 0, 3.69, 3.7)), new CurveRequest());

        Assert.Empty(reading.Steps);
        Assert.Equal([10.0, 30], reading.Pulses.Where(pulse => pulse.SwitchedOn && pulse.AfterS > 1).Select(pulse => pulse.AfterS));

        // By hand: 3.70 - 3.58 V over 10 A at the end of the pulse.
        Assert.Equal(12, reading.Pulses.Single(pulse => pulse.SwitchedOn && pulse.AfterS == 30).ResistanceMilliohm, 1e-6);
    }

    [Fact]
    public void A_rest_of_days_gives_self_discharge_from_its_second_half()
    {
        double[] time = [.. Enumerable.Range(0, 241).Select(i => i * 3600.0)];
        TestCurve rest = new()
        {
            TimeS = time,
            CurrentA = new double[time.Length],
            Volts = [.. time.Select(s => 3.9 - 0.0003 * s / 86400 - 0.02 * Math.Exp(-s / 7200))],
            Source = "rest",
        };

        RestReading found = Assert.Single(TestCurves.Read(rest, new CurveRequest { Chemistry = Chemistries.NickelManganeseCobalt }).Rests);

        Assert.Equal(0.3, found.Loss.MillivoltPerDay, 0.005);
        Assert.Equal(LeakAnswer.Told, found.Loss.Answer);
    }

    [Fact]
    public void Two_full_discharges_in_one_log_are_two_tests_of_one_cell()
    {
        TestCurve curve = Curve((60, 0, 4.1, 4.1), (1800, 2, 4.0, 3.0), (1800, -2, 3.3, 4.2), (60, 0, 4.15, 4.1), (1818, 2, 4.0, 3.0), (60, 0, 3.2, 3.2));

        IReadOnlyList<CellRow> rows = CellsFromCurves.Rows(TestCurves.Read(curve, new CurveRequest { CutOffV = 3.0 }), "K1", null);

        Assert.Equal(2, rows.Count);
        Assert.Equal(1.00, rows[0].CapacityAh!.Value, 2e-3);
        Assert.Equal(1.01, rows[1].CapacityAh!.Value, 2e-3);
        Assert.Equal(2.0, rows[0].TestCurrentA);
    }

    // Three end at 2.50 V, which is then the end; the one that was broken off at 2.90 V is none of a cell's capacities.
    [Fact]
    public void A_discharge_that_was_broken_off_is_judged_by_the_end_that_it_should_have_had()
    {
        TestCurve curve = Curve((60, 0, 4.1, 4.1), (1800, 2, 4.0, 2.5), (1800, -2, 3.3, 4.2), (1818, 2, 4.0, 2.5), (1800, -2, 3.3, 4.2), (1836, 2, 4.0, 2.5), (1800, -2, 3.3, 4.2), (1200, 2, 4.0, 2.9), (60, 0, 3.2, 3.2));

        IReadOnlyList<CellRow> rows = CellsFromCurves.Rows(TestCurves.Read(curve, new CurveRequest()), "K1", null);

        Assert.Equal((2.5, 2.9), (rows[^1].TestCutoffV, rows[^1].TestEndV));
        Assert.Equal(3, LotScreening.Judge([.. rows], new ScreeningRequest()).Cells[0].CapacityTests);
    }
}
