using PackPlanner.Core.Bench;

namespace PackPlanner.Tests.Outside;

public class PulseResistanceTests
{
    // Source: [Iec61960] two-level form; by hand (3.980 - 3.884) / (2.5 - 0.5), (3.312 - 3.290) / 80.
    [Theory]
    [InlineData(3.980, 3.884, 2.0, 48.0)]
    [InlineData(3.312, 3.290, 80.0, 0.275)]
    public void Two_levels_of_current_give_the_difference_of_volts_over_the_difference_of_current(double before, double after, double step, double milliohm) =>
        Assert.Equal(milliohm, PulseFinder.Milliohm(before, after, step), 1e-9);

    // Source: [Iso12405] pulse pair; by hand (3.850 - 3.700) / 25 on discharge and (3.935 - 3.830) / 18.75 on charge.
    [Fact]
    public void A_pulse_pair_gives_a_discharge_and_a_charge_resistance()
    {
        (double[] time, double[] current, double[] volts) = Pair();

        PulseReading[] at10 = [.. PulseFinder.Find(time, current, volts).Where(pulse => pulse is { SwitchedOn: true, AfterS: 10 })];

        Assert.Equal([6.000, 5.600], at10.Select(pulse => Math.Round(pulse.ResistanceMilliohm, 6)));
        Assert.Equal([25.0, -18.75], at10.Select(pulse => pulse.StepA));
    }

    // Source: [NissanLeaf2013] volts before, at 10 s and at 30 s of ten 30 A pulses, read from the rows: milliohm by hand.
    [Fact]
    public void Ten_pulses_of_the_2013_cell_are_within_a_tenth_of_a_milliohm()
    {
        double[] at10 = [2.60, 2.13, 2.20, 2.00, 2.03, 2.03, 2.03, 2.03, 2.07, 2.53];
        double[] at30 = [3.33, 2.63, 2.87, 2.47, 2.53, 2.53, 2.53, 2.53, 2.57, 3.97];
        PulseReading[] on = [.. CapacityOfLogsTests.Read("cell-2013", "cell-low-current-hppc-25c-2.csv.gz").Pulses.Where(pulse => pulse is { SwitchedOn: true, StepA: > 29 })];

        double[] found10 = [.. on.Where(pulse => pulse.AfterS == 10).Select(pulse => pulse.ResistanceMilliohm)];
        double[] found30 = [.. on.Where(pulse => pulse.AfterS == 30).Select(pulse => pulse.ResistanceMilliohm)];

        Assert.Equal(10, found10.Length);
        Assert.Equal(10, found30.Length);
        Assert.All(at10.Zip(found10), pair => Assert.Equal(pair.First, pair.Second, 0.1));
        Assert.All(at30.Zip(found30), pair => Assert.Equal(pair.First, pair.Second, 0.1));
    }

    // Source: [NissanLeaf2013]: 0.24 V at 2.17 A within one row, on and off; the pulse test of the same kind of cell gives 2.0 to 2.6 milliohm.
    [Fact]
    public void Leads_in_the_voltage_reading_are_recognised_and_the_other_files_of_the_cell_have_none()
    {
        LeadFinding? leads = CapacityOfLogsTests.Read("cell-2013", "cell-cycling-10c-24c-40c.csv.gz").Leads;

        Assert.NotNull(leads);
        Assert.InRange(leads.SwitchOnMilliohm, 108, 116);
        Assert.InRange(leads.SwitchOffMilliohm, 108, 118);
        Assert.Equal(0.24, leads.DropV, 0.01);
        Assert.Null(CapacityOfLogsTests.Read("cell-2013", "cell-low-current-hppc-25c-2.csv.gz").Leads);
        Assert.Null(CapacityOfLogsTests.Read("cell-2013", "cell-discharge-bitrode-1c.csv.gz").Leads);
    }

    // Source: [ArtsLab30Q]: the current is switched once in this file, at its first row; after that the tail fades with noise of 0.4 A.
    [Fact]
    public void A_noisy_constant_voltage_tail_holds_no_step_of_the_current()
    {
        CurveReading charge = CapacityOfLogsTests.Read("samsung-30q", "charge_1_100.lvm");

        Assert.All(charge.Pulses, pulse => Assert.Equal(0, pulse.AtTimeS));
    }

    private static (double[] Time, double[] Current, double[] Volts) Pair()
    {
        List<double> time = [];
        List<double> current = [];
        List<double> volts = [];
        void Stretch(int seconds, double amperes, double from, double to)
        {
            for (int i = 1; i <= seconds; i++)
            {
                time.Add(time.Count == 0 ? 0 : time[^1] + 1);
                current.Add(amperes);
                volts.Add(from + (to - from) * i / seconds);
            }
        }

        Stretch(20, 0, 3.850, 3.850);
        Stretch(10, 25, 3.720, 3.700);
        Stretch(40, 0, 3.815, 3.830);
        Stretch(10, -18.75, 3.915, 3.935);
        Stretch(20, 0, 3.850, 3.845);
        return ([.. time], [.. current], [.. volts]);
    }
}
