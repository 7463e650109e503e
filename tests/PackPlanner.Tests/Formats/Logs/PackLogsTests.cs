using System.Globalization;
using System.Text;
using PackPlanner.Formats;
using PackPlanner.Formats.Logs;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Tests.Formats.Logs;

public class PackLogsTests
{
    // Forty rows, one a second: 10 A of discharge every other five seconds lowers each of three cells by 30 mV.
    private static readonly (double TimeS, double CurrentA, double[] Volts)[] Ride =
    [
        .. Enumerable.Range(0, 40).Select(i => (i * 1.0, i / 5 % 2 == 1 ? 10.0 : 0.0,
            new[] { 3.700, 3.690, 3.680 }.Select(volts => Math.Round(volts - (i / 5 % 2 == 1 ? 0.030 : 0) - (i * 0.001), 3)).ToArray())),
    ];

    public static TheoryData<string, string> Spellings => new()
    {
        { "plain", Wide("time_s,current_A,cell1_V,cell2_V,cell3_V", ",", row => $"{row.TimeS},{row.CurrentA},{F(row.Volts[0])},{F(row.Volts[1])},{F(row.Volts[2])}") },
        { "millivolts and milliamperes", Wide("Time (s),Current (mA),C1 (mV),C2 (mV),C3 (mV)", ",", row => $"{row.TimeS},{row.CurrentA * 1000},{F(row.Volts[0] * 1000)},{F(row.Volts[1] * 1000)},{F(row.Volts[2] * 1000)}") },
        { "tenths of millivolts without unit", Wide("time,current,V1,V2,V3", ",", row => $"{row.TimeS},{F(row.CurrentA)}.0,{F(row.Volts[0] * 10000)},{F(row.Volts[1] * 10000)},{F(row.Volts[2] * 10000)}") },
        { "milliseconds", Wide("time_ms;current_A;cell_0;cell_1;cell_2", ";", row => $"{row.TimeS * 1000};{row.CurrentA};{F(row.Volts[0])};{F(row.Volts[1])};{F(row.Volts[2])}") },
        { "epoch", Wide("timestamp,current_A,Cell01,Cell02,Cell03", ",", row => $"{1712471767 + row.TimeS},{row.CurrentA},{F(row.Volts[0])},{F(row.Volts[1])},{F(row.Volts[2])}") },
        { "epoch in milliseconds", Wide("timestamp,current_A,Cell01,Cell02,Cell03", ",", row => $"{1712471767000 + (row.TimeS * 1000)},{row.CurrentA},{F(row.Volts[0])},{F(row.Volts[1])},{F(row.Volts[2])}") },
        { "clock over midnight", Wide("Uhrzeit;Strom [A];Zelle 1 [V];Zelle 2 [V];Zelle 3 [V]", ";", row => $"{Stamp(row, "HH:mm:ss")};{C(row.CurrentA)};{C(row.Volts[0])};{C(row.Volts[1])};{C(row.Volts[2])}") },
        { "ISO stamps", Wide("datetime,current_A,cell1,cell2,cell3", ",", row => $"{Stamp(row, "yyyy-MM-ddTHH:mm:ss")}Z,{row.CurrentA},{F(row.Volts[0])},{F(row.Volts[1])},{F(row.Volts[2])}") },
        { "day first", Wide("Datum Zeit;Strom (A);Zelle 1;Zelle 2;Zelle 3", ";", row => $"{Stamp(row, "dd.MM.yyyy HH:mm:ss")};{C(row.CurrentA)};{C(row.Volts[0])};{C(row.Volts[1])};{C(row.Volts[2])}") },
        { "date and clock apart", Wide("date,time,current_A,cell1,cell2,cell3", ",", row => $"{Stamp(row, "yyyy-MM-dd")},{Stamp(row, "HH:mm:ss")},{row.CurrentA},{F(row.Volts[0])},{F(row.Volts[1])},{F(row.Volts[2])}") },
        { "charge positive, columns in another order, room for more cells", Wide("cell3_V,cell1_V,cell2_V,cell4_V,cell5_V,I (A),t (s)", ",", row => $"{F(row.Volts[2])},{F(row.Volts[0])},{F(row.Volts[1])},0,0,{-row.CurrentA},{row.TimeS}") },
        { "units in a second row", Wide("Time,Current,U01,U02,U03\ns,A,V,V,V", ",", row => $"{row.TimeS},{row.CurrentA},{F(row.Volts[0])},{F(row.Volts[1])},{F(row.Volts[2])}") },
        { "long by number", Long("time_s,cell,voltage_V,current_A", row => [.. Enumerable.Range(1, 3).Select(n => $"{row.TimeS},{n},{F(row.Volts[n - 1])},{row.CurrentA}")]) },
        { "long by name", Long("time,name,value", row => [$"{row.TimeS},pack_current,{row.CurrentA}", .. Enumerable.Range(1, 3).Select(n => $"{row.TimeS},cell_{n}_voltage,{F(row.Volts[n - 1])}")]) },
        { "second heading and blank rows", Wide("time_s,current_A,cell1_V,cell2_V,cell3_V", ",", row => (row.TimeS == 20 ? "time_s,current_A,cell1_V,cell2_V,cell3_V\n,,,,\n" : "") + $"{row.TimeS},{row.CurrentA},{F(row.Volts[0])},{F(row.Volts[1])},{F(row.Volts[2])}") },
        { "newest row first", Wide("time_s,current_A,cell1_V,cell2_V,cell3_V", ",", row => $"{39 - row.TimeS},{Ride[39 - (int)row.TimeS].CurrentA},{F(Ride[39 - (int)row.TimeS].Volts[0])},{F(Ride[39 - (int)row.TimeS].Volts[1])},{F(Ride[39 - (int)row.TimeS].Volts[2])}") },
    };

