using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis;

/// <summary>A probe that warms while nothing flows, on both sides of each limit.</summary>
public class WarmingAtRestTests
{
    /// <summary>A rest of so many minutes, after which one of two probes rises for five minutes by so much.</summary>
    private static int? Warms(double riseK, int restRows = 200, int other = 0, Func<int, double>? shape = null, double onA = 0.2, double amps = 0.1)
    {
        double[] time = [.. Enumerable.Range(0, restRows + 31).Select(i => i * 10.0)];
        double Rise(int i) => i < restRows ? 0 : riseK * (shape?.Invoke(i - restRows) ?? (i - restRows) / 30.0);
        RideLog log = new()
        {
            TimeS = time,
            CurrentA = null,
            GroupV = [],
            Source = "log",
            TemperatureDegC = [[.. time.Select((_, i) => 25 + Rise(i))], [.. time.Select((_, i) => 25 + (other * Rise(i)))]],
        };
        return WarmingAtRest.First(log, [.. time.Select(_ => amps)], 0, onA);
    }

    // Half a kelvin a minute for five minutes, half an hour after the last current.
    [Theory]
    [InlineData(2.55, 200, 0.1, true)]
    [InlineData(2.45, 200, 0.1, false)]
    [InlineData(5, 155, 0.1, true)]
    [InlineData(5, 140, 0.1, false)]
    [InlineData(5, 200, 0.2, false)]
    public void A_probe_that_warms_at_rest_is_told(double riseK, int restRows, double amps, bool told)
    {
        Assert.Equal(told, Warms(riseK, restRows, amps: amps) is not null);
    }

    [Fact]
    public void What_warms_all_alike_or_jumps_at_once_is_not_meant()
    {
        Assert.Null(Warms(5, other: 1));
        Assert.Null(Warms(5, shape: i => i < 15 ? 0 : 1));
        // More than half of it, but less than three fifths, within one minute.
        Assert.NotNull(Warms(5, shape: i => i / 30.0 * 0.55 + (i < 15 ? 0 : 0.45)));
        Assert.Equal(30 + 200, Warms(2.51)!.Value, 1.5);
    }

    // A gap of six minutes at most is followed across.
    [Theory]
    [InlineData(359, true)]
    [InlineData(361, false)]
    public void A_gap_hides_how_it_rose(double seconds, bool told)
    {
        double[] time = [.. Enumerable.Range(0, 31).Select(i => i * 60.0), .. Enumerable.Range(1, 2).Select(i => 1800 + (i * seconds / 2))];
        RideLog log = new() { TimeS = [.. time[..31], 1800 + (seconds / 2), 1800 + seconds], CurrentA = null, GroupV = [], Source = "log", TemperatureDegC = [[.. time[..31].Select(_ => 25.0), 27, 29], [.. time.Select(_ => 25.0)]] };
        RideLog across = new() { TimeS = [.. time[..31], 1800 + seconds], CurrentA = null, GroupV = [], Source = "log", TemperatureDegC = [[.. time[..31].Select(_ => 25.0), 29], [.. time[..32].Select(_ => 25.0)]] };

        Assert.Equal(told, WarmingAtRest.First(log, new double[33], 0, 0.2) is not null);
        // Without a row between it is a jump.
        Assert.Null(WarmingAtRest.First(across, new double[32], 0, 0.2));
    }
}
