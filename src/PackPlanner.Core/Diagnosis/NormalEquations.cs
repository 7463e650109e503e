using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace PackPlanner.Core.Diagnosis;

/// <summary>Normal equations of a fit with a few parameters common to all groups and some of each group's own.</summary>
/// <remarks>
/// No two groups' own parameters meet, so each group is eliminated by itself and the work grows with the number of
/// groups, not with its cube.
/// </remarks>
internal sealed class NormalEquations
{
    private readonly int shared;
    private readonly int own;
    private readonly Matrix<double> common;
    // Made when first touched: a fit of one group needs those of that group only.
    private readonly Matrix<double>?[] mixed;
    private readonly Matrix<double>?[] single;

    internal NormalEquations(int shared, int own, int groups)
    {
        this.shared = shared;
        this.own = own;
        common = Matrix<double>.Build.Dense(shared, shared);
        mixed = new Matrix<double>?[groups];
        single = new Matrix<double>?[groups];
        Right = new double[shared + (groups * own)];
    }

    /// <summary>The pull on every parameter.</summary>
    internal double[] Right { get; }

    internal void Clear()
    {
        common.Clear();
        Array.Clear(Right);
        for (int k = 0; k < single.Length; k++)
        {
            mixed[k]?.Clear();
            single[k]?.Clear();
        }
    }

    /// <summary>Adds to the curvature between two parameters, counted as in <see cref="Right"/>; both orders at once.</summary>
    internal void Add(int a, int b, double value)
    {
        if (a < shared && b < shared)
        {
            common[a, b] += value;
            if (a != b)
                common[b, a] += value;
            return;
        }
        (int low, int high) = a < b ? (a, b) : (b, a);
        int group = (high - shared) / own, at = (high - shared) % own;
        if (low < shared)
        {
            Mixed(group)[at, low] += value;
            return;
        }
        int other = low - shared - (group * own);
        Matrix<double> block = Single(group);
        block[at, other] += value;
        if (at != other)
            block[other, at] += value;
    }

    private Matrix<double> Mixed(int group) => mixed[group] ??= Matrix<double>.Build.Dense(own, shared);

    private Matrix<double> Single(int group) => single[group] ??= Matrix<double>.Build.Dense(own, own);

    /// <summary>Adds a lower-triangular block over the common parameters and then one group's own.</summary>
    internal void AddBlock(int group, ReadOnlySpan<double> block, ReadOnlySpan<double> right)
    {
        int size = shared + own;
        for (int a = 0; a < size; a++)
        {
            Right[a < shared ? a : a + (group * own)] += right[a];
            for (int b = 0; b <= a; b++)
            {
                double value = block[(a * size) + b];
                if (value != 0)
                    Add(a < shared ? a : a + (group * own), b < shared ? b : b + (group * own), value);
            }
        }
    }

    /// <summary>Solves with the diagonal raised by a share of itself.</summary>
    internal double[] Solve(double damping)
    {
        Matrix<double> left = common.Clone();
        for (int i = 0; i < shared; i++)
            left[i, i] *= 1 + damping;
        Vector<double> right = Vector<double>.Build.Dense(Right[..shared]);
        Matrix<double>[] carried = new Matrix<double>[single.Length];
        Vector<double>[] lone = new Vector<double>[single.Length];
        for (int k = 0; k < single.Length; k++)
        {
            Matrix<double> block = Single(k).Clone();
            for (int i = 0; i < own; i++)
                block[i, i] *= 1 + damping;
            Cholesky<double> factor = PositiveDefinite.Factor(block);
            carried[k] = factor.Solve(Mixed(k));
            lone[k] = factor.Solve(Vector<double>.Build.Dense(Right[(shared + (k * own))..(shared + ((k + 1) * own))]));
            left -= Mixed(k).TransposeThisAndMultiply(carried[k]);
            right -= Mixed(k).TransposeThisAndMultiply(lone[k]);
        }
        Vector<double> head = PositiveDefinite.Factor(left).Solve(right);
        double[] all = new double[Right.Length];
        head.ToArray().CopyTo(all, 0);
        for (int k = 0; k < single.Length; k++)
            (lone[k] - (carried[k] * head)).ToArray().CopyTo(all, shared + (k * own));
        return all;
    }

    /// <summary>All curvature in one matrix, for whoever cannot use that most of it is empty.</summary>
    internal Matrix<double> Whole()
    {
        Matrix<double> whole = Matrix<double>.Build.Dense(Right.Length, Right.Length);
        whole.SetSubMatrix(0, 0, common);
        for (int k = 0; k < single.Length; k++)
        {
            int at = shared + (k * own);
            whole.SetSubMatrix(at, at, Single(k));
            whole.SetSubMatrix(at, 0, Mixed(k));
            whole.SetSubMatrix(0, at, Mixed(k).Transpose());
        }
        return whole;
    }

    /// <summary>Solves for one group's own parameters with the common ones held.</summary>
    internal double[] SolveOwn(int group, double damping)
    {
        Matrix<double> block = Single(group).Clone();
        for (int i = 0; i < own; i++)
            block[i, i] *= 1 + damping;
        return PositiveDefinite.Factor(block).Solve(Vector<double>.Build.Dense(Right[(shared + (group * own))..(shared + ((group + 1) * own))])).ToArray();
    }

    /// <summary>Covariance of the common parameters, and of each group's own with them taken into account.</summary>
    internal (Matrix<double> Common, Matrix<double>[] Own, Matrix<double>[] Carried) Covariances()
    {
        Matrix<double> left = common.Clone();
        Matrix<double>[] carried = new Matrix<double>[single.Length], inverse = new Matrix<double>[single.Length];
        for (int k = 0; k < single.Length; k++)
        {
            inverse[k] = PositiveDefinite.Factor(Single(k)).Solve(Matrix<double>.Build.DenseIdentity(own));
            carried[k] = inverse[k] * Mixed(k);
            left -= Mixed(k).TransposeThisAndMultiply(carried[k]);
        }
        Matrix<double> shared = PositiveDefinite.Factor(left).Solve(Matrix<double>.Build.DenseIdentity(this.shared));
        Matrix<double>[] owns = [.. inverse.Select((i, k) => i + (carried[k] * shared).TransposeAndMultiply(carried[k]))];
        return (shared, owns, carried);
    }
}
