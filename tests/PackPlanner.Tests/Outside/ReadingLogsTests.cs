using System.Globalization;
using PackPlanner.Formats;
using PackPlanner.Formats.Logs;
using PackPlanner.Formats.Tables;
using PackPlanner.Tests.House;

namespace PackPlanner.Tests.Outside;

public class ReadingLogsTests
{
    // Source: [Nie2025]. Rows, groups and fillers were counted in the authors' files apart from this program.
    [Theory]
    [InlineData("car2_rows7500-9999.csv.gz", 88, 2500, 211, 170, 82)]
    [InlineData("car1_rows16665-18664.csv.gz", 96, 2000, 34, 1628, 10)]
    public void A_car_log_loses_exactly_its_fillers_and_still_names_the_lowest_cell(
        string file, int groups, int rows, int fillers, int firstLine, int lowest)
    {
        Assert.True(PackLogs.Read(Repository.Data("ev-field", file), new ReadOptions()).Is(out PackLogReading? reading, out Refusal? why), why?.ToString());

        Assert.Equal((groups, rows), (reading.Log.Groups, reading.Log.Rows));
        Assert.Equal((rows, rows), (reading.Account.RowsRead, reading.Account.RowsUsed));
        Assert.Equal(fillers, reading.Account.Samples.Sum(lost => lost.Count));
        Assert.Equal(firstLine, reading.Account.Samples.Min(lost => lost.FirstLine));
        Assert.Equal("discharge-positive", reading.Shape.CurrentSign);
        double[] means = [.. reading.Log.GroupV.Select(volts => volts.Where(double.IsFinite).Average())];
        Assert.Equal(lowest, Array.IndexOf(means, means.Min()) + 1);
    }

    // Source: [PulseBat]. Mean current times duration against the tester's own charge; 14.0409 Ah is the tester's figure.
    [Fact]
    public void A_step_table_with_Chinese_headings_gives_the_testers_own_charge()
    {
        Assert.True(TesterLogs.Read(Repository.Data("pulsebat", "steps_LMO_101.csv"), new ReadOptions()).Is(out TesterLogReading? reading, out Refusal? why), why?.ToString());

        Assert.True(reading.IsStepTable);
        int at = Array.FindIndex(reading.Curve.CounterAh!, ah => Math.Abs(ah - 14.0409) < 1e-9);
        Assert.True(at > 0);
        double amperes = (reading.Curve.CurrentA[at - 1] + reading.Curve.CurrentA[at]) / 2;
        Assert.Equal(25.0011, amperes, 4);
        Assert.Equal(2021.9, reading.Curve.TimeS[at] - reading.Curve.TimeS[at - 1], 1e-6);
        Assert.Equal(2.6998, reading.Curve.Volts[at]);
    }

    // Source: [ArtsLab30Q]. The authors' capacity of cycle 1 is 2.86698 Ah; the file has no heading.
    [Fact]
    public void A_log_without_heading_gives_the_published_charge()
    {
        Assert.True(TesterLogs.Read(Repository.Data("samsung-30q", "discharge_1_1.lvm"), new ReadOptions()).Is(out TesterLogReading? reading, out Refusal? why), why?.ToString());

        double ah = 0;
        for (int i = 1; i < reading.Curve.TimeS.Length; i++)
            ah += (reading.Curve.CurrentA[i] + reading.Curve.CurrentA[i - 1]) / 2 * (reading.Curve.TimeS[i] - reading.Curve.TimeS[i - 1]) / 3600;
        Assert.Equal(3743, reading.Account.RowsUsed);
        Assert.Equal(2.86698, ah, 2.86698 * 0.0002);
    }

    // Source: the framework's own correctly rounded double.Parse.
    [Fact]
    public void Figures_equal_the_frameworks_own_parsing_bit_for_bit()
    {
        Random chance = new(5);
        string[] written = [.. Enumerable.Range(0, 5000).Select(_ => (2 + (2 * chance.NextDouble())).ToString("R", CultureInfo.InvariantCulture))];
        string text = "time_s,current_A,cell1_V,cell2_V\n" + string.Concat(written.Select((volts, i) => $"{i},1,{volts},3.5\n"));

        PackLogReading reading = Formats.Logs.LogText.Pack(text);

        for (int i = 0; i < written.Length; i++)
            Assert.Equal(BitConverter.DoubleToInt64Bits(double.Parse(written[i], CultureInfo.InvariantCulture)), BitConverter.DoubleToInt64Bits(reading.Log.GroupV[0][i]));
    }
}
