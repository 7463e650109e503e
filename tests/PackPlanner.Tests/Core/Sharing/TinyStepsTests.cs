using CsCheck;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Sharing;

namespace PackPlanner.Tests.Core.Sharing;

/// <summary>A shared discharge against the plainest way to compute one: a second at a time, forwards, from Kirchhoff's sum alone.</summary>
public class TinyStepsTests
{
    private static readonly Gen<(Chemistry Chemistry, double[] RestV, double[] Milliohm, double[] Ah, double LoadA)> Cases =
        from n in Gen.Int[1, 5]
        from chemistry in Gen.Int[0, Chemistries.All.Count - 1].Select(i => Chemistries.All[i])
        from full in Gen.Double[0.7, 1].Array[n]
        from milliohm in Gen.Double[20, 60].Array[n]
        from ah in Gen.Double[1.5, 4].Array[n]
        from perHour in Gen.Double[0.3, 2]
        select (chemistry, full.Select(z => chemistry.Curve.VoltsAt(z)).ToArray(), milliohm, ah, perHour * ah.Sum());

    [Fact]
    public void A_shared_discharge_agrees_with_second_after_second()
    {
        Cases.Sample(one =>
        {
            CellBranch[] cells = [.. one.RestV.Select((v, i) => new CellBranch($"{i}", v, one.Milliohm[i], one.Ah[i]))];
            if (SlowTerminalV(one.Chemistry.Curve, Fractions(one.Chemistry, one.RestV), one.Milliohm, one.LoadA, out _) <= one.Chemistry.CutoffV + 0.05)
                return;

            SharedDischargeRun run = SharedDischarge.Run(
                [ParallelCells.Alike(1, cells, 0, 1, 1)], one.Chemistry, one.Chemistry.CutoffV, one.LoadA, TestContext.Current.CancellationToken);

            (double takenAh, _) = Slow(one.Chemistry, one.RestV, one.Milliohm, one.Ah, one.LoadA, double.PositiveInfinity);
            Assert.Equal(takenAh, run.Through[^1].AtAh, tolerance: 0.002 * one.Ah.Sum());
            // At the end a second moves much; the currents are compared in the middle, where both stand at the same charge.
            SharedMoment middle = run.Through[run.Through.Count / 2];
            (_, double[] middleA) = Slow(one.Chemistry, one.RestV, one.Milliohm, one.Ah, one.LoadA, middle.AtAh / one.LoadA);
            for (int i = 0; i < middleA.Length; i++)
                Assert.Equal(middleA[i], middle.Groups[0].CurrentA[i], tolerance: 0.01 * one.LoadA);
        }, seed: "0000KIcCwDG2", iter: 400);
    }

    private static double[] Fractions(Chemistry chemistry, double[] restV) => [.. restV.Select(chemistry.Curve.FractionAt)];

    private static (double TakenAh, double[] CurrentA) Slow(Chemistry chemistry, double[] restV, double[] milliohm, double[] ah, double loadA, double untilH)
    {
        double[] fraction = Fractions(chemistry, restV);
        for (double hours = 0; ; hours += 1.0 / 3600)
        {
            if (SlowTerminalV(chemistry.Curve, fraction, milliohm, loadA, out double[] currentA) <= chemistry.CutoffV || hours >= untilH)
                return (hours * loadA, currentA);
            for (int i = 0; i < fraction.Length; i++)
                fraction[i] -= currentA[i] * 1.0 / 3600 / ah[i];
        }
    }

    // Cells side by side without bars between them: V = (sum E/R - I) / sum 1/R.
    private static double SlowTerminalV(OpenCircuitCurve curve, double[] fraction, double[] milliohm, double loadA, out double[] currentA)
    {
        double[] openV = [.. fraction.Select(curve.VoltsAt)];
        double terminalV = (openV.Zip(milliohm, (e, r) => e / r * 1000).Sum() - loadA) / milliohm.Sum(r => 1000 / r);
        currentA = [.. openV.Zip(milliohm, (e, r) => (e - terminalV) / r * 1000)];
        return terminalV;
    }
}
