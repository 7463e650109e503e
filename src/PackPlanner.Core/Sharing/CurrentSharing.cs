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
        NetworkArrays network = NetworkArrays.Of(group);
        double terminalV = network.Solve(loadA);
        double[] currentA = [.. network.CurrentA];
        network.Solve(0);
        double circulatingA = network.CurrentA.Where(current => current > 0).Sum();
        return Share(group.Number, terminalV, currentA, loadA, circulatingA);
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
