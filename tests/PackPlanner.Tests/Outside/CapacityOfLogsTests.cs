using PackPlanner.Core.Bench;
using PackPlanner.Formats.Logs;
using PackPlanner.Formats.Tables;
using PackPlanner.Tests.House;

namespace PackPlanner.Tests.Outside;

/// <summary>Counted charge and energy against what the authors of open data, or their testers, counted.</summary>
public class CapacityOfLogsTests
{
    internal static CurveReading Read(string set, string file, CurveRequest? request = null)
    {
        Assert.True(TesterLogs.Read(Repository.Data(set, file), new ReadOptions()).Is(out TesterLogReading? log, out _));
        return TestCurves.Read(log.Curve, (request ?? new CurveRequest()) with { IsStepTable = log.IsStepTable });
    }

    // Source: [ArtsLab30Q] cell1_capacity_summary.lvm: discharged Ah is the second column less the third, charged Ah the second less 0.1.
    [Theory]
    [InlineData("discharge_1_1.lvm", 2.866979)]
    [InlineData("discharge_1_100.lvm", 2.705589)]
    [InlineData("discharge_1_200.lvm", 2.583730)]
    [InlineData("discharge_1_300.lvm", 2.282503)]
    [InlineData("discharge_1_385.lvm", 1.872355)]
    [InlineData("charge_1_100.lvm", 2.709737)]
    public void A_raw_log_of_one_cell_gives_the_capacity_that_its_authors_counted(string file, double authorsAh)
    {
        TestStep step = Assert.Single(Read("samsung-30q", file).Steps);

        Assert.Equal(authorsAh, step.ChargeAh, 0.0002 * authorsAh);
        Assert.Equal(StepEnd.CurrentTaper, step.EndedBy);
    }

    // Source: [ArtsLab30Q]: cutting at the first sample at 2.5 V loses 2.4 to 6.7 % of what the held tail brings.
    [Fact]
    public void The_charge_to_the_cut_off_stands_beside_the_whole_and_leaves_the_tail_out()
    {
        foreach (string file in new[] { "discharge_1_1.lvm", "discharge_1_200.lvm", "discharge_1_385.lvm" })
        {
            TestStep step = Assert.Single(Read("samsung-30q", file, new CurveRequest { CutOffV = 2.5 }).Steps);

            Assert.InRange(1 - step.ChargeToCutOffAh!.Value / step.ChargeAh, 0.023, 0.068);
        }
    }

    // Source: [NissanLeaf2013] the tester's own counters in the same file.
    [Theory]
    [InlineData("cell-discharge-bitrode-1c.csv.gz", new[] { 30.33, 30.34, 30.30, 30.29 }, new[] { 113.84, 113.85, 113.70, 113.66 }, 0.003)]
    [InlineData("cell-cycling-10c-24c-40c.csv.gz", new[] { 30.09, 30.04, 30.01, 29.86, 29.87, 29.90, 29.37 }, new[] { 108.56, 108.37, 108.22, 107.86, 107.90, 107.79, 105.29 }, 0.01)]
    public void Discharges_of_the_2013_cell_agree_with_the_testers_counters(string file, double[] ah, double[] wh, double energyTolerance)
    {
        TestStep[] whole = [.. Read("cell-2013", file).Steps.Where(step => step is { Direction: CurrentDirection.Discharge, EndedBy: StepEnd.CutOff })];

        Assert.Equal(ah.Length, whole.Length);
        for (int i = 0; i < ah.Length; i++)
        {
            Assert.Equal(ah[i], whole[i].ChargeAh, 0.001 * ah[i]);
            Assert.Equal(wh[i], whole[i].EnergyWh, energyTolerance * wh[i]);
            Assert.Equal(ah[i], whole[i].CounterAh!.Value, 0.005);
            Assert.Equal(3.00, whole[i].EndV, 0.005);
        }
    }

    // Source: [NissanLeaf2013]: the last discharge of the file stops at 3.83 V after 0.79 Ah.
    [Fact]
    public void A_discharge_broken_off_at_the_end_of_the_file_is_no_capacity()
    {
        TestStep last = Read("cell-2013", "cell-cycling-10c-24c-40c.csv.gz").Steps[^1];

        Assert.Equal(StepEnd.Aborted, last.EndedBy);
        Assert.Null(last.ChargeToCutOffAh);
        Assert.Equal(0.79, last.ChargeAh, 0.01);
    }

    // Source: [NissanLeaf2013] the tester's counters of a string of six groups.
    [Theory]
    [InlineData("module123-irdischarge-65ah-1_0c.csv.gz", 55.30, 1253.75)]
    [InlineData("module123-irdischarge-65ah-2_75c.csv.gz", 54.88, 1194.87)]
    public void A_series_string_is_counted_as_a_cell_is(string file, double ah, double wh)
    {
        TestStep step = Assert.Single(Read("cell-2013", file).Steps);

        Assert.Equal(ah, step.ChargeAh, 0.001 * ah);
        Assert.Equal(wh, step.EnergyWh, 0.001 * wh);
    }

    // Source: [PulseBat] 放电容量 of step 4; by hand: current x seconds / 3600.
    [Theory]
    [InlineData("steps_LMO_C_25_B_24.csv.gz", 19.9145, 25.0012 * 2867.7 / 3600)]
    [InlineData("steps_LMO_C_25_B_101.csv.gz", 14.0409, 25.0011 * 2021.9 / 3600)]
    public void A_step_table_gives_the_testers_figure_and_current_times_time_agrees_with_it(string file, double testersAh, double byHandAh)
    {
        TestStep discharge = Read("pulsebat", file).Steps.First(step => step.Direction == CurrentDirection.Discharge);

        Assert.Equal(testersAh, discharge.ChargeAh, 1e-6);
        Assert.Equal(byHandAh, discharge.ChargeAh, 0.001 * byHandAh);
    }

    // Source: [AboutEnergy2022] and [Raj2020]: plain trapezoid integrals of the same files made apart, in the data's own read-me; 0.1 %.
    [Theory]
    [InlineData("lfp-nmc-slow", "LFP_25degC_Co20.csv.gz", 2.0745, 6.750)]
    [InlineData("lfp-nmc-slow", "LFP_25degC_1C.csv.gz", 1.9434, 6.024)]
    [InlineData("lfp-nmc-slow", "NMC_25degC_Co20.csv.gz", 13.0974, 48.616)]
    [InlineData("nca-slow", "discharge_1.5A_step4_all_rows.csv.gz", 2.9395, 10.436)]
    [InlineData("nca-slow", "pseudo_ocv_steps7-11_every60s.csv.gz", 3.0970, 11.356)]
    public void Slow_discharges_of_three_chemistries_give_their_known_integrals(string set, string file, double ah, double wh)
    {
        TestStep discharge = Read(set, file).Steps.First(step => step.Direction == CurrentDirection.Discharge);

        Assert.Equal(ah, discharge.ChargeAh, 0.001 * ah);
        Assert.Equal(wh, discharge.EnergyWh, 0.001 * wh);
        Assert.Equal(StepEnd.CutOff, discharge.EndedBy);
    }
}
