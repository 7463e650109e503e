using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis;

public class ChargeCountTests
{
    [Fact]
    public void What_the_sensor_reads_in_rests_is_taken_off_everywhere()
    {
        // A minute of rest at 0.2 A, an hour at 10.2 A, a minute of rest: 10 Ah passed.
        double[] time = [.. Enumerable.Range(0, 3720).Select(i => (double)i)];
        double[] amps = [.. time.Select(t => t is < 60 or >= 3660 ? 0.2 : 10.2)];

        ChargeCount count = ChargeCount.Of(time, amps, averages: false, ratedAh: 20);

        Assert.Equal(0.2, count.ZeroA, tolerance: 1e-9);
        Assert.Equal(10.0, count.DrawnAh[^1], tolerance: 0.01);
        Assert.Equal(0, count.CurrentA[10]);
    }

    // By hand: a step of 36 A somewhere within ten seconds, one in sixty rows; a twelfth of (36 A x 10 s)^2 each is 0.029 Ah.
    [Fact]
    public void A_step_between_two_rows_leaves_a_doubt_in_the_count_and_averaged_rows_leave_none()
    {
        double[] time = [.. Enumerable.Range(0, 601).Select(i => i * 10.0)];
        double[] amps = [.. Enumerable.Range(0, 601).Select(i => i / 60 % 2 == 0 ? 0.0 : 36.0)];

        ChargeCount count = ChargeCount.Of(time, amps, averages: false, ratedAh: 20);

        Assert.Equal(0.1 / Math.Sqrt(12) * Math.Sqrt(10), count.SamplingAh(averages: false), 0.001);
        Assert.Equal(0, count.SamplingAh(averages: true));
    }

    // By hand: a current drawn anew at each row with a spread of 10 A misses sqrt(600) x 10 A x 10 s in 600 rows: 0.68 Ah.
    [Fact]
    public void A_current_that_jumps_faster_than_the_rows_leaves_the_doubt_of_its_scatter()
    {
        Random random = new(5);
        double[] time = [.. Enumerable.Range(0, 600).Select(i => i * 10.0)];
        double[] amps = [.. time.Select(_ => 40 + (10 * Math.Sqrt(12) * (random.NextDouble() - 0.5)))];

        Assert.Equal(0.68, ChargeCount.Of(time, amps, averages: false, ratedAh: 20).SamplingAh(averages: false), 0.08);
    }

    [Fact]
    public void A_parked_night_without_rows_moves_no_charge()
    {
        double[] time = [.. Enumerable.Range(0, 100).Select(i => i * 10.0), .. Enumerable.Range(0, 100).Select(i => 36000 + (i * 10.0))];
        double[] amps = [.. time.Select(t => t is > 300 and < 700 ? 9.0 : 0.0)];

        ChargeCount count = ChargeCount.Of(time, amps, averages: false, ratedAh: 20);

        Assert.Equal(1.0, count.DrawnAh[^1], tolerance: 0.03);
        Assert.False(Assert.Single(count.Gaps).UnderLoad);
    }

    [Fact]
    public void A_gap_of_two_minutes_under_load_is_bridged_and_named()
    {
        double[] time = [.. Enumerable.Range(0, 600).Select(i => (double)i).Where(t => t is < 200 or >= 320)];
        double[] amps = [.. time.Select(_ => 36.0)];

        ChargeCount count = ChargeCount.Of(time, amps, averages: false, ratedAh: 20);

        Assert.Equal(5.99, count.DrawnAh[^1], tolerance: 0.02);
        Assert.True(Assert.Single(count.Gaps).UnderLoad);
    }

    [Fact]
    public void Averaged_rows_count_over_their_own_interval()
    {
        // The row at 20 s says 36 A on average since 10 s: 0.1 Ah, whatever its neighbours say.
        double[] time = [0, 10, 20, 30];
        double[] amps = [0, 0, 36, 0];

        ChargeCount count = ChargeCount.Of(time, amps, averages: true, ratedAh: 20);

        Assert.Equal(0.1, count.DrawnAh[^1], tolerance: 1e-9);
    }

    [Fact]
    public void A_charge_at_a_tenth_of_the_capacity_is_no_rest()
    {
        double[] time = [.. Enumerable.Range(0, 1000).Select(i => (double)i)];
        double[] amps = [.. time.Select(_ => -2.0)];

        ChargeCount count = ChargeCount.Of(time, amps, averages: false, ratedAh: 20);

        Assert.DoesNotContain(true, count.Resting);
    }
}
