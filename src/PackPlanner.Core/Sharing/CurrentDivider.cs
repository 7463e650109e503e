namespace PackPlanner.Core.Sharing;

/// <summary>Kirchhoff's laws for cells between two bars, in time and memory proportional to the number of cells.</summary>
/// <remarks>
/// <para>
/// The unknowns are not the node voltages but the charge flow S[j] = sum of the currents of cells 0..j. Each loop
/// through two neighbours gives one equation with three unknowns:
/// </para>
/// <para>
/// -R[j] S[j-1] + (R[j] + R[j+1] + p[j] + n[j]) S[j] - R[j+1] S[j+1] = E[j] - E[j+1] + I (p[j] where j is at or past
/// the positive take-off) + I (n[j] where j is at or past the negative one).
/// </para>
/// <para>
/// A link of zero ohm is then an ordinary coefficient, where node voltages would need an infinite conductance.
/// Elimination from the left keeps one positive number for each loop, the resistance seen to the left, which is
/// formed by adding and by resistances in parallel only. No difference of nearly equal numbers occurs, so the
/// answer keeps its digits at 100 000 cells as well. Source: [Kirchhoff].
/// </para>
/// </remarks>
internal static class CurrentDivider
{
    /// <summary>Doubles of scratch space that <see cref="Solve"/> needs for a group of <paramref name="cells"/>.</summary>
    internal static int ScratchLength(int cells) => 2 * Math.Max(1, cells - 1);

    /// <summary>Divides a load between cells.</summary>
    /// <param name="openCircuitV">Volts, shape [n], n ≥ 1.</param>
    /// <param name="resistanceOhm">Ohms, shape [n], each above zero.</param>
    /// <param name="positiveLinkOhm">Ohms, shape [n - 1], each zero or above.</param>
    /// <param name="negativeLinkOhm">Ohms, shape [n - 1], each zero or above.</param>
    /// <param name="positiveAt">Index of the cell at which the load leaves the positive bar.</param>
    /// <param name="negativeAt">Index of the cell at which it returns to the negative bar.</param>
    /// <param name="loadA">Amperes, discharge positive; zero and charging are allowed.</param>
    /// <param name="currentA">Filled with amperes, shape [n], discharge positive; they sum to the load.</param>
    /// <param name="scratch">At least <see cref="ScratchLength"/> doubles.</param>
    /// <returns>Volts between the two take-off points.</returns>
    internal static double Solve(
        ReadOnlySpan<double> openCircuitV,
        ReadOnlySpan<double> resistanceOhm,
        ReadOnlySpan<double> positiveLinkOhm,
        ReadOnlySpan<double> negativeLinkOhm,
        int positiveAt,
        int negativeAt,
        double loadA,
        Span<double> currentA,
        Span<double> scratch)
    {
        int n = openCircuitV.Length;
        if (n == 0 || resistanceOhm.Length != n || currentA.Length != n || positiveLinkOhm.Length != n - 1 || negativeLinkOhm.Length != n - 1)
            throw new ArgumentException("A group of n cells needs n resistances, n currents and n - 1 links on either bar.");
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual((uint)positiveAt, (uint)n);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual((uint)negativeAt, (uint)n);
        Span<double> seenOhm = scratch[..Math.Max(1, n - 1)];
        Span<double> drivenV = scratch.Slice(Math.Max(1, n - 1), Math.Max(1, n - 1));
        for (int j = 0; j < n - 1; j++)
        {
            double passed = j == 0 ? 0 : resistanceOhm[j] / (resistanceOhm[j] + seenOhm[j - 1]);
            double left = j == 0 ? resistanceOhm[0] : passed * seenOhm[j - 1];
            double loadV = (j >= positiveAt ? positiveLinkOhm[j] : 0) + (j >= negativeAt ? negativeLinkOhm[j] : 0);
            seenOhm[j] = positiveLinkOhm[j] + negativeLinkOhm[j] + left;
            drivenV[j] = openCircuitV[j] - openCircuitV[j + 1] + loadA * loadV + (j == 0 ? 0 : passed * drivenV[j - 1]);
        }

        double flowA = loadA;
        for (int cell = n - 1; cell > 0; cell--)
        {
            double loopOhm = seenOhm[cell - 1] + resistanceOhm[cell];
            currentA[cell] = (seenOhm[cell - 1] * flowA - drivenV[cell - 1]) / loopOhm;
            flowA = (drivenV[cell - 1] + resistanceOhm[cell] * flowA) / loopOhm;
        }

        currentA[0] = flowA;
        return openCircuitV[positiveAt] - resistanceOhm[positiveAt] * currentA[positiveAt]
            + AlongNegativeBar(negativeLinkOhm, positiveAt, negativeAt, loadA, currentA);
    }

    // Volts of the negative bar at the positive take-off's cell above those at the negative take-off.
    private static double AlongNegativeBar(
        ReadOnlySpan<double> negativeLinkOhm, int positiveAt, int negativeAt, double loadA, ReadOnlySpan<double> currentA)
    {
        double volts = 0;
        double flowA = 0;
        int last = Math.Max(positiveAt, negativeAt);
        for (int j = 0; j < last; j++)
        {
            flowA += currentA[j];
            if (j >= positiveAt && j < negativeAt)
                volts -= negativeLinkOhm[j] * flowA;
            else if (j >= negativeAt && j < positiveAt)
                volts -= negativeLinkOhm[j] * (loadA - flowA);
        }

        return volts;
    }
}
