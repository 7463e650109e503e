using CsCheck;
using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis;

/// <summary>The ampere-hours of a ride against those that were drawn when the log was made up.</summary>
public class CountedChargeTests
{
    private sealed record Ride(double ZeroA, double RowS, (double Seconds, double CurrentA)[] Steps);

    private static readonly Gen<Ride> Rides =
        from zeroA in Gen.Double[-0.3, 0.3]
        from rowS in Gen.Double[0.5, 5]
        from steps in Gen.Select(Gen.Double[60, 600], Gen.Double[4, 40], Gen.Int[0, 2]).Array[1, 8]
        select new Ride(zeroA, rowS, [(120, 0), .. steps.SelectMany(step => new[] { (step.Item1, step.Item3 switch { 0 => -step.Item2, _ => step.Item2 }), (60.0, 0.0) })]);

    // Currents change at any instant, the rows come at their own rhythm: each change may fall anywhere between two rows, half of which is counted.
    [Fact]
    public void A_ride_counts_what_was_drawn_but_for_half_a_row_at_each_change()
    {
        Rides.Sample(ride =>
        {
            (double[] time, double[] amps) = Rows(ride);
            ChargeCount count = ChargeCount.Of(time, amps, averages: false, ratedAh: 40);
            double drawnAh = ride.Steps.Sum(step => step.Seconds * step.CurrentA) / 3600;
            double doubtAh = ride.Steps.Sum(step => 2 * Math.Abs(step.CurrentA)) * ride.RowS / 2 / 3600;
            Assert.Equal(ride.ZeroA, count.ZeroA, tolerance: 1e-9);
            Assert.Equal(drawnAh, count.DrawnAh[^1], tolerance: doubtAh + 1e-9);
            Assert.Empty(count.Gaps);
        }, seed: "0000KIcCwDG2", iter: 1500);
    }

    // Rows that say the mean since the row before leave nothing out, wherever the changes fall, but for those that a rest shares with a step.
    [Fact]
    public void A_ride_of_averages_counts_what_was_drawn_but_for_rows_at_the_edge_of_a_rest()
    {
        Rides.Sample(ride =>
        {
            (double[] time, double[] amps) = Rows(ride, averages: true);
            ChargeCount count = ChargeCount.Of(time, amps, averages: true, ratedAh: 40);
            double drawnAh = 0;
            for (int i = 1; i < time.Length; i++)
                drawnAh += DrawnAs(ride, time[i - 1], time[i]) / 3600;
            // A row that a rest shares with the step beside it is one of rest when it is small enough: at most that much is left out.
            double smallAh = 2 * ride.Steps.Length * 1.6 * 1.0 * ride.RowS / 3600;
            // The same rows at both ends of a rest of 60 s move the zero that is read off it.
            double zeroAh = 2 * 1.6 * ride.RowS / 60 * time[^1] / 3600;
            Assert.Equal(drawnAh, count.DrawnAh[^1], tolerance: smallAh + zeroAh);
        }, seed: "0000KIcCwDG2", iter: 1500);
    }

    private static (double[] TimeS, double[] CurrentA) Rows(Ride ride, bool averages = false)
    {
        int rows = (int)(ride.Steps.Sum(step => step.Seconds) / ride.RowS);
        double[] time = [.. Enumerable.Range(0, rows).Select(i => (i + 0.37) * ride.RowS)];
        double At(double s)
        {
            foreach ((double seconds, double amps) in ride.Steps)
            {
                if (s < seconds)
                    return amps;
                s -= seconds;
            }

            return 0;
        }

        return (time, [.. time.Select((s, i) => ride.ZeroA + (averages ? i == 0 ? 0 : DrawnAs(ride, time[i - 1], s) / (s - time[i - 1]) : At(s)))]);
    }

    // Ampere-seconds between two instants: of each step the part that lies between them.
    private static double DrawnAs(Ride ride, double fromS, double toS)
    {
        double sum = 0, at = 0;
        foreach ((double seconds, double amps) in ride.Steps)
        {
            sum += amps * Math.Max(0, Math.Min(toS, at + seconds) - Math.Max(fromS, at));
            at += seconds;
        }

        return sum;
    }
}
