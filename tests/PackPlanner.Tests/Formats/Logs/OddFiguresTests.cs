using System.Globalization;
using System.Text;
using PackPlanner.Core.Bench;
using PackPlanner.Formats;
using PackPlanner.Formats.Logs;
using PackPlanner.Formats.Tables;
using PackPlanner.Tests.Formats.JobFiles;

namespace PackPlanner.Tests.Formats.Logs;

/// <summary>Figures of logs whose unit, counter or second column is told only by what stands beside them.</summary>
public class OddFiguresTests
{
    // By hand: 2.5 A for an hour; the tester counted 2.45 Ah, or nothing.
    [Theory]
    [InlineData(";Capacity (Ah)", ";2.45", 2.45)]
    [InlineData(";Capacity", ";2450 mAh", 2.45)]
    [InlineData("", "", 2.5)]
    public void A_step_has_the_charge_of_its_one_counter_or_else_of_its_current(string heading, string figure, double ah)
    {
        TestStep step = Steps($"Step;Step type;Start voltage (V);End voltage (V);Current (A);Duration{heading}\n1;CC Charge;3.00;4.20;2.5;01:00:00{figure}\n2;CC Discharge;4.18;2.50;-2.5;01:00:00{figure}\n")[^1];

        Assert.Equal((CurrentDirection.Discharge, 3600.0), (step.Direction, step.ToTimeS - step.FromTimeS));
        Assert.Equal(ah, step.ChargeAh, tolerance: 1e-9);
    }

    [Theory]
    [InlineData("Duration (ms)", "360000", 360)]
    [InlineData("Duration (s)", "432000", 432_000)]
    [InlineData("Duration", "01:00:00", 3600)]
    public void A_duration_of_six_digits_is_a_figure(string heading, string text, double seconds)
    {
        TestStep step = Steps($"Step;Step type;Start voltage (V);End voltage (V);Current (A);{heading};Discharge capacity (Ah)\n1;CC Discharge;4.18;2.50;2.5;{text};2.4\n")[0];

        Assert.Equal(seconds, step.ToTimeS - step.FromTimeS, tolerance: 1e-6);
    }

    // Of a charge and a discharge column the idle one is blank.
    [Fact]
    public void A_blank_in_the_idle_of_two_current_columns_is_no_current()
    {
        StringBuilder text = new("time (s),discharge current (A),charge current (A),cell 1 (V),cell 2 (V)\n");
        for (int i = 0; i < 200; i++)
            text.Append(CultureInfo.InvariantCulture, $"{i},{(i < 100 ? "12.4" : "")},{(i < 100 ? "" : "3.1")},{(i < 100 ? 3.6 : 3.7):0.000},{(i < 100 ? 3.6 : 3.7):0.000}\n");

        PackLogReading read = LogText.Pack(text.ToString());

        Assert.Equal((12.4, -3.1), (read.Log.CurrentA![50], read.Log.CurrentA[150]));
    }

    [Theory]
    [InlineData("2350", 23.5)]
    [InlineData("345", 34.5)]
    [InlineData("2951", 21.95)]
    [InlineData("295.15", 22.0)]
    [InlineData("23", 23)]
    public void Temperatures_without_a_unit_are_read_as_a_pack_can_have_them(string figure, double degC)
    {
        StringBuilder text = new("time (s),current (A),cell 1 (V),cell 2 (V),temperature\n");
        for (int i = 0; i < 100; i++)
            text.Append(CultureInfo.InvariantCulture, $"{i},5,3.6,3.6,{figure}\n");

        Assert.Equal(degC, LogText.Pack(text.ToString()).Log.TemperatureDegC[0][50], tolerance: 1e-6);
    }

    // 255 is a filler of a byte, and 25.5 °C among tenths.
    [Theory]
    [InlineData("25", double.NaN)]
    [InlineData("250", 25.5)]
    [InlineData("255", double.NaN)]
    public void A_filler_of_a_byte_is_one_only_where_bytes_are_written(string others, double degC)
    {
        string text = "time (s),current (A),cell 1 (V),cell 2 (V),temperature 1,temperature 2\n" + string.Concat(Enumerable.Range(0, 100).Select(i => $"{i},5,3.6,3.6,{(i % 2 == 0 ? "255" : others)},{others}\n"));

        Assert.Equal(degC, LogText.Pack(text).Log.TemperatureDegC.Select(probe => probe[50]).FirstOrDefault(double.NaN), tolerance: 1e-6);
    }

    [Fact]
    public void Modules_bricks_and_cells_stand_in_the_order_of_all_their_numbers()
    {
        PackLogReading read = LogText.Pack("time (s),current (A),P1M1C1 (V),P1M1C2 (V),P1M2C1 (V),P1M2C2 (V),P2M1C1 (V)\n" + string.Concat(Enumerable.Range(0, 100).Select(i => $"{i},5,3.61,3.62,3.63,3.64,3.65\n")));

        Assert.Equal([3.61, 3.62, 3.63, 3.64, 3.65], read.Log.GroupV.Select(volts => volts[0]));
    }

    private static IReadOnlyList<TestStep> Steps(string text)
    {
        using Folder folder = new();
        string file = folder.File("steps.csv");
        File.WriteAllText(file, text);
        Assert.True(TesterLogs.Read(file, new ReadOptions()).Is(out TesterLogReading? read, out Refusal? why), why?.ToString());
        Assert.True(read.IsStepTable);
        return TestCurves.Read(read.Curve, new CurveRequest { IsStepTable = true }).Steps;
    }
}
