using CsCheck;
using PackPlanner.Core.Bench;

namespace PackPlanner.Tests.Core.Bench;

/// <summary>Charge and energy of random logs against sums that are known before the log is written.</summary>
public class CountedChargeTests
{
    // Rests and steps of constant current by turns; each stands for whole rows of its own rhythm.
    private static readonly Gen<(double RhythmS, (int Rows, double CurrentA)[] Steps)> Logs =
        Gen.Select(Gen.Double[0.5, 10], Gen.Select(Gen.Int[300, 700], Gen.Double[1, 20], Gen.Bool).Array[1, 5])
            .Select((rhythmS, steps) => (rhythmS, steps.Select(step => (step.Item1, step.Item3 ? step.Item2 : -step.Item2)).ToArray()));

    [Fact]
    public void Each_step_holds_its_current_times_its_seconds_and_its_volts()
    {
        Logs.Sample(log =>
        {
            List<double> time = [], current = [], volts = [];
            void Row(double amps, double v) { time.Add(time.Count * log.RhythmS); current.Add(amps); volts.Add(v); }
            foreach ((int rows, double amps) in log.Steps)
            {
                for (int i = 0; i < 30; i++)
                    Row(0, 3.7);
                for (int i = 0; i < rows; i++)
                    Row(amps, 3.6);
            }

            for (int i = 0; i < 30; i++)
                Row(0, 3.7);
            IReadOnlyList<TestStep> found = TestCurves.Read(
                new TestCurve { TimeS = [.. time], CurrentA = [.. current], Volts = [.. volts], Source = "log" }, new CurveRequest()).Steps;

            // A row stands for the time from half a row before it to half a row after it; what is too short is a pulse.
            (int Rows, double CurrentA)[] long_ = [.. log.Steps.Where(step => (step.Rows - 1) * log.RhythmS > 120)];
            Assert.Equal(long_.Length, found.Count);
            foreach ((TestStep step, (int rows, double amps)) in found.Zip(long_))
            {
                double ah = Math.Abs(amps) * rows * log.RhythmS / 3600;
                Assert.Equal(amps > 0 ? CurrentDirection.Discharge : CurrentDirection.Charge, step.Direction);
                Assert.Equal(ah, step.ChargeAh, tolerance: 1e-9 * rows);
                Assert.Equal(ah * 3.6, step.EnergyWh, tolerance: 1e-8 * rows);
                Assert.Equal(Math.Abs(amps), step.MeanCurrentA, tolerance: 1e-9 * rows);
            }
        }, seed: "0000KIcCwDG2", iter: 1500);
    }

    // Current and volts that change all the time, at an uneven rhythm: each interval divided into a hundred slices, added one by one.
    [Fact]
    public void Any_rows_hold_what_a_hundred_slices_between_each_two_of_them_hold()
    {
        Gen.Select(Gen.Double[0.1, 60].Array[3, 60], Gen.Double[-30, 30].Array[60], Gen.Double[2.5, 4.2].Array[60]).Sample((steps, current, volts) =>
        {
            double[] time = new double[steps.Length];
            for (int i = 1; i < time.Length; i++)
                time[i] = time[i - 1] + steps[i];
            (double ah, double wh) = CapacityCount.Between(time, current, volts, 1, time.Length - 1);
            double slowAh = 0, slowWh = 0;
            for (int i = 1; i < time.Length - 1; i++)
            {
                double powerHere = current[i] * volts[i], powerNext = current[i + 1] * volts[i + 1];
                for (int slice = 0; slice < 100; slice++)
                {
                    double at = (slice + 0.5) / 100;
                    slowAh += ((1 - at) * current[i] + at * current[i + 1]) * steps[i + 1] / 100 / 3600;
                    slowWh += ((1 - at) * powerHere + at * powerNext) * steps[i + 1] / 100 / 3600;
                }
            }

            Assert.Equal(slowAh, ah, tolerance: 1e-9);
            Assert.Equal(slowWh, wh, tolerance: 1e-9);
        }, seed: "0000KIcCwDG2", iter: 2000);
    }
}