    [Theory]
    [MemberData(nameof(Spellings))]
    public void The_same_ride_is_read_from_any_spelling(string spelling, string text)
    {
        PackLogReading reading = LogText.Pack(text);

        Assert.True(reading.Log.Groups == 3, spelling);
        Assert.Equal(Ride.Select(row => row.TimeS), reading.Log.TimeS);
        Assert.Equal(Ride.Select(row => row.CurrentA), reading.Log.CurrentA!);
        for (int group = 0; group < 3; group++)
            for (int i = 0; i < Ride.Length; i++)
                Assert.Equal(Ride[i].Volts[group], reading.Log.GroupV[group][i]);
    }

    [Theory]
    [InlineData("0.000")]
    [InlineData("65.535")]
    [InlineData("65535")]
    [InlineData("7.2")]
    public void A_filler_is_set_aside_with_its_line_and_its_row_stays(string filler)
    {
        string text = Wide("time_s,current_A,cell1_V,cell2_V,cell3_V", ",", row => $"{row.TimeS},{row.CurrentA},{F(row.Volts[0])},{(row.TimeS == 7 ? filler : F(row.Volts[1]))},{F(row.Volts[2])}");

        PackLogReading reading = LogText.Pack(text);

        Assert.Equal((40, 40), (reading.Account.RowsRead, reading.Account.RowsUsed));
        Assert.Equal(("cell2_V", 1, 9), (reading.Account.Samples[0].Column, reading.Account.Samples.Sum(lost => lost.Count), reading.Account.Samples[0].FirstLine));
        Assert.True(double.IsNaN(reading.Log.GroupV[1][7]));
    }

    [Fact]
    public void A_cell_that_dies_step_by_step_is_no_filler()
    {
        string text = "time_s,current_A,cell1_V,cell2_V\n" + string.Concat(Enumerable.Range(0, 30).Select(i => $"{i},5,{F(Math.Round(3.4 - (i * 0.1), 3))},3.6\n"));

        PackLogReading reading = LogText.Pack(text);

        Assert.Empty(reading.Account.Samples);
        Assert.Equal(0.5, reading.Log.GroupV[0][29], 1e-9);
    }

