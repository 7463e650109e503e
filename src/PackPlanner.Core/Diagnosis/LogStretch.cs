namespace PackPlanner.Core.Diagnosis;

/// <summary>The part of a long log that is fitted.</summary>
/// <remarks>
/// Over a season groups are balanced, age and change their charge against one another; one set of figures would describe no
/// day of it. So of a long log the few days are fitted in which charge moved through the widest window, the latest of equals.
/// </remarks>
/// <param name="First">First row.</param>
/// <param name="Last">Last row.</param>
/// <param name="Whole">Nothing was left out.</param>
internal sealed record LogStretch(int First, int Last, bool Whole)
{
    private const double LongestS = 4 * 86400, LongestCycles = 8, BreakS = 3600, NearlyBest = 0.97;

    /// <summary>Chooses the stretch of a log; none goes across a gap in which charge moved unlogged, given by the first row after it.</summary>
    internal static LogStretch Of(double[] timeS, ChargeCount count, double ratedAh, IReadOnlyList<int> unlogged)
    {
        int rows = timeS.Length;
        double[] movedAh = new double[rows];
        for (int i = 1; i < rows; i++)
            movedAh[i] = movedAh[i - 1] + Math.Abs(count.DrawnAh[i] - count.DrawnAh[i - 1]);
        double mostAh = 2 * LongestCycles * ratedAh;
        if (unlogged.Count == 0 && timeS[^1] - timeS[0] <= LongestS && movedAh[^1] <= mostAh)
            return new LogStretch(0, rows - 1, true);
        List<(int First, int Last, double Low, double High)> parts = Parts(timeS, count, movedAh, mostAh / 2, unlogged);
        (int First, int Last, double Range) best = (0, rows - 1, -1);
        for (int a = 0; a < parts.Count; a++)
        {
            (double low, double high) = (double.PositiveInfinity, double.NegativeInfinity);
            for (int b = a; b < parts.Count; b++)
            {
                if (b > a && (unlogged.Contains(parts[b].First) || timeS[parts[b].Last] - timeS[parts[a].First] > LongestS || movedAh[parts[b].Last] - movedAh[parts[a].First] > mostAh))
                    break;
                (low, high) = (Math.Min(low, parts[b].Low), Math.Max(high, parts[b].High));
                double range = Math.Min(high - low, 1.1 * ratedAh);
                if (range > best.Range || (range >= NearlyBest * best.Range && parts[a].First >= best.First))
                    best = (parts[a].First, parts[b].Last, Math.Max(range, best.Range));
            }
        }
        return new LogStretch(best.First, best.Last, false);
    }

    /// <summary>Cuts where nothing moved for an hour, where charge moved unlogged, and where a part would by itself be too much.</summary>
    private static List<(int First, int Last, double Low, double High)> Parts(double[] timeS, ChargeCount count, double[] movedAh, double mostAh, IReadOnlyList<int> unlogged)
    {
        List<(int, int, double, double)> parts = [];
        HashSet<int> anewAt = [.. unlogged];
        int first = 0, quietFrom = -1;
        (double low, double high) = (count.DrawnAh[0], count.DrawnAh[0]);
        for (int i = 1; i < timeS.Length; i++)
        {
            bool quiet = count.Resting[i] || count.StepS[i] > BreakS;
            if (quiet && quietFrom < 0)
                quietFrom = i - 1;
            bool anew = anewAt.Contains(i);
            bool after = !anew && !quiet && quietFrom >= 0 && timeS[i] - timeS[quietFrom] > BreakS;
            if (anew || after || movedAh[i] - movedAh[first] > mostAh || timeS[i] - timeS[first] > LongestS)
            {
                parts.Add((first, i - 1, low, high));
                // The part begins with the rest before it: a rest is the best reading of charge there is.
                first = after ? i - 1 : i;
                while (after && first > 0 && count.Resting[first - 1] && timeS[i] - timeS[first - 1] < 900)
                    first--;
                (low, high) = (count.DrawnAh[i], count.DrawnAh[i]);
            }
            if (!quiet || anew)
                quietFrom = -1;
            (low, high) = (Math.Min(low, count.DrawnAh[i]), Math.Max(high, count.DrawnAh[i]));
        }
        parts.Add((first, timeS.Length - 1, low, high));
        return parts;
    }
}
