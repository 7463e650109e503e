using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis;

/// <summary>Where a log is cut and what a piece holds, told from short logs by hand.</summary>
public class SliceCutterTests
{
    private static ChargeSlices Cut(double[] amps, double stepS = 10, double shortestS = 30, double topV = 9, Func<int, int, double>? volts = null, bool averages = false, Func<int, double>? degC = null)
    {
        DiagnosisColumns log = SmallPack.Log(amps, 2, volts, stepS, degC, averages);
        return ChargeSlices.Of(log, ChargeCount.Of(log.TimeS, log.CurrentA, averages, 10), 10, shortestS, topV);
    }

    private static (int, int)[] Rows(ChargeSlices slices) => [.. slices.Pieces.Select(p => p.Rows)];

    private static double[] Many(int n, double amps) => [.. Enumerable.Repeat(amps, n)];

    // Half an ampere of ten draws 1.4 mAh in ten seconds: time alone cuts, after thirty seconds.
    [Fact]
    public void Under_load_a_piece_lasts_as_long_as_is_asked()
    {
        Assert.Equal([(0, 2), (3, 5), (6, 8), (9, 9)], Rows(Cut(Many(10, 0.5))));
        Assert.Equal([(0, 4), (5, 9)], Rows(Cut(Many(10, 0.5), shortestS: 50)));
    }

    // A third of a percent of 10 Ah is 33 mAh; 12 A draw 33.3 mAh in a step of ten seconds, 11.8 A 32.8 mAh.
    [Fact]
    public void A_third_of_a_percent_of_charge_ends_a_piece()
    {
        Assert.Equal([(0, 0), (1, 1), (2, 2)], Rows(Cut(Many(3, 12))));
        Assert.Equal([(0, 1), (2, 2)], Rows(Cut(Many(3, 11.8))));
    }

    // In a rest each piece may be twice as long as the one before, from the shortest up to half an hour.
    [Fact]
    public void Pieces_of_a_rest_grow()
    {
        (int First, int Last)[] rows = Rows(Cut([.. Many(600, 0), .. Many(4, 1)]));

        Assert.Equal([(0, 2), (3, 8), (9, 20), (21, 44), (45, 92), (93, 188), (189, 368), (369, 548), (549, 599), (600, 602), (603, 603)], rows);
    }

    [Fact]
    public void A_rest_begins_and_ends_a_piece_and_a_turn_of_the_current_does_not()
    {
        ChargeSlices slices = Cut([.. Many(2, 1), .. Many(2, -0.5), .. Many(12, 0), .. Many(3, -1)], shortestS: 300);

        Assert.Equal([(0, 3), (4, 15), (16, 18)], Rows(slices));
        // The mean of the first is drawn, that of the last is charged.
        Assert.Equal([1, 0, -1], slices.Pieces.Select(p => p.Slice.Kind));
    }

    [Fact]
    public void A_piece_holds_means_of_its_rows_and_counts_what_was_read()
    {
        ChargeSlices slices = Cut([1, 2, 3, 1, 1, 1], volts: (k, i) => k == 0 ? 3.5 + (0.1 * i) : i == 1 ? double.NaN : 3.6, degC: i => 20 + i);
        ChargeSlices.Piece p = slices.Pieces[0];

        Assert.Equal((0, 2), p.Rows);
        Assert.Equal(10, p.TimeS, 1e-12);
        Assert.Equal(2, p.CurrentA, 1e-12);
        Assert.Equal(21, p.TemperatureDegC, 1e-12);
        Assert.Equal([3.6, 3.6], p.Volts.Select(v => Math.Round(v, 9)));
        Assert.Equal([3, 2], p.Readings);
        // Trapezoids: nothing, 1.5 A and 4 A of ten seconds, over three.
        Assert.Equal((15 + 40) / 3600.0 / 3, p.DrawnAh, 1e-12);
        // Hours under load: nothing, ten seconds, twenty.
        Assert.Equal(10 / 3600.0, p.LoadH, 1e-12);
        Assert.Equal([0, 1], slices.Pieces.Select(one => one.Place));
    }

