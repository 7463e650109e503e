using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis;

public class ResistanceFitTests
{
    /// <summary>Three groups on a sloping line: 5 milliohm; the same with a 4 milliohm joint; 8 milliohm of cells. Slow part 60 % at 30 s.</summary>
    private static ResistanceFit Fit(double cells, double joint)
    {
        double[] time = [.. Enumerable.Range(0, 3000).Select(i => (double)i)];
        double[] amps = [.. time.Select(t => 20.0 * ((int)(t / 17) % 3))];
        double[][] volts = [new double[3000], new double[3000], new double[3000]];
        double slow = 0, drawn = 0;
        for (int i = 0; i < time.Length; i++)
        {
            double mean = i == 0 ? amps[0] : (amps[i] + amps[i - 1]) / 2;
            slow += i == 0 ? 0 : (mean - slow) * (1 - Math.Exp(-1 / 30.0));
            drawn += i == 0 ? 0 : mean / 3600;
            double open = 4.0 - (0.03 * drawn);
            volts[0][i] = open - (0.005 * (amps[i] + (0.6 * slow)));
            volts[1][i] = open - (0.005 * (amps[i] + (0.6 * slow)));
            volts[2][i] = open - (cells * (amps[i] + (0.6 * slow))) - (joint * amps[i]);
        }
        DiagnosisColumns columns = new(time, amps, volts, null, RowsAreAverages: false);
        ChargeCount count = ChargeCount.Of(time, amps, averages: false, ratedAh: 20);
        return ResistanceFit.Of(ResistanceWindows.Of(columns, count, 20), (_, _) => 1, 3);
    }

    [Fact]
    public void Ohmic_and_slow_parts_are_found_without_any_curve()
    {
        ResistanceFit fit = Fit(cells: 0.005, joint: 0);

        Assert.Equal(0.005, fit.CellOhm[0], tolerance: 0.0001);
        Assert.Equal(0.6, fit.Slow[2], tolerance: 0.05);
    }

    [Fact]
    public void A_bad_joint_adds_only_what_answers_at_once()
    {
        ResistanceFit fit = Fit(cells: 0.005, joint: 0.004);

        Assert.Equal(0.005, fit.CellOhm[2], tolerance: 0.0002);
        Assert.Equal(0.004, fit.JointOhm[2], tolerance: 0.0002);
    }

    [Fact]
    public void Worn_cells_answer_more_in_both_parts()
    {
        ResistanceFit fit = Fit(cells: 0.008, joint: 0);

        Assert.Equal(0.008, fit.CellOhm[2], tolerance: 0.0002);
        Assert.Equal(0, fit.JointOhm[2], tolerance: 0.0002);
    }
}
