using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using PackPlanner.Core.Screening;

namespace PackPlanner.Tests.Core.Screening;

/// <summary>Slot offsets against a plain regression: a column for each cell, a column for each slot but the first, solved by QR.</summary>
public class SlotRegressionTests
{
    // Each cell is tested in two or three neighbouring slots, so that all slots are tied together.
    private static readonly Gen<(int Slots, RepeatTests.Test[] Tests)> Lots =
        from slots in Gen.Int[2, 5]
        from cells in Gen.Int[slots + 1, 12]
        from ah in Gen.Double[3, 5].Array[cells]
        from noise in Gen.Double[-0.02, 0.02].Array[3 * cells]
        from third in Gen.Bool.Array[cells]
        select (slots, Enumerable.Range(0, cells).SelectMany(cell => Enumerable.Range(0, third[cell] ? 3 : 2)
            .Select(k => new RepeatTests.Test(cell, (cell + k) % slots, ah[cell] * (1 + noise[3 * cell + k])))).ToArray());

    [Fact]
    public void Offsets_their_spread_and_the_residual_are_those_of_the_regression()
    {
        int compared = 0;
        Lots.Sample(lot =>
        {
            RepeatTests.Finding found = RepeatTests.Fit(lot.Tests, lot.Slots, assumedFraction: 0.015);

            int cells = lot.Tests.Max(test => test.Cell) + 1, columns = cells + lot.Slots - 1;
            double[] mean = [.. Enumerable.Range(0, cells).Select(cell => lot.Tests.Where(test => test.Cell == cell).Average(test => test.Ah))];
            Matrix<double> design = Matrix<double>.Build.Dense(lot.Tests.Length, columns, (row, column) =>
                (column < cells ? lot.Tests[row].Cell == column : lot.Tests[row].Slot == column - cells + 1) ? 1 : 0);
            Vector<double> read = Vector<double>.Build.Dense(lot.Tests.Length, row => lot.Tests[row].Ah / mean[lot.Tests[row].Cell] - 1);
            Vector<double> solved = design.QR().Solve(read);
            int freedom = lot.Tests.Length - columns;
            Assert.Equal(Math.Max(0, freedom), found.Freedom);
            double residual = (design * solved - read).L2Norm();
            if (freedom > 0)
                Assert.Equal(residual / Math.Sqrt(freedom), found.Fraction!.Value, tolerance: 1e-9);

            double[] offset = [0, .. solved.SubVector(cells, lot.Slots - 1)];
            int[] order = [.. Enumerable.Range(0, lot.Slots).OrderBy(slot => offset[slot])];
            // Of two equal slots either may be the middle one.
            if (order.Zip(order.Skip(1)).Any(pair => offset[pair.Second] - offset[pair.First] < 1e-7))
                return;
            compared++;
            int[] middle = lot.Slots % 2 == 1 ? [order[lot.Slots / 2]] : [order[lot.Slots / 2 - 1], order[lot.Slots / 2]];
            // The project trusts its own residual from three degrees of freedom on.
            double sigma = freedom >= Repeatability.FewestDegreesOfFreedom ? residual / Math.Sqrt(freedom) : 0.015;
            Matrix<double> covariance = design.TransposeThisAndMultiply(design).Inverse() * (sigma * sigma);
            for (int slot = 0; slot < lot.Slots; slot++)
            {
                Vector<double> contrast = Vector<double>.Build.Dense(columns);
                foreach ((int at, double weight) in middle.Select(m => (m, -1.0 / middle.Length)).Append((slot, 1.0)))
                    if (at > 0)
                        contrast[cells + at - 1] += weight;
                Assert.Equal(offset[slot] - middle.Average(m => offset[m]), found.SlotFraction[slot], tolerance: 1e-9);
                Assert.Equal(Math.Sqrt(Math.Max(0, contrast * covariance * contrast)), found.SlotSpread[slot], tolerance: 1e-7);
            }
        }, seed: "0000KIcCwDG2", iter: 500, threads: 1);
        Assert.True(compared > 300, $"only {compared} lots tell their slots apart");
    }

    // Cells 0 and 1 tie slots 0 and 1, cell 2 ties 2 and 3; the first set has more tests, so only its slots are told.
    [Fact]
    public void Slots_that_nothing_ties_to_the_rest_are_not_told()
    {
        RepeatTests.Finding found = RepeatTests.Fit(
            [new(0, 0, 4), new(0, 1, 4.04), new(1, 0, 5), new(1, 1, 5.05), new(2, 2, 4), new(2, 3, 4.2)], slots: 5, assumedFraction: 0.015);

        Assert.Equal([false, false, true, true, true], found.SlotFraction.Select(double.IsNaN));
        Assert.Equal([false, false, true, true, true], found.SlotSpread.Select(double.IsNaN));
        // Half a percent to either side of their middle: 1 % of about the mean apart.
        Assert.Equal(0.00995, found.SlotFraction[1] - found.SlotFraction[0], tolerance: 1e-4);
        Assert.Equal(0, found.SlotFraction[0] + found.SlotFraction[1], tolerance: 1e-12);
    }
}
