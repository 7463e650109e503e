using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis;

/// <summary>The model of a pack against its formula written out, and its derivatives against small differences.</summary>
public class PackVoltsTests
{
    private static PackModel Pack(bool leaks, string chemistry = "NMC", (int, int)[]? taps = null)
    {
        DiagnosisColumns log = SmallPack.Log(SmallPack.RideA(), 3, (_, i) => 3.7 + (0.001 * i), degC: i => 20 + (0.02 * i));
        return SmallPack.Model(SmallPack.Slices(log, topV: 4.2), 3, leaks, taps ?? [(0, 1), (2, -1)], chemistry);
    }

    /// <summary>Ampere-hours that a group has lost at a piece: drawn less what the sensor reads too much, and what leaked or was bled.</summary>
    private static double LostAh(PackModel m, double[] x, ChargeSlices.Piece p, int k)
    {
        double lost = p.DrawnAh - (x[m.OffsetAt] * 0.01 * p.LoadH);
        if (!m.Leaks)
            return lost;
        // One unit of leak is 1 mA for 10 Ah.
        lost += x[m.GroupAt(k) + 12] * 0.001 * p.TimeS / 3600;
        for (int e = 0; e < m.Tops; e++)
            lost += x[m.GroupAt(k) + 13 + e] * 0.001 * p.TopH[e];
        return lost;
    }

    private static double ByHand(PackModel m, double[] x, ChargeSlices.Piece p, int k)
    {
        int at = m.GroupAt(k);
        double z = x[at + 1] - (LostAh(m, x, p, k) / (10 * Math.Exp(x[at])));
        double stretched = z, bend = 0;
        if (z is > 0 and < 1)
        {
            stretched += Enumerable.Range(1, 5).Sum(j => 0.01 * x[at + 3 + j] / j * Math.Sin(j * Math.PI * z));
            bend = Enumerable.Range(1, 3).Sum(j => 0.001 * x[at + 8 + j] * Math.Sin(j * Math.PI * z));
        }

        double v = m.Curve.Volts(stretched, m.Curve.Bent(x.AsSpan(0, m.Curve.Shapes)), out _) + bend;
        double drive = p.CurrentA + Enumerable.Range(0, 5).Sum(j => x[m.SlowAt + j] * p.SlowA[j]);
        v -= SmallPack.UnitOhm * ((x[at + 2] * m.Shape.At(z, p.TemperatureDegC, out _) * drive) + (x[at + 3] * p.CurrentA));
        v -= 0.004 * Enumerable.Range(0, 4).Sum(j => x[m.HysteresisAt + j] * p.Hysteresis[j]);
        foreach (((int a, int b), int t) in m.Taps.Select((tap, t) => (tap, t)))
            v += 0.01 * x[m.TapAt + t] * (a == k ? 1 : b == k ? -1 : 0);
        return v;
    }

    [Theory]
    [InlineData(true, "NMC")]
    [InlineData(false, "NMC")]
    [InlineData(true, "LFP")]
    public void Volts_are_those_of_the_formula(bool leaks, string chemistry)
    {
        PackModel m = Pack(leaks, chemistry);
        double[] x = SmallPack.SomeOfAll(m);
        PackVolts volts = new(m);
        volts.TakeCurve(x);

        Assert.InRange(m.Slices.Pieces.Length, 30, 400);
        Assert.Equal(leaks ? 1 : 0, m.Tops);
        foreach (ChargeSlices.Piece p in m.Slices.Pieces)
        {
            for (int k = 0; k < 3; k++)
            {
                Assert.Equal(ByHand(m, x, p, k), volts.At(x, p, k, out PackVolts.Local local), 1e-9);
                Assert.Equal(x[m.GroupAt(k) + 1] - (LostAh(m, x, p, k) / (10 * Math.Exp(x[m.GroupAt(k)]))), volts.ChargeAt(x, p, k), 1e-12);
                Assert.Equal(LostAh(m, x, p, k), local.LostAh, 1e-12);
                Assert.Equal(p.CurrentA + Enumerable.Range(0, 5).Sum(j => x[m.SlowAt + j] * p.SlowA[j]), local.DriveA, 1e-12);
            }
        }
    }

