using System.Globalization;
using System.Text;
using PackPlanner.Formats.Logs;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Tests.Formats.Logs;

/// <summary>Spellings that loggers have, each as a small invented log with its expected reading.</summary>
public class LogSpellingTests
{
    private static readonly double[] Load = [0, 12.5, 30, 6, 0];

    [Theory]
    [InlineData("T1 (0.1 K)", 2952, 22.05)]
    [InlineData("ntc1", 2952, 22.05)]
    [InlineData("T1 (°F)", 71.6, 22)]
    [InlineData("temp F", 71.6, 22)]
    [InlineData("Temp. Zellen", 22, 22)]
    [InlineData("T1 (cdegC)", 2200, 22)]
    public void Temperatures_come_out_in_degrees_Celsius(string heading, double written, double degC)
    {
        PackLogReading read = WithColumn(heading, written);

        Assert.Equal(degC, read.Log.TemperatureDegC[0][5], 1e-9);
    }

    [Theory]
    [InlineData("SoC", 0.81, 0.81)]
    [InlineData("packSoC", 81, 0.81)]
    [InlineData("SOC", 810, 0.81)]
    [InlineData("soc (%)", 81, 0.81)]
    public void A_state_of_charge_is_a_share_whatever_its_scale(string heading, double written, double share)
    {
        PackLogReading read = WithColumn(heading, written);

        Assert.Equal(share, read.Log.ShownStateOfCharge![5], 1e-9);
    }

    [Theory]
    [InlineData("i_10ma", 100)]
    [InlineData("current (10 mA)", 100)]
    [InlineData("I [0.1A]", 10)]
    [InlineData("Bat A (dis)", 1)]
    public void A_current_comes_out_in_amperes(string heading, double written)
    {
        PackLogReading read = LogText.Pack(Log($"time (s),{heading},cell 1 (V),cell 2 (V)", i => $"{i},{F(Load[i / 4 % 5] * written)},{V(i, 1)},{V(i, 2)}"));

        Assert.Equal(Enumerable.Range(0, 60).Select(i => Load[i / 4 % 5]), read.Log.CurrentA!);
        Assert.Equal("discharge-positive", read.Shape.CurrentSign);
    }

    [Fact]
    public void Cells_in_tens_of_millivolts_keep_their_numbers()
    {
        PackLogReading read = LogText.Pack(Log("time (s),current (A),cell1_10mv,cell2_10mv,cell3_10mv", i => $"{i},{A(i)},370,371,372"));

        Assert.Equal([3.70, 3.71, 3.72], read.Log.GroupV.Select(group => group[0]));
    }

    [Fact]
    public void A_day_with_a_clock_of_half_days_beside_it_is_a_log()
    {
        byte[] text = Encoding.UTF8.GetBytes(Log("date,time,volts,amps,v1,v2", i => $"5/21/2024,{new DateTime(2024, 5, 21, 11, 59, 40).AddSeconds(i).ToString("h:mm:ss tt", CultureInfo.InvariantCulture)},7.4,{A(i)},{V(i, 1)},{V(i, 2)}"));

        Assert.True(PackPlanner.Formats.FileLooks.Look("-", new ReadOptions { StandardInput = () => new MemoryStream(text) }).Is(out PackPlanner.Formats.FileLook? look, out _));
        Assert.Equal(("pack-log", 2), (look.Shape.Kind, look.Shape.Groups));
        Assert.Equal(59, LogText.Pack(text).Log.TimeS[^1]);
    }

    [Fact]
    public void Chinese_headings_in_GB_18030_are_read()
    {
        string text = Log("时间,总电压(V),电流(A),单体电压1(mV),单体电压2(mV),温度1(℃)", i => $"2024/5/1 10:00:{i:00},7.4,{A(i)},{F(double.Parse(V(i, 1), CultureInfo.InvariantCulture) * 1000)},3700,22");

        PackLogReading read = LogText.Pack(CodePagesEncodingProvider.Instance.GetEncoding(54936)!.GetBytes(text));

        Assert.Equal(("GB 18030", 2, 22.0), (read.Shape.Encoding, read.Log.Groups, read.Log.TemperatureDegC[0][0]));
        Assert.Equal(3.7, read.Log.GroupV[1][0]);
    }

    // 03:00 summer time is 02:00 winter time on 27 October 2024: the stamps fall back by an hour and the log goes on.
    [Fact]
    public void The_end_of_summer_time_leaves_neither_gap_nor_disorder()
    {
        PackLogReading read = LogText.Pack(Log("time,current (A),cell 1 (V),cell 2 (V)", i =>
            $"{new DateTime(2024, 10, 27, 2, 59, 30).AddSeconds(i - (i < 30 ? 0 : 3600)):yyyy-MM-dd HH:mm:ss},{A(i)},{V(i, 1)},{V(i, 2)}"));

        Assert.Equal(Enumerable.Range(0, 60).Select(i => (double)i), read.Log.TimeS);
        Assert.Empty(read.Shape.Gaps);
        Assert.Contains(read.Understood, sentence => sentence.Contains("summer time", StringComparison.Ordinal));
    }

