using System.Buffers;

namespace PackPlanner.Core.Sharing;

/// <summary>Who carries what in a parallel group.</summary>
public static class CurrentSharing
{
    /// <summary>Divides a load at its first instant.</summary>
    /// <param name="group">The cells, bars and take-off points.</param>
    /// <param name="loadA">Amperes, discharge positive.</param>
    /// <returns>Currents, terminal volts, the hardest-worked cell, and what circulates without a load.</returns>
    /// <exception cref="ArgumentException">Shapes differ, a resistance is not above zero, a link is negative, or a take-off is not a cell.</exception>
    public static GroupShare AtFirstInstant(ParallelCells group, double loadA)
    {
        NetworkArrays.Check(group);
        int n = group.Cells.Count;
        // One block that is lent and given back: fresh arrays of a large group go to the heap of large objects, and its
        // collections made a hundred thousand cells take three times as long for each cell as a thousand.
        double[] lent = ArrayPool<double>.Shared.Rent(5 * n + CurrentDivider.ScratchLength(n));
        try
        {
            return Share(group, loadA, lent.AsSpan(0, n), lent.AsSpan(n, n), lent.AsSpan(2 * n, n), lent.AsSpan(3 * n));
        }
        finally
        {
            ArrayPool<double>.Shared.Return(lent);
        }
    }

    private static GroupShare Share(
        ParallelCells group, double loadA, Span<double> openCircuitV, Span<double> resistanceOhm, Span<double> idleA, Span<double> rest)
    {
        int n = openCircuitV.Length;
        for (int i = 0; i < n; i++)
        {
            CellBranch cell = group.Cells[i];
            (openCircuitV[i], resistanceOhm[i]) = (cell.OpenCircuitV, cell.ResistanceMilliohm / 1000);
        }

        Span<double> positiveOhm = Links(group.PositiveLinkMilliohm, rest);
        Span<double> negativeOhm = Links(group.NegativeLinkMilliohm, rest[positiveOhm.Length..]);
        Span<double> scratch = rest[(positiveOhm.Length + negativeOhm.Length)..];
        (int positiveAt, int negativeAt) = (group.PositiveAt - 1, group.NegativeAt - 1);
        double[] currentA = new double[n];
        double terminalV = CurrentDivider.Solve(openCircuitV, resistanceOhm, positiveOhm, negativeOhm, positiveAt, negativeAt, loadA, currentA, scratch);
        CurrentDivider.Solve(openCircuitV, resistanceOhm, positiveOhm, negativeOhm, positiveAt, negativeAt, 0, idleA, scratch);
        double circulatingA = 0;
        foreach (double idle in idleA)
            circulatingA += Math.Max(0, idle);
        return Share(group.Number, terminalV, currentA, loadA, circulatingA);
    }

    private static Span<double> Links(IReadOnlyList<double> milliohm, Span<double> ohm)
    {
        for (int i = 0; i < milliohm.Count; i++)
            ohm[i] = milliohm[i] / 1000;
        return ohm[..milliohm.Count];
    }

    internal static GroupShare Share(int group, double terminalV, double[] currentA, double loadA, double circulatingA)
    {
        int worst = 0;
        for (int i = 1; i < currentA.Length; i++)
            if (Math.Abs(currentA[i]) > Math.Abs(currentA[worst]))
                worst = i;
        double? timesEqual = loadA == 0 ? null : currentA[worst] * currentA.Length / loadA;
        return new GroupShare(group, terminalV, currentA, worst, timesEqual, circulatingA);
    }
}
