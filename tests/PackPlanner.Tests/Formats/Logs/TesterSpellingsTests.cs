using System.Globalization;
using System.Text;
using PackPlanner.Formats;
using PackPlanner.Formats.Logs;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Tests.Formats.Logs;

/// <summary>An invented discharge of 2.5 A for one hour as testers write it: volts, amperes, time and a counter, each with or without its unit.</summary>
public class TesterSpellingsTests
{
    private static readonly (double TimeS, double CurrentA, double Volts)[] Test =
        [.. Enumerable.Range(0, 380).Select(i => (i * 10.0, i is >= 6 and < 366 ? 2.5 : 0.0, Math.Round(4.18 - (Math.Clamp(i - 6, 0, 360) / 300.0) - (i is >= 6 and < 366 ? 0.08 : 0), 4)))];

    public static TheoryData<string, string> Spellings => new()
    {
        { "h,V,A", "{3:0.000000},{2},{1}" },
        { "time (s),current (uA),voltage (V)", "{0},{4},{2}" },
        { "time (s),set current (A),measured current (A),voltage (V)", "{0},2.6,{1},{2}" },
        { "time (s),current (A),voltage (V),capacity", "{0},{1},{2},{5}" },
        { "Elapsed (d hh:mm:ss),U [V],I [A]", "0d {6},{2},{1}" },
    };

    [Theory]
    [MemberData(nameof(Spellings))]
    public void A_test_is_the_same_in_every_spelling(string heading, string row)
    {
        StringBuilder text = new(heading + "\n");
        double mah = 0;
        foreach ((double timeS, double currentA, double volts) in Test)
        {
            mah += currentA * 10 / 3.6;
            text.AppendFormat(CultureInfo.InvariantCulture, row, timeS, currentA, volts, timeS / 3600, currentA * 1e6, mah, TimeSpan.FromSeconds(timeS).ToString("hh\\:mm\\:ss", CultureInfo.InvariantCulture)).Append('\n');
        }

        byte[] bytes = Encoding.UTF8.GetBytes(text.ToString());
        Assert.True(TesterLogs.Read("-", new ReadOptions { StandardInput = () => new MemoryStream(bytes) }).Is(out TesterLogReading? read, out Refusal? why), why?.ToString());

        Assert.Equal(Test[^1].TimeS, read.Curve.TimeS[^1], 0.01);
        Assert.Equal(Test.Select(one => one.CurrentA), read.Curve.CurrentA, (one, other) => Math.Abs(one - other) < 1e-9);
        Assert.Equal(Test.Select(one => one.Volts), read.Curve.Volts);
        if (read.Curve.CounterAh is { } counter)
            Assert.Equal(2.5, counter[^1], 0.001);
    }

    // The points of a day make no decimal comma: 3.681 V stay volts and are not read as 3681.
    [Theory]
    [InlineData("Date,Time,Voltage (V),Current (A)", "23.05.2024,10:{0:00}:00,{1},1.250")]
    [InlineData("Date;Time;Voltage (V);Current (A)", "2024.05.23;10:{0:00}:00;{1};1.250")]
    public void A_day_with_points_does_not_make_the_decimal_mark_a_comma(string heading, string row)
    {
        string text = heading + "\n" + string.Concat(Enumerable.Range(0, 40).Select(i => string.Format(CultureInfo.InvariantCulture, row, i, (3.681 - (0.001 * i)).ToString("0.000", CultureInfo.InvariantCulture)) + "\n"));

        Assert.True(TesterLogs.Read("-", new ReadOptions { StandardInput = () => new MemoryStream(Encoding.UTF8.GetBytes(text)) }).Is(out TesterLogReading? read, out Refusal? why), why?.ToString());

        Assert.Equal("point", read.Shape.DecimalMark);
        Assert.Equal(3.681, read.Curve.Volts[0], 1e-12);
        Assert.Equal(3.642, read.Curve.Volts[39], 1e-12);
        Assert.Equal(1.25, Math.Abs(read.Curve.CurrentA[0]), 1e-12);
    }
}
