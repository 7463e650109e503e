using MathNet.Numerics.LinearAlgebra;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis;

public class CurvePriorTests
{
    /// <summary>How far the belief must be strained, in spreads, to follow a curve whose charge is stretched; and what it then misses.</summary>
    private static (double Strain, double MissV) Follow(string chemistry, double fullV, double emptyV, Func<double, double> stretched)
    {
        CurvePrior prior = CurvePrior.For(Chemistries.All.Single(c => c.Name == chemistry), fullV, emptyV);
        double[] bare = prior.Bent([]), at = [.. Enumerable.Range(1, 99).Select(i => i / 100.0)];
        Matrix<double> shapes = Matrix<double>.Build.Dense(at.Length, prior.Shapes);
        double[] row = new double[prior.Shapes];
        for (int i = 0; i < at.Length; i++)
        {
            prior.ShapesAt(at[i], row);
            shapes.SetRow(i, row);
        }
        Vector<double> wanted = Vector<double>.Build.Dense(at.Length, i => prior.Volts(stretched(at[i]), bare, out _) - prior.Volts(at[i], bare, out _));
        const double readingV = 0.003;
        Vector<double> weights = ((shapes.TransposeThisAndMultiply(shapes) / (readingV * readingV)) + Matrix<double>.Build.DenseIdentity(prior.Shapes))
            .Cholesky().Solve(shapes.TransposeThisAndMultiply(wanted) / (readingV * readingV));
        return (weights.L2Norm(), (wanted - (shapes * weights)).AbsoluteMaximum());
    }

    // Electrodes of another maker or of an aged cell stand slipped by some points of charge: that is no strange curve.
    [Theory]
    [InlineData("NMC", 4.2, 3.0)]
    [InlineData("NCA", 4.2, 2.8)]
    public void A_curve_stretched_by_two_points_and_a_half_is_followed_without_strain(string chemistry, double fullV, double emptyV)
    {
        (double strain, double missV) = Follow(chemistry, fullV, emptyV, z => z + (0.025 * Math.Sin(Math.PI * z)));

        Assert.InRange(strain, 0.2, 1.5);
        Assert.InRange(missV, 0, 0.006);
    }

    [Fact]
    public void A_curve_stretched_by_ten_points_strains_the_belief()
    {
        (double strain, _) = Follow("NMC", 4.2, 3.0, z => z + (0.1 * Math.Sin(Math.PI * z)));

        Assert.InRange(strain, 3, 20);
    }
}