    [Fact]
    public void A_piece_that_is_none_of_the_log_takes_its_own_temperature()
    {
        PackModel m = Pack(false);
        double[] x = SmallPack.SomeOfAll(m);
        PackVolts volts = new(m);
        volts.TakeCurve(x);
        ChargeSlices.Piece of = m.Slices.Pieces[20], p = new() { CurrentA = 9, TemperatureDegC = -5, DrawnAh = of.DrawnAh, SlowA = of.SlowA, Hysteresis = of.Hysteresis, TopH = [] };

        Assert.Equal(ByHand(m, x, p, 1), volts.At(x, p, 1, out _), 1e-9);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Derivatives_are_those_of_small_differences(bool leaks)
    {
        PackModel m = Pack(leaks);
        double[] x = SmallPack.SomeOfAll(m), row = new double[m.Shared + m.PerGroup];
        // What a group's own bending adds to the slope is a thousandth of the curve's and left out of the derivatives: here it is nought.
        for (int k = 0; k < 3; k++)
            Array.Clear(x, m.GroupAt(k) + PackParameters.Bend, PackParameters.Bends);
        PackVolts volts = new(m);
        double Volts(double[] at, ChargeSlices.Piece p, int k)
        {
            volts.TakeCurve(at);
            return volts.At(at, p, k, out _);
        }

        foreach (ChargeSlices.Piece p in m.Slices.Pieces.Where((_, i) => i % 14 == 0))
        {
            for (int k = 0; k < 3; k++)
            {
                volts.TakeCurve(x);
                volts.At(x, p, k, out PackVolts.Local local);
                volts.FillRow(x, p, k, local, row);
                for (int j = 0; j < row.Length; j++)
                {
                    int at = j < m.Shared ? j : j - m.Shared + m.GroupAt(k);
                    const double h = 1e-7;
                    double[] more = [.. x], less = [.. x];
                    (more[at], less[at]) = (x[at] + h, x[at] - h);
                    double slope = (Volts(more, p, k) - Volts(less, p, k)) / (2 * h);
                    Assert.True(Math.Abs(row[j] - slope) < 2e-6 + (2e-3 * Math.Abs(slope)), $"parameter {j} of group {k} at {p.TimeS} s: {row[j]} against {slope}");
                }
            }
        }
    }

    [Fact]
    public void Steady_volts_have_every_slow_part_grown_out_and_no_tap_error()
    {
        PackModel m = Pack(true);
        double[] x = SmallPack.SomeOfAll(m);
        PackVolts volts = new(m);
        volts.TakeCurve(x);
        ChargeSlices.Piece rest = new() { TemperatureDegC = 25, SlowA = new double[5], Hysteresis = new double[4], TopH = new double[1] };
        double[] at = [.. x];

        for (int k = 0; k < 3; k++)
        {
            at[m.GroupAt(k) + 1] = 0.6;
            double tap = k switch { 0 => 0.01 * x[m.TapAt], 1 => -0.01 * x[m.TapAt], _ => 0.01 * x[m.TapAt + 1] };
            double slow = 1 + Enumerable.Range(0, 5).Sum(j => x[m.SlowAt + j]);
            double resting = ByHand(m, at, rest, k) - tap, cells = SmallPack.UnitOhm * x[m.GroupAt(k) + 2] * m.Shape.At(0.6, 25, out _) * slow, joint = SmallPack.UnitOhm * x[m.GroupAt(k) + 3];

            Assert.Equal(resting, volts.SteadyVolts(x, k, 0.6, 0, 25), 1e-9);
            Assert.Equal(resting - (9 * (cells + joint)), volts.SteadyVolts(x, k, 0.6, 9, 25), 1e-9);
            Assert.Equal(resting - (9 * cells), volts.SteadyVolts(x, k, 0.6, 9, 25, joint: 0), 1e-9);
        }
    }

    // Slow parts that a fit made negative must not take resistance away.
    [Fact]
    public void Slow_parts_below_nought_do_not_lower_a_steady_drop()
    {
        PackModel m = Pack(false);
        double[] x = SmallPack.SomeOfAll(m);
        for (int j = 0; j < 5; j++)
            x[m.SlowAt + j] = -0.1;
        PackVolts volts = new(m);
        volts.TakeCurve(x);

        double drop = volts.SteadyVolts(x, 0, 0.5, 0, 25, 0) - volts.SteadyVolts(x, 0, 0.5, 1, 25, 0);

        Assert.Equal(SmallPack.UnitOhm * x[m.GroupAt(0) + 2] * m.Shape.At(0.5, 25, out _), drop, 1e-9);
    }
}
