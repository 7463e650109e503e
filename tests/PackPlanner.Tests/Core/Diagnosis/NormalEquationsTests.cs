using MathNet.Numerics.LinearAlgebra;
using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis;

/// <summary>Solving group by group must give what solving everything at once gives.</summary>
public class NormalEquationsTests
{
    private const int Shared = 3, Own = 2, Groups = 4, Size = Shared + (Own * Groups);

    /// <summary>Many rows of numbers, each touching what is common and one group's own; filled by single terms and, the same again, by blocks.</summary>
    private static (NormalEquations ByTerms, NormalEquations ByBlocks, Matrix<double> Dense, Vector<double> Right) Fill()
    {
        Random random = new(5);
        NormalEquations terms = new(Shared, Own, Groups), blocks = new(Shared, Own, Groups);
        Matrix<double> dense = Matrix<double>.Build.Dense(Size, Size);
        Vector<double> right = Vector<double>.Build.Dense(Size);
        for (int k = 0; k < Groups; k++)
        {
            double[] block = new double[(Shared + Own) * (Shared + Own)], pull = new double[Shared + Own];
            for (int r = 0; r < 12; r++)
            {
                double[] row = [.. Enumerable.Range(0, Shared + Own).Select(_ => random.NextDouble() - 0.5)];
                double miss = random.NextDouble();
                for (int a = 0; a < row.Length; a++)
                {
                    int i = a < Shared ? a : a + (k * Own);
                    pull[a] += row[a] * miss;
                    terms.Right[i] += row[a] * miss;
                    right[i] += row[a] * miss;
                    for (int b = 0; b < row.Length; b++)
                        dense[i, b < Shared ? b : b + (k * Own)] += row[a] * row[b];
                    for (int b = 0; b <= a; b++)
                    {
                        block[(a * row.Length) + b] += row[a] * row[b];
                        // Either order says the same.
                        int j = b < Shared ? b : b + (k * Own);
                        terms.Add(r % 2 == 0 ? i : j, r % 2 == 0 ? j : i, row[a] * row[b]);
                    }
                }
            }

            blocks.AddBlock(k, block, pull);
        }

        return (terms, blocks, dense, right);
    }

    private static void Same(Vector<double> expected, double[] actual)
    {
        Assert.Equal(expected.Count, actual.Length);
        Assert.All(actual, (value, i) => Assert.Equal(expected[i], value, 1e-9));
    }

    [Fact]
    public void Terms_and_blocks_make_the_matrix_that_the_rows_make()
    {
        (NormalEquations terms, NormalEquations blocks, Matrix<double> dense, Vector<double> right) = Fill();

        Assert.Equal(0, (terms.Whole() - dense).InfinityNorm(), 1e-12);
        Assert.Equal(0, (blocks.Whole() - dense).InfinityNorm(), 1e-12);
        Same(right, terms.Right);
        Same(right, blocks.Right);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.3)]
    public void The_move_is_that_of_the_whole_matrix_with_its_diagonal_raised(double damping)
    {
        (NormalEquations terms, _, Matrix<double> dense, Vector<double> right) = Fill();
        Matrix<double> raised = dense.Clone();
        for (int i = 0; i < Size; i++)
            raised[i, i] *= 1 + damping;

        Same(raised.Solve(right), terms.Solve(damping));
    }

    [Fact]
    public void One_group_by_itself_is_solved_with_all_others_held()
    {
        (NormalEquations terms, _, Matrix<double> dense, Vector<double> right) = Fill();
        const int at = Shared + (2 * Own);
        Matrix<double> block = dense.SubMatrix(at, Own, at, Own);
        for (int i = 0; i < Own; i++)
            block[i, i] *= 1.2;

        Same(block.Solve(right.SubVector(at, Own)), terms.SolveOwn(2, 0.2));
    }

    [Fact]
    public void Covariances_are_the_parts_of_the_whole_inverse()
    {
        (NormalEquations terms, _, Matrix<double> dense, _) = Fill();
        Matrix<double> inverse = dense.Inverse();

        (Matrix<double> common, Matrix<double>[] own, Matrix<double>[] carried) = terms.Covariances();

        Assert.Equal(0, (common - inverse.SubMatrix(0, Shared, 0, Shared)).InfinityNorm(), 1e-9);
        for (int k = 0; k < Groups; k++)
        {
            int at = Shared + (k * Own);
            Assert.Equal(0, (own[k] - inverse.SubMatrix(at, Own, at, Own)).InfinityNorm(), 1e-9);
            Assert.Equal(0, ((carried[k] * common) + inverse.SubMatrix(at, Own, 0, Shared)).InfinityNorm(), 1e-9);
        }
    }

    [Fact]
    public void Cleared_it_holds_nothing()
    {
        (NormalEquations terms, _, _, _) = Fill();

        terms.Clear();

        Assert.Equal(0, terms.Whole().InfinityNorm());
        Assert.All(terms.Right, value => Assert.Equal(0, value));
    }

    [Fact]
    public void A_matrix_that_rounding_left_not_quite_positive_is_factored_with_its_diagonal_hardly_raised()
    {
        // Two columns alike: the determinant is nought, or a hair below it.
        Matrix<double> matrix = Matrix<double>.Build.DenseOfArray(new[,] { { 4, 2, 2 }, { 2, 1, 1 - 1e-15 }, { 2, 1 - 1e-15, 1.0 } });

        Matrix<double> factor = PositiveDefinite.Factor(matrix).Factor;

        Assert.Equal(0, ((factor * factor.Transpose()) - matrix).InfinityNorm(), 1e-6);
        // One that is sound is factored as it is.
        Matrix<double> sound = Matrix<double>.Build.DenseOfArray(new[,] { { 4.0, 2 }, { 2, 3 } });
        Assert.Equal([2, 1, Math.Sqrt(2)], new[] { PositiveDefinite.Factor(sound).Factor[0, 0], PositiveDefinite.Factor(sound).Factor[1, 0], PositiveDefinite.Factor(sound).Factor[1, 1] });
    }

    [Fact]
    public void A_matrix_far_from_positive_is_refused()
    {
        Assert.Throws<ArgumentException>(() => PositiveDefinite.Factor(Matrix<double>.Build.DenseOfArray(new[,] { { 1.0, 2 }, { 2, 1 } })));
        Assert.Throws<ArgumentException>(() => PositiveDefinite.Factor(Matrix<double>.Build.DenseOfArray(new[,] { { double.NaN, 0 }, { 0, 1 } })));
    }

    // The raise goes up thirty times a try and stops short of a thousandth: the last, 2.187e-4 of the largest and of itself, mends 4.3e-4.
    [Theory]
    [InlineData(1.00043, true)]
    [InlineData(1.00045, false)]
    public void The_diagonal_is_raised_by_a_thousandth_at_most(double across, bool can)
    {
        Matrix<double> matrix = Matrix<double>.Build.DenseOfArray(new[,] { { 1.0, across }, { across, 1 } });

        Assert.Equal(can, Record.Exception(() => PositiveDefinite.Factor(matrix)) is null);
    }
}
