using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis;

/// <summary>Resistances read from windows of a log whose resistances are set: without noise they come out to the last digits.</summary>
public class ResistanceReadingTests
{
    private static readonly double[] Cells = [0.006, 0.0062, 0.0064, 0.006], Joints = [0, 0, 0, 0.004], Slow = [0.12, 0.2, 0.15, 0.3];

    /// <summary>Half an hour of a jumpy current: open-circuit volts that fall with charge, cells with slow parts, joints without.</summary>
    private static (DiagnosisColumns Log, ChargeCount Count) Ride(double[]? cells = null, double[]? joints = null, double stepS = 1, int rows = 1800, bool still = false, double noiseV = 0, int mostRows = 60)
    {
        Random random = new(4);
        double[] amps = new double[rows];
        for (int i = 0, until = 0; i < rows; i++)
        {
            if (i >= until)
                until = i + 3 + random.Next(mostRows);
            amps[i] = still ? 4 : i == 0 || i + 1 == until ? 2 + (10 * random.NextDouble()) : amps[i - 1];
        }

        double[] time = [.. amps.Select((_, i) => i * stepS)];
        ChargeCount count = ChargeCount.Of(time, amps, false, 10);
        SlowCurrents slow = new();
        double[][] volts = [.. Cells.Select(_ => new double[rows])];
        for (int i = 0; i < rows; i++)
        {
            if (i > 0)
                slow.Advance(stepS, (amps[i] + amps[i - 1]) / 2, false);
            double drive = amps[i] + Enumerable.Range(0, 4).Sum(j => Slow[j] * slow.NowA[j]);
            for (int k = 0; k < 4; k++)
                volts[k][i] = 4 - (0.1 * count.DrawnAh[i]) - (0.01 * k) - ((cells ?? Cells)[k] * drive) - ((joints ?? Joints)[k] * amps[i]) + (noiseV * (random.NextDouble() - 0.5));
        }

        return (new DiagnosisColumns(time, amps, volts, [.. time.Select(t => 20 + (t / 360))], false), count);
    }

    private static ResistanceFit Fit(DiagnosisColumns log, ChargeCount count) => ResistanceFit.Of(ResistanceWindows.Of(log, count, 10), (_, _) => 1, 4);

    [Fact]
    public void Windows_are_five_minutes_and_know_when_how_warm_and_at_what_charge_they_were()
    {
        (DiagnosisColumns log, ChargeCount count) = Ride();

        ResistanceWindows windows = ResistanceWindows.Of(log, count, 10);

        // A window ends with the row that is more than 300 s from its first: 301 rows each.
        Assert.Equal(6, windows.All.Count);
        Assert.Equal(1, windows.StepS);
        Assert.Equal([150, 451, 752, 1053, 1354, 1652], windows.All.Select(w => Math.Round(w.TimeS, 9)));
        Assert.Equal([297, 297, 297, 297, 297, 291], windows.All.Select(w => w.Freedom));
        Assert.Equal(20 + (150 / 360.0), windows.All[0].TemperatureDegC, 1e-9);
        Assert.Equal(count.DrawnAh[..301].Average(), windows.All[0].DrawnAh, 1e-9);
    }

    // What is left of the volts when charge and time are projected out is resistance alone: sums of squares fit to nothing.
    [Fact]
    public void Windows_hold_resistance_and_nothing_of_the_curve()
    {
        (DiagnosisColumns log, ChargeCount count) = Ride();
        double[] ohm = [Cells[2] + Joints[2], .. Slow.Select(s => Cells[2] * s)];

        foreach (ResistanceWindows.Window w in ResistanceWindows.Of(log, count, 10).All)
        {
            double left = w.VV[2];
            for (int a = 0; a < 5; a++)
            {
                left += 2 * ohm[a] * w.XV[a, 2];
                for (int b = 0; b < 5; b++)
                {
                    Assert.Equal(w.XX[a, b], w.XX[b, a], 1e-9);
                    left += ohm[a] * ohm[b] * w.XX[a, b];
                }
            }

            Assert.Equal(0, left / w.VV[2], 1e-6);
            Assert.True(w.XX[0, 0] > 0.04 * w.Freedom);
        }
    }

    [Fact]
    public void Windows_without_steps_or_with_too_few_rows_tell_nothing()
    {
        (DiagnosisColumns still, ChargeCount count) = Ride(still: true);
        (DiagnosisColumns few, ChargeCount fewCount) = Ride(rows: 15, mostRows: 1);
        (DiagnosisColumns enough, ChargeCount enoughCount) = Ride(rows: 16, mostRows: 1);

        Assert.Empty(ResistanceWindows.Of(still, count, 10).All);
        // Four terms projected out, five asked for, and six to spare: sixteen rows are the least.
        Assert.Empty(ResistanceWindows.Of(few, fewCount, 10).All);
        Assert.Single(ResistanceWindows.Of(enough, enoughCount, 10).All);
        // Of a pack ten times as large the same steps are no steps to speak of.
        Assert.Empty(ResistanceWindows.Of(enough, enoughCount, 400).All);
    }