    [Fact]
    public void A_clock_that_fell_to_2000_goes_on_by_the_usual_step()
    {
        PackLogReading read = LogText.Pack(Log("time,current (A),cell 1 (V),cell 2 (V)", i =>
            $"{(i < 20 ? new DateTime(2024, 4, 7, 8, 0, 0) : new DateTime(2000, 1, 1, 0, 0, 0).AddSeconds(-20)).AddSeconds(i):yyyy-MM-dd HH:mm:ss},{A(i)},{V(i, 1)},{V(i, 2)}"));

        Assert.Equal(Enumerable.Range(0, 60).Select(i => (double)i), read.Log.TimeS);
        Assert.Contains(read.Understood, sentence => sentence.Contains("reset", StringComparison.Ordinal));
    }

    [Fact]
    public void One_sample_of_huge_current_is_set_aside_with_its_line()
    {
        PackLogReading read = LogText.Pack(Log("time (s),current (A),cell 1 (V),cell 2 (V)", i => $"{i},{(i == 33 ? "5120" : A(i))},{V(i, 1)},{V(i, 2)}"));

        Assert.True(double.IsNaN(read.Log.CurrentA![33]));
        Assert.Equal(("current (A)", 1, 35), (read.Account.Samples.Single().Column, read.Account.Samples[0].Count, read.Account.Samples[0].FirstLine));
    }

    // Charge and discharge of half an hour each, both written above nought.
    [Fact]
    public void A_current_without_sign_is_known_by_volts_that_rise_and_fall_while_it_flows()
    {
        StringBuilder text = new("time (s),current (A),cell 1 (V),cell 2 (V)\n");
        for (int i = 0; i < 720; i++)
        {
            double flow = i is < 20 or > 340 and < 380 or > 700 ? 0 : 10;
            bool charge = i > 360;
            double fraction = charge ? 0.3 + ((i - 380) / 640.0) : 0.8 - ((i - 20) / 640.0);
            double volts = 3.3 + (0.8 * Math.Clamp(fraction, 0.3, 0.8)) + (charge ? 0.02 : -0.02) * flow / 10;
            text.Append(CultureInfo.InvariantCulture, $"{i * 5},{flow},{volts:0.0000},{volts + 0.004:0.0000}\n");
        }

        PackLogReading read = LogText.Pack(text.ToString());

        Assert.True(read.Log.CurrentIsUnsigned);
        Assert.Equal("unsigned", read.Shape.CurrentSign);
    }

    [Fact]
    public void A_long_log_of_changes_keeps_what_did_not_change()
    {
        string text = "t;name;val\n0;I;0\n0;U1;3.700\n0;U2;3.710\n2;I;10\n2;U1;3.670\n3;U2;3.680\n5;I;0\n5;U1;3.699\n6;U2;3.709\n8;I;10\n8;U1;3.669\n";

        PackLogReading read = LogText.Pack(text);

        Assert.Equal([0.0, 2, 3, 5, 6, 8], read.Log.TimeS);
        Assert.Equal([3.710, 3.710, 3.680, 3.680, 3.709, 3.709], read.Log.GroupV[1]);
        Assert.Equal([0.0, 10, 10, 0, 0, 10], read.Log.CurrentA!);
        Assert.Contains(read.Understood, sentence => sentence.Contains("changes only", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("charge (0.1 As)", 36000)]
    [InlineData("charge (das)", 36000)]
    [InlineData("charge (mAh)", 1000)]
    public void A_counter_in_any_unit_is_ampere_hours(string heading, double written)
    {
        byte[] text = Encoding.UTF8.GetBytes("time (s),current (A),voltage (V)," + heading.Replace("charge", "capacity", StringComparison.Ordinal) + "\n"
            + string.Concat(Enumerable.Range(0, 61).Select(i => $"{i * 60},1.5,{F(4.1 - (0.01 * i))},{F(Math.Round(1.5 * i / 60 * written, 3))}\n")));

        Assert.True(TesterLogs.Read("-", new ReadOptions { StandardInput = () => new MemoryStream(text) }).Is(out TesterLogReading? read, out _));
        Assert.Equal(1.5, read.Curve.CounterAh![60], 1e-9);
    }

    private static PackLogReading WithColumn(string heading, double written) =>
        LogText.Pack(Log($"time (s),current (A),cell 1 (V),cell 2 (V),{heading}", i => $"{i},{A(i)},{V(i, 1)},{V(i, 2)},{F(written)}"));

    private static string Log(string heading, Func<int, string> row) => heading + "\n" + string.Concat(Enumerable.Range(0, 60).Select(i => row(i) + "\n"));

    private static string A(int i) => F(Load[i / 4 % 5]);

    private static string V(int i, int group) => F(Math.Round(3.82 - (0.003 * Load[i / 4 % 5]) + (0.004 * group) - (0.0005 * i), 4));

    private static string F(double figure) => figure.ToString(CultureInfo.InvariantCulture);
}