    [Fact]
    public void A_clock_set_back_to_1970_goes_on_by_the_usual_step_and_is_said()
    {
        string text = "time,current_A,cell1_V,cell2_V\n" + string.Concat(Enumerable.Range(0, 30).Select(i =>
            $"{(i < 15 ? new DateTime(2024, 4, 7, 8, 0, i) : new DateTime(1970, 1, 1, 0, 0, i - 15)):yyyy-MM-dd HH:mm:ss},5,3.6,3.7\n"));

        PackLogReading reading = LogText.Pack(text);

        Assert.Equal(Enumerable.Range(0, 30).Select(i => (double)i), reading.Log.TimeS);
        Assert.Contains(reading.Understood, sentence => sentence.Contains("reset", StringComparison.Ordinal));
    }

    [Fact]
    public void Summer_time_and_gaps_are_told_apart()
    {
        string text = "time,current_A,cell1_V,cell2_V\n" + string.Concat(Enumerable.Range(0, 30).Select(i =>
            $"{new DateTime(2024, 3, 31, 1, 59, 50).AddSeconds(i + (i < 10 ? 0 : 3600) + (i < 20 ? 0 : 500)):yyyy-MM-dd HH:mm:ss},5,3.6,3.7\n"));

        PackLogReading reading = LogText.Pack(text);

        Assert.Equal((19.0, 501.0), (Assert.Single(reading.Shape.Gaps).AtTimeS, reading.Shape.Gaps[0].Seconds));
    }

    [Fact]
    public void Nul_bytes_Windows_1252_and_UTF_16_change_nothing()
    {
        string text = Wide("Zeit [s];Strom [A];Zelle 1 [V];Zelle 2 [V];Temperatur Gehäuse [°C]", ";", row => $"{C(row.TimeS)};{C(row.CurrentA)};{C(row.Volts[0])};{C(row.Volts[1])};21,5");
        byte[] western = CodePagesEncodingProvider.Instance.GetEncoding(1252)!.GetBytes(text);
        byte[] torn = [.. western[..800], .. new byte[64], .. western[800..]];

        foreach (byte[] bytes in (byte[][])[Encoding.UTF8.GetBytes(text), western, torn, [.. Encoding.Unicode.GetPreamble(), .. Encoding.Unicode.GetBytes(text)], Encoding.Unicode.GetBytes(text)])
        {
            PackLogReading reading = LogText.Pack(bytes);
            Assert.Equal(Ride.Select(row => row.Volts[1]), reading.Log.GroupV[1]);
            Assert.Equal(21.5, reading.Log.TemperatureDegC[0][0]);
        }
    }

    [Fact]
    public void A_series_count_that_the_log_contradicts_is_refused()
    {
        byte[] log = Encoding.UTF8.GetBytes(Spellings.First().Data.Item2);

        Assert.False(LogText.Try(log, new ReadOptions { Series = 4 }).Is(out _, out Refusal? why));
        Assert.Equal((ExitCodes.Input, "series-differs"), (why!.ExitCode, why.Code));
    }

    private static string Wide(string heading, string separator, Func<(double TimeS, double CurrentA, double[] Volts), string> line) =>
        heading + "\n" + string.Concat(Ride.Select(row => line(row) + "\n")).Replace("|", separator, StringComparison.Ordinal);

    private static string Long(string heading, Func<(double TimeS, double CurrentA, double[] Volts), string[]> lines) =>
        heading + "\n" + string.Concat(Ride.SelectMany(lines).Select(line => line + "\n"));

    private static string F(double figure) => Math.Round(figure, 6).ToString(CultureInfo.InvariantCulture);

    private static string C(double figure) => figure.ToString("0.000", CultureInfo.InvariantCulture).Replace('.', ',');

    private static string Stamp((double TimeS, double CurrentA, double[] Volts) row, string format) =>
        new DateTime(2024, 4, 17, 23, 59, 50).AddSeconds(row.TimeS).ToString(format, CultureInfo.InvariantCulture);
}