    [Fact]
    public void Where_nothing_of_a_group_was_read_its_mean_is_none()
    {
        ChargeSlices.Piece p = Cut(Many(3, 0.5), volts: (k, _) => k == 0 ? 3.7 : double.NaN).Pieces[0];

        Assert.True(double.IsNaN(p.Volts[1]));
        Assert.Equal([3, 0], p.Readings);
    }

    // A step of current seen through low-passes: I (1 - exp(-t / tau)) after time t.
    [Fact]
    public void Slow_currents_grow_as_low_passes_do()
    {
        ChargeSlices slices = Cut([.. Many(12, 0), .. Many(60, 3)], shortestS: 10);
        ChargeSlices.Piece last = slices.Pieces[^1];
        double before = 1.5;

        // The first step takes half the current over ten seconds, by the trapezoid; then 59 steps of it all.
        for (int j = 0; j < 5; j++)
        {
            double tau = SlowCurrents.TauS[j], first = before * (1 - Math.Exp(-10 / tau));
            Assert.Equal(3 + ((first - 3) * Math.Exp(-590 / tau)), last.SlowA[j], 1e-9);
        }
    }

    // A row that is a mean over its time answers with the mean of the low-pass over that time.
    [Fact]
    public void Slow_currents_of_averaged_rows_are_means()
    {
        SlowCurrents slow = new();
        slow.Advance(10, 2, averages: false);
        slow.Advance(20, 5, averages: true);

        for (int j = 0; j < 5; j++)
        {
            double tau = SlowCurrents.TauS[j], from = 2 * (1 - Math.Exp(-10 / tau));
            double mean = Enumerable.Range(0, 20000).Average(i => 5 + ((from - 5) * Math.Exp(-(i + 0.5) / 1000 / tau)));
            Assert.Equal(mean, slow.NowA[j], 1e-5);
        }

        slow.Advance(0, 5, averages: true);
        Assert.Equal(5 + ((2 * (1 - Math.Exp(-10 / 2.5)) - 5) * Math.Exp(-20 / 2.5)), slow.NowA[0], 1e-9);
    }

    // What is left of the first state after a charge q is exp(-q / (share of capacity)); what drove it takes the rest, with its sign.
    [Fact]
    public void Hysteresis_is_renewed_by_charge()
    {
        ChargeSlices slices = Cut([.. Many(40, 6), .. Many(20, -6)], shortestS: 10);
        ChargeSlices.Piece drawn = slices.Pieces.First(p => p.Rows.First == 39), last = slices.Pieces[^1];
        double Kept(double ah, double share) => Math.Exp(-ah / (share * 10));

        foreach ((double share, int at) in new[] { (0.02, 0), (0.08, 2) })
        {
            double moved = 39 * 60 / 3600.0;
            Assert.Equal(1 - Kept(moved, share), drawn.Hysteresis[at], 1e-9);
            Assert.Equal(Kept(moved, share), drawn.Hysteresis[at + 1], 1e-9);
            // One step of nothing by the trapezoid, then 19 of charging: 19 x 60 As the other way.
            double back = 19 * 60 / 3600.0;
            Assert.Equal(-1 + ((2 - Kept(moved, share)) * Kept(back, share)), last.Hysteresis[at], 1e-9);
            Assert.Equal(Kept(moved + back, share), last.Hysteresis[at + 1], 1e-9);
        }
    }

    // Pieces of one percent of charge, one kind and one episode share a slice, and with it a weight.
    [Fact]
    public void Pieces_at_one_charge_share_a_slice()
    {
        ChargeSlices slices = Cut([.. Many(13, 6), .. Many(10, -6), .. Many(13, 6)], shortestS: 10);

        Assert.All(slices.Pieces, (p, i) => Assert.Equal(slices.Pieces.Count(o => o.Slice == p.Slice), slices.SharedBy[i]));
        Assert.All(slices.Pieces, p => Assert.Equal((int)Math.Floor(p.DrawnAh / 0.1), p.Slice.Charge));
        Assert.Contains(slices.SharedBy, n => n > 6);
        Assert.Equal(1, slices.Episodes);
    }