    // A row that lost one reading counts for no group, and a gap of more than a minute parts two windows.
    [Fact]
    public void Lost_rows_are_left_out_and_gaps_part_windows()
    {
        (DiagnosisColumns log, ChargeCount count) = Ride(rows: 200);
        log.GroupV[1][50] = double.NaN;

        Assert.Equal(199 - 4, ResistanceWindows.Of(log, count, 10).All[0].Freedom);

        foreach ((double gap, int windows) in new[] { (59.0, 1), (61.0, 2) })
        {
            double[] time = [.. log.TimeS.Select((t, i) => t + (i >= 100 ? gap - 1 : 0))];
            DiagnosisColumns parted = new(time, log.CurrentA, [log.GroupV[0]], null, false);
            Assert.Equal(windows, ResistanceWindows.Of(parted, ChargeCount.Of(time, log.CurrentA, false, 10), 10).All.Count);
        }
    }

    [Fact]
    public void Cells_joints_and_slow_parts_come_out_as_they_were_put_in()
    {
        (DiagnosisColumns log, ChargeCount count) = Ride();

        ResistanceFit fit = Fit(log, count);

        for (int j = 0; j < 4; j++)
            Assert.Equal(Slow[j], fit.Slow[j], 0.003);
        Assert.Equal(0, fit.Slow[4]);
        for (int k = 0; k < 4; k++)
        {
            Assert.Equal(Cells[k] + Joints[k], fit.CellOhm[k] + fit.JointOhm[k], 2e-5);
            double second = Cells[k] * (1 + Enumerable.Range(0, 4).Sum(j => Slow[j] * (1 - Math.Exp(-1 / SlowCurrents.TauS[j]))));
            Assert.Equal(second + Joints[k], fit.OneSecondOhm(k), 2e-5);
            Assert.InRange(fit.NoiseV[k], 0, 4e-4);
        }

        // The bad joint of the last group shows as a joint: its cells are those of the first.
        Assert.Equal(Joints[3] - Joints[0], fit.JointOhm[3] - fit.JointOhm[0], 3e-4);
        Assert.Equal(fit.CellOhm[0], fit.CellOhm[3], 3e-4);
        Assert.All(fit.Factors(), f => Assert.Equal(1, f.Factor, 0.1));
    }

    // One standard deviation of an even error of 2 mV from end to end is 2 / sqrt(12).
    [Fact]
    public void Noise_is_read_from_what_does_not_fit()
    {
        (DiagnosisColumns log, ChargeCount count) = Ride(noiseV: 0.002);

        ResistanceFit fit = Fit(log, count);

        Assert.All(fit.NoiseV, v => Assert.Equal(0.002 / Math.Sqrt(12), v, 0.0001));
        // Information of a window is its squares over that variance; half of it at least counts, the best window no more than twice.
        double squares = ResistanceWindows.Of(log, count, 10).All.Sum(w => w.XX[0, 0]);
        Assert.InRange(fit.Information[0][2], 0.6 * squares / (0.002 * 0.002 / 12), 2.2 * squares / (0.002 * 0.002 / 12));
    }

    // Resistance that doubled in some windows is read there as twice, and the variance is that of the readings and three percent.
    [Fact]
    public void A_factor_of_a_window_is_read_anew()
    {
        (DiagnosisColumns log, ChargeCount count) = Ride();
        ResistanceWindows windows = ResistanceWindows.Of(log, count, 10);
        // The first half of the log as it is, in the other all drops twice as large.
        double[][] volts = [.. log.GroupV.Select((v, k) => v.Select((x, i) => i <= 902 ? x : (2 * x) - (4 - (0.1 * count.DrawnAh[i]) - (0.01 * k))).ToArray())];
        DiagnosisColumns changed = new(log.TimeS, log.CurrentA, volts, log.TemperatureDegC, false);
        windows = ResistanceWindows.Of(changed, count, 10);

        ResistanceFit fit = ResistanceFit.Of(windows, (w, _) => w < 3 ? 1 : 2, 4);

        (int Window, int Group, double Factor, double Variance)[] factors = [.. fit.Factors().Where(f => f.Group == 1)];
        Assert.Equal([0, 1, 2, 3, 4, 5], factors.Select(f => f.Window));
        Assert.All(factors, f => Assert.Equal(f.Window < 3 ? 1 : 2, f.Factor, 0.2));
        Assert.All(factors, f => Assert.InRange(f.Variance, 0.0009, 0.003));
    }

    // What is quicker than the rows looks like the current itself, so that its share stays with the ohmic part.
    [Fact]
    public void Slow_parts_quicker_than_the_rows_are_not_told()
    {
        (DiagnosisColumns log, ChargeCount count) = Ride(stepS: 4);

        ResistanceFit fit = Fit(log, count);

        Assert.Equal(0, fit.Slow[0]);
        Assert.NotEqual(0, fit.Slow[2]);
    }
}
