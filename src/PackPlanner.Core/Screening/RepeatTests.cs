using MathNet.Numerics.LinearAlgebra;

namespace PackPlanner.Core.Screening;

/// <summary>Repeatability and slot offsets from cells that were tested more than once.</summary>
internal static class RepeatTests
{
    /// <summary>One capacity test of one cell.</summary>
    /// <param name="Cell">Number of the cell.</param>
    /// <param name="Slot">Number of the slot; -1 when not recorded.</param>
    /// <param name="Ah">Capacity.</param>
    internal readonly record struct Test(int Cell, int Slot, double Ah);

    /// <summary>What repeats tell.</summary>
    /// <param name="Fraction">Pooled standard deviation of a test as a fraction of its cell's mean; null without repeats.</param>
    /// <param name="Freedom">Its degrees of freedom.</param>
    /// <param name="SlotFraction">Offset of each slot as a fraction; NaN where repeats do not tie it to the others.</param>
    /// <param name="SlotSpread">One standard deviation of each offset; NaN where the offset is.</param>
    internal sealed record Finding(double? Fraction, int Freedom, double[] SlotFraction, double[] SlotSpread);

    /// <summary>Fits cells and slots by least squares to the tests of repeated cells.</summary>
    /// <param name="tests">All tests; those of cells tested once tell nothing here.</param>
    /// <param name="slots">How many slots there are.</param>
    /// <param name="assumedFraction">Used for the spread of an offset when the repeats leave too few degrees of freedom.</param>
    /// <returns>The finding.</returns>
    /// <remarks>
    /// Each test is taken as a fraction of its cell's mean, so that large and small cells weigh alike; that is one-way
    /// analysis of variance, and with slots a two-way one without interaction. Offsets are against the median slot,
    /// because one odd slot should not make the good ones look odd.
    /// </remarks>
    internal static Finding Fit(IReadOnlyList<Test> tests, int slots, double assumedFraction)
    {
        double[] none = [.. Enumerable.Repeat(double.NaN, slots)];
        Test[][] repeated = [.. tests.GroupBy(test => test.Cell).Select(cell => cell.ToArray()).Where(cell => cell.Length > 1)];
        if (repeated.Length == 0)
            return new Finding(null, 0, none, none);
        int freedom = repeated.Sum(cell => cell.Length - 1);
        double squares = repeated.Sum(SquaresWithin);
        bool slotsKnown = slots > 1 && repeated.All(cell => cell.All(test => test.Slot >= 0));
        // Every cell repeated in one slot only: nothing tells the slots apart, and there is nothing to invert.
        if (!slotsKnown || Rank(repeated, slots) == 0)
            return new Finding(Math.Sqrt(squares / freedom), freedom, none, none);
        return WithSlots(repeated, slots, squares, freedom, assumedFraction, none);
    }

    private static double SquaresWithin(Test[] cell)
    {
        double mean = cell.Average(test => test.Ah);
        return cell.Sum(test => (test.Ah / mean - 1) * (test.Ah / mean - 1));
    }

