using System.Globalization;
using System.Text;
using PackPlanner.Formats.Logs;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Tests.Formats.Logs;

/// <summary>A time without a unit is told by charge where the log can tell, else assumed and said.</summary>
public class ClockUnitByChargeTests
{
    // Two hours at 5 A of a pack of 10 Ah: 4.1 V falls to 3.2 V. Written in minutes with a row each 3 s, steps of 0.05 look like seconds.
    [Theory]
    [InlineData(60.0, "min")]
    [InlineData(1.0, "s")]
    [InlineData(3600.0, "h")]
    public void The_rated_capacity_and_the_fall_of_the_volts_tell_the_unit(double unitS, string name)
    {
        PackLogReading read = LogText.Pack(Discharge(unitS, counter: false), new ReadOptions { RatedAh = 10 });

        Assert.Equal(7200, read.Log.TimeS[^1], tolerance: 0.01);
        Assert.Contains(read.Understood, said => said.Contains($"are read as {name}", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(60.0, "min")]
    [InlineData(1.0, "s")]
    [InlineData(3600.0, "h")]
    [InlineData(0.001, "ms")]
    public void A_counter_of_the_log_tells_the_unit(double unitS, string name)
    {
        PackLogReading read = LogText.Pack(Discharge(unitS, counter: true));

        Assert.Equal(7200, read.Log.TimeS[^1], tolerance: 0.01);
        Assert.Contains(read.Understood, said => said.Contains($"are read as {name}", StringComparison.Ordinal));
    }

    // 20 rows a second for a minute: volts hardly move, and no minutes are made of it.
    [Fact]
    public void A_fast_log_stays_in_seconds_and_says_how_to_name_another_unit()
    {
        StringBuilder text = new("time,current (A),cell 1 (V),cell 2 (V)\n");
        for (int i = 0; i < 1200; i++)
            text.Append(CultureInfo.InvariantCulture, $"{i * 0.05:0.00},{(i % 200 < 100 ? 20 : 0)},{(i % 200 < 100 ? 3.60 : 3.90):0.00},{(i % 200 < 100 ? 3.59 : 3.89):0.00}\n");

        PackLogReading read = LogText.Pack(text.ToString(), new ReadOptions { RatedAh = 10 });

        Assert.Equal(59.95, read.Log.TimeS[^1], tolerance: 0.001);
        Assert.Contains(read.Understood, said => said.Contains("--column \"time=time:min\"", StringComparison.Ordinal));
    }

    // 50 rows a second look like minutes; at 20 A these would be 100 Ah out of 10.
    [Fact]
    public void What_no_pack_holds_did_not_flow()
    {
        StringBuilder text = new("time,current (A),cell 1 (V),cell 2 (V)\n");
        for (int i = 0; i < 15_000; i++)
            text.Append(CultureInfo.InvariantCulture, $"{i * 0.02:0.00},20.5,{3.6 - (i * 2e-6):0.0000},{3.59 - (i * 2e-6):0.0000}\n");

        PackLogReading read = LogText.Pack(text.ToString(), new ReadOptions { RatedAh = 10 });

        Assert.Equal(299.98, read.Log.TimeS[^1], tolerance: 0.001);
    }

    [Fact]
    public void A_unit_in_the_heading_is_not_overruled() =>
        Assert.Equal(120, LogText.Pack(Discharge(60, counter: true).Replace("time,", "time (s),", StringComparison.Ordinal)).Log.TimeS[^1], tolerance: 0.01);

    private static string Discharge(double unitS, bool counter)
    {
        StringBuilder text = new($"time,current (A),cell 1 (V),cell 2 (V){(counter ? ",capacity (Ah)" : "")}\n");
        for (int i = 0; i <= 2400; i++)
        {
            double seconds = 3.0 * i, volts = 4.1 - (0.9 * seconds / 7200);
            text.Append(CultureInfo.InvariantCulture, $"{seconds / unitS:0.######},{(i % 100 < 10 ? 0 : 5.5)},{volts + (i % 100 < 10 ? 0.05 : 0):0.000},{volts - (i % 100 < 10 ? -0.04 : 0.01):0.000}");
            text.Append(counter ? string.Create(CultureInfo.InvariantCulture, $",{5.0 * seconds / 3600:0.0000}\n") : "\n");
        }

        return text.ToString();
    }
}
