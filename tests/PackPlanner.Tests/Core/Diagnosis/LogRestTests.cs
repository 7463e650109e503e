using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis;

public class LogRestTests
{
    // Ten minutes of load, five of rest, ten of load, a red light of half a minute, two minutes of rest at the end.
    private static RideLog Log(double[]? currentA = null)
    {
        double[] seconds = [.. Enumerable.Range(0, 1650).Select(i => (double)i)];
        double[] amps = currentA ?? [.. seconds.Select(t => t is >= 600 and < 900 or >= 1200 and < 1230 or >= 1530 ? 0.0 : 20 + (t % 7))];
        // Group 2 dips twice as far under load, group 3 stands 12 mV low, and all recover slowly in a rest.
        double[] Volts(double ohm, double lowV) => [.. seconds.Select((t, i) => 3.7 - lowV - (ohm * amps[i]) - (t is >= 600 and < 900 ? 0.02 * Math.Exp(-(t - 600) / 40) : 0))];
        return new RideLog { TimeS = seconds, CurrentA = amps, GroupV = [Volts(0.002, 0), Volts(0.004, 0), Volts(0.002, 0.012)], UsualStepS = 1, Source = "test" };
    }

    [Fact]
    public void Rests_of_a_minute_are_found_and_show_the_groups_at_their_end()
    {
        IReadOnlyList<LogRest> rests = LogRest.Of(Log(), ratedAh: 20);

        Assert.Equal([(600.0, 299.0), (1530.0, 119.0)], rests.Select(rest => (rest.FromS, rest.LengthS)));
        Assert.Equal(3.7, rests[0].MedianV, 0.0005);
        Assert.Equal(0, rests[0].ApartV[1], 0.0005);
        Assert.Equal(-0.012, rests[0].ApartV[2], 0.0005);
    }

    [Fact]
    public void Of_many_rests_the_longest_are_kept_and_a_log_without_a_current_has_none()
    {
        Assert.Equal(600, Assert.Single(LogRest.Of(Log(), ratedAh: 20, most: 1)).FromS);
        RideLog log = Log();
        Assert.Empty(LogRest.Of(new RideLog { TimeS = log.TimeS, CurrentA = null, GroupV = log.GroupV, Source = "test" }, ratedAh: 20));
        Assert.Throws<ArgumentOutOfRangeException>(() => LogRest.Of(log, ratedAh: 0));
    }
}
