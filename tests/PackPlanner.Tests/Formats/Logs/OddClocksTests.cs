using System.Globalization;
using System.Text;
using PackPlanner.Formats.Logs;

namespace PackPlanner.Tests.Formats.Logs;

/// <summary>Clocks that start anew, go on the next day, or write a date that can be read in two ways.</summary>
public class OddClocksTests
{
    // 20 rides of 100 rows every 10 s, each from nought: 19 falls back to the start.
    [Fact]
    public void A_clock_that_starts_anew_at_every_ride_leaves_the_rides_one_after_another()
    {
        PackLogReading read = Read("time (s)", Enumerable.Range(0, 20).SelectMany(ride => Enumerable.Range(0, 100).Select(i => (Text(10 * i), 3.9 - (0.01 * ride)))));

        Assert.Equal(2000, read.Log.Rows);
        Assert.Equal(3.9, read.Log.GroupV[0][99], tolerance: 1e-9);
        Assert.Equal(3.89, read.Log.GroupV[0][100], tolerance: 1e-9);
        Assert.Equal(19_990, read.Log.TimeS[^1], tolerance: 1e-6);
        Assert.Contains(read.Understood, said => said.Contains("reset 19 times", StringComparison.Ordinal));
    }

    // From 17:30 to 08:05 is 14 h 35 min.
    [Fact]
    public void A_clock_without_a_date_that_falls_by_hours_goes_on_the_next_day()
    {
        PackLogReading read = Read("time", new[] { "08:00", "17:00", "08:05" }.SelectMany((from, ride) => Enumerable.Range(0, 181).Select(i => (
            TimeSpan.Parse(from, CultureInfo.InvariantCulture).Add(TimeSpan.FromSeconds(10 * i)).ToString("hh\\:mm\\:ss", CultureInfo.InvariantCulture), 3.9 - (0.1 * ride)))));

        Assert.Equal(14 * 3600 + (35 * 60), read.Log.TimeS[362] - read.Log.TimeS[361], tolerance: 1e-6);
        Assert.Equal(3.7, read.Log.GroupV[0][362], tolerance: 1e-9);
    }

    [Theory]
    [InlineData(20, "no other reading")]
    [InlineData(8, "follow one another")]
    public void Later_stamps_tell_that_the_month_stands_first(int lastDay, string why)
    {
        DateTime start = new(2026, 3, 4, 0, 0, 0, DateTimeKind.Unspecified);
        PackLogReading read = Read("time", Enumerable.Range(0, ((lastDay - 4) * 480) + 1).Select(i => (start.AddMinutes(3 * i).ToString("M/d/yyyy H:mm:ss", CultureInfo.InvariantCulture), 3.9)));

        Assert.Equal((lastDay - 4) * 86400.0, read.Log.TimeS[^1], tolerance: 1e-6);
        Assert.Equal(180, read.Log.TimeS[481] - read.Log.TimeS[480], tolerance: 1e-6);
        Assert.Contains(read.Understood, said => said.Contains(why, StringComparison.Ordinal));
    }

    [Fact]
    public void Stamps_of_one_day_that_can_be_read_in_two_ways_are_said_to_be() =>
        Assert.Contains(Read("time", Enumerable.Range(0, 100).Select(i => ($"3/4/2026 10:{i / 60:00}:{i % 60:00}", 3.9))).Understood, said => said.Contains("in either order", StringComparison.Ordinal));

    private static string Text(int figure) => figure.ToString(CultureInfo.InvariantCulture);

    private static PackLogReading Read(string heading, IEnumerable<(string Time, double V)> rows)
    {
        StringBuilder text = new($"{heading},current (A),cell 1 (V),cell 2 (V)\n");
        foreach ((string time, double volts) in rows)
            text.Append(CultureInfo.InvariantCulture, $"{time},{5.0:0.0},{volts:0.000},{volts - 0.01:0.000}\n");
        return LogText.Pack(text.ToString());
    }
}
