using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis;

/// <summary>Which days of a long log are fitted, and where the joints are that no stretch may cross.</summary>
public class LogStretchTests
{
    /// <summary>A row each minute; hours at a current one after another.</summary>
    private static (double[] TimeS, ChargeCount Count) Log(params (double Hours, double Amps)[] parts)
    {
        double[] amps = [.. parts.SelectMany(p => Enumerable.Repeat(p.Amps, (int)Math.Round(p.Hours * 60)))], time = [.. amps.Select((_, i) => i * 60.0)];
        return (time, ChargeCount.Of(time, amps, true, 10));
    }

    private static LogStretch Of((double[] TimeS, ChargeCount Count) log, params int[] unlogged) => LogStretch.Of(log.TimeS, log.Count, 10, unlogged);

    [Fact]
    public void A_short_log_is_fitted_whole()
    {
        Assert.Equal(new LogStretch(0, 179, true), Of(Log((1, 8), (1, 0), (1, -8))));
    }

    // Four days to the second, and sixteen capacities moved.
    [Theory]
    [InlineData(95.9, 1, 1, true)]
    [InlineData(97, 1, 1, false)]
    public void Four_days_are_the_longest(double restHours, double rideHours, double amps, bool whole)
    {
        Assert.Equal(whole, Of(Log((restHours - rideHours, 0), (rideHours, amps))).Whole);
    }

    [Theory]
    [InlineData(15.9, true)]
    [InlineData(16.1, false)]
    public void Sixteen_capacities_moved_are_the_most(double hours, bool whole)
    {
        Assert.Equal(whole, Of(Log((hours / 2, 10), (hours / 2, -10))).Whole);
    }

    // Day 1 draws 2 Ah, day 7 draws 9 Ah, day 14 draws 4 Ah: the middle one is fitted, from the rest before it.
    [Fact]
    public void The_days_with_the_widest_window_are_fitted()
    {
        (double[] time, ChargeCount count) = Log((1, 2), (143, 0), (1.5, 6), (166, 0), (1, 4), (2, 0));

        LogStretch stretch = Of((time, count));

        Assert.False(stretch.Whole);
        // A quarter of an hour of the rest before it comes along.
        Assert.InRange(time[stretch.First], (144 * 3600) - 960, (144 * 3600) - 840);
        Assert.InRange(time[stretch.Last], 145.4 * 3600, 312 * 3600);
    }

    // 97 hundredths of the best count as equal, and the later is taken; what is beyond the rated capacity counts a tenth more at most.
    [Theory]
    [InlineData(8.0, 7.8, true)]
    [InlineData(8.0, 7.7, false)]
    [InlineData(14.0, 10.8, true)]
    [InlineData(14.0, 10.5, false)]
    public void Of_equals_the_later_is_fitted(double firstAh, double laterAh, bool later)
    {
        (double[] time, ChargeCount count) = Log((1, 0), (2, firstAh / 2), (200, 0), (2, laterAh / 2), (1, 0));

        Assert.Equal(later, time[Of((time, count)).First] > 100 * 3600);
    }

    // Charge moved unlogged: what lies on both sides of the first row after it is never one stretch.
    [Fact]
    public void No_stretch_crosses_a_gap_in_which_charge_moved()
    {
        (double[] time, ChargeCount count) = Log((0.5, 0), (1, 5), (0.5, 0), (1, 7), (0.5, 0));

        LogStretch stretch = Of((time, count), 120);

        Assert.Equal((120, false), (stretch.First, stretch.Whole));
        Assert.Equal(time.Length - 1, stretch.Last);
        Assert.Equal((0, 189), (Of((time, count), 190).First, Of((time, count), 190).Last));
    }

    // Two rides a day apart are one stretch where together they reach further than either.
    [Fact]
    public void Days_that_together_reach_further_are_fitted_together()
    {
        (double[] time, ChargeCount count) = Log((1, 0), (1, 4), (24, 0), (1, 4), (60, 0), (1, 2), (60, 0), (1, 2));

        LogStretch stretch = Of((time, count));

        Assert.True(time[stretch.First] < 3700);
        Assert.InRange(time[stretch.Last], 26.9 * 3600, 88 * 3600);
    }
}
