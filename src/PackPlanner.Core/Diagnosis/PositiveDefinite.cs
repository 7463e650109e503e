using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace PackPlanner.Core.Diagnosis;

/// <summary>Factors a matrix that is positive definite in exact arithmetic, though perhaps not after rounding.</summary>
internal static class PositiveDefinite
{
    /// <summary>The Cholesky factor, the diagonal raised by as little as makes it possible.</summary>
    /// <param name="matrix">Symmetric, finite, not negative on the diagonal.</param>
    /// <exception cref="ArgumentException">It holds NaN, or is far from positive definite.</exception>
    internal static Cholesky<double> Factor(Matrix<double> matrix)
    {
        double largest = Math.Max(1e-300, Enumerable.Range(0, matrix.RowCount).Max(i => matrix[i, i]));
        for (double raise = 0; raise <= 1e-3; raise = raise == 0 ? 1e-14 : raise * 30)
        {
            Matrix<double> raised = matrix.Clone();
            for (int i = 0; i < raised.RowCount && raise > 0; i++)
                raised[i, i] += (raise * largest) + (raise * raised[i, i]);
            try
            {
                return raised.Cholesky();
            }
            catch (ArgumentException)
            {
                // Not yet: raise the diagonal further.
            }
        }
        throw new ArgumentException("The matrix is not positive definite.", nameof(matrix));
    }
}