    private static Finding WithSlots(
        Test[][] repeated, int slots, double squares, int freedom, double assumedFraction, double[] none)
    {
        Matrix<double> normal = Matrix<double>.Build.Dense(slots, slots);
        Vector<double> right = Vector<double>.Build.Dense(slots);
        foreach (Test[] cell in repeated)
        {
            double mean = cell.Average(test => test.Ah);
            double[] share = new double[slots];
            foreach (Test test in cell)
                share[test.Slot] += 1.0 / cell.Length;
            foreach (Test test in cell)
            {
                for (int j = 0; j < slots; j++)
                {
                    double x = (j == test.Slot ? 1 : 0) - share[j];
                    right[j] += x * (test.Ah / mean - 1);
                    for (int k = 0; k < slots; k++)
                        normal[j, k] += x * ((k == test.Slot ? 1 : 0) - share[k]);
                }
            }
        }

        Matrix<double> inverse = Grounded(normal, repeated, slots).Inverse();
        Vector<double> offset = inverse * right;
        int[] together = Together(repeated, slots);
        int tied = together.Count(slot => slot >= 0);
        int residualFreedom = freedom - Math.Max(0, Rank(repeated, slots));
        double residual = Math.Max(0, squares - offset.DotProduct(right));
        double fraction = residualFreedom > 0 ? Math.Sqrt(residual / residualFreedom) : Math.Sqrt(squares / freedom);
        double spread = residualFreedom >= Repeatability.FewestDegreesOfFreedom ? fraction : assumedFraction;
        double[] slotFraction = [.. none];
        double[] slotSpread = [.. none];
        if (tied > 1)
            AgainstTheMiddle(together, offset, inverse * (spread * spread), slotFraction, slotSpread);
        return new Finding(fraction, residualFreedom > 0 ? residualFreedom : 0, slotFraction, slotSpread);
    }

    // Offsets of slots that are tied together are free by a common amount, so the matrix is singular, and a pseudo-inverse has to tell a rounded zero
    // from a small number; it can take one for the other. The offsets of each set are made to sum to zero instead, which changes no difference.
    private static Matrix<double> Grounded(Matrix<double> normal, Test[][] repeated, int slots)
    {
        int[] root = Roots(repeated, slots);
        return Matrix<double>.Build.Dense(slots, slots, (j, k) => normal[j, k] + (root[j] == root[k] ? 1 : 0));
    }

    // The reference is the median slot, or the mean of the two middle ones; the spread is that of the difference.
    private static void AgainstTheMiddle(
        int[] together, Vector<double> offset, Matrix<double> covariance, double[] slotFraction, double[] slotSpread)
    {
        int[] order = [.. Enumerable.Range(0, together.Length).Where(slot => together[slot] >= 0).OrderBy(slot => offset[slot]).ThenBy(slot => slot)];
        int[] middle = order.Length % 2 == 1 ? [order[order.Length / 2]] : [order[order.Length / 2 - 1], order[order.Length / 2]];
        double reference = middle.Average(slot => offset[slot]);
        foreach (int slot in order)
        {
            Vector<double> contrast = Vector<double>.Build.Dense(offset.Count);
            contrast[slot] += 1;
            foreach (int at in middle)
                contrast[at] -= 1.0 / middle.Length;
            slotFraction[slot] = offset[slot] - reference;
            slotSpread[slot] = Math.Sqrt(Math.Max(0, contrast * covariance * contrast));
        }
    }

    // Slots that repeated cells tie to one another: the largest such set; -1 for the others.
    private static int[] Together(Test[][] repeated, int slots)
    {
        int[] root = Roots(repeated, slots);
        int[] tests = new int[slots];
        foreach (Test test in repeated.SelectMany(cell => cell))
            tests[root[test.Slot]]++;
        int largest = Array.IndexOf(tests, tests.Max());
        return [.. root.Select((r, slot) => r == largest && repeated.Any(cell => cell.Any(test => test.Slot == slot)) ? r : -1)];
    }

    // Free slot offsets: slots in use less one for each set of slots tied together.
    private static int Rank(Test[][] repeated, int slots)
    {
        int[] root = Roots(repeated, slots);
        int[] used = [.. repeated.SelectMany(cell => cell).Select(test => test.Slot).Distinct()];
        return used.Length - used.Select(slot => root[slot]).Distinct().Count();
    }

    private static int[] Roots(Test[][] repeated, int slots)
    {
        int[] root = [.. Enumerable.Range(0, slots)];
        foreach (Test[] cell in repeated)
        {
            foreach (Test test in cell)
            {
                int from = root[test.Slot];
                int to = root[cell[0].Slot];
                for (int i = 0; i < slots; i++)
                    root[i] = root[i] == from ? to : root[i];
            }
        }

        return root;
    }
}