    // A rest of more than an hour parts two rides.
    [Theory]
    [InlineData(359, 1)]
    [InlineData(361, 2)]
    public void A_rest_of_an_hour_parts_two_rides(int rows, int episodes)
    {
        ChargeSlices slices = Cut([.. Many(20, 5), .. Many(rows, 0), .. Many(20, 5)]);

        Assert.Equal(episodes, slices.Episodes);
        Assert.Equal(episodes, slices.Pieces[^1].Slice.Episode);
        Assert.Equal(1, slices.Pieces[0].Slice.Episode);
    }

    // Near full, at rest or on charge or hardly drawn from, the highest group counts; three such times are kept.
    [Fact]
    public void Hours_near_full_are_counted_occasion_by_occasion()
    {
        double[] amps = [.. Many(10, 1), .. Many(20, -1), .. Many(20, 1), .. Many(15, -1), .. Many(10, 1), .. Many(5, -1), .. Many(5, 1), .. Many(5, -1)];
        ChargeSlices slices = Cut(amps, topV: 4.1, volts: (k, i) => k == 0 ? 3.9 : amps[i] < 0 ? 4.1 : double.NaN);
        double[] last = slices.Pieces[^1].TopH;

        // The first 20 rows of 10 s, then 15, then 5 and the 5 after it too.
        Assert.Equal(3, last.Length);
        Assert.Equal([200 / 3600.0, 150 / 3600.0, 100 / 3600.0], last.Select(h => Math.Round(h, 12)), (a, b) => Math.Abs(a - b) < 1e-9);
        Assert.All(slices.Pieces, p => Assert.Equal(3, p.TopH.Length));
        Assert.Equal(0, slices.Pieces[0].TopH[0]);
        Assert.Equal(0, slices.Pieces.First(p => p.Rows.First >= 30).TopH[1]);
    }

    // A fiftieth of 10 Ah is 0.2 A.
    [Theory]
    [InlineData(0.199, 4.1, 1)]
    [InlineData(0.201, 4.1, 0)]
    [InlineData(0.1, 4.0999, 0)]
    public void Near_full_counts_with_hardly_any_current_drawn(double amps, double volts, int occasions)
    {
        // Scatter, so that the current is no rest.
        double[] current = [.. Enumerable.Range(0, 12).Select(i => i % 2 == 0 ? amps : 1.0)];

        Assert.Equal(occasions == 0 ? 0 : 3, Cut(current, topV: 4.1, volts: (_, _) => volts).Pieces[0].TopH.Length);
    }

    // Across a gap nothing flows: what was slow dies away, and no hour of load is counted.
    [Fact]
    public void A_gap_ends_a_piece_under_load_and_no_current_is_counted_across_it()
    {
        double[] amps = Many(12, 5);
        double[] time = [.. Enumerable.Range(0, 12).Select(i => (i * 10.0) + (i >= 6 ? 1000 : 0))];
        DiagnosisColumns log = new(time, amps, [Many(12, 3.7)], null, false);
        ChargeSlices slices = ChargeSlices.Of(log, ChargeCount.Of(time, amps, false, 10), 10, 300, 9);
        ChargeSlices.Piece after = slices.Pieces.First(p => p.Rows.First == 6);

        Assert.Contains(slices.Pieces, p => p.Rows.Last == 5);
        Assert.Equal(5 * (1 - Math.Exp(-50 / 2.5)) * Math.Exp(-1010 / 2.5), ChargeSlices.Of(log, ChargeCount.Of(time, amps, false, 10), 10, 1, 9).Pieces.First(p => p.Rows.First == 6).SlowA[0], 1e-9);
        Assert.Equal(5 * (1 - Math.Exp(-50 / 500.0)) * Math.Exp(-1010 / 500.0), ChargeSlices.Of(log, ChargeCount.Of(time, amps, false, 10), 10, 1, 9).Pieces.First(p => p.Rows.First == 6).SlowA[4], 1e-9);
        Assert.InRange(after.LoadH, 50 / 3600.0, 100 / 3600.0);
    }
}
