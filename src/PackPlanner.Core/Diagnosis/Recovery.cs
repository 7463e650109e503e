using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Diagnosis;

/// <summary>Usable charge of a string of groups now and after repairs, between resting windows.</summary>
/// <remarks>
/// Source: [JiangZhang2015] eqs 6.10-6.14: a string gives min(z C) and takes min((1 - z) C); balanced, it gives min(C).
/// </remarks>
/// <param name="UsableAhNow">As the groups stand against one another.</param>
/// <param name="UsableAhAfterBalance">All groups topped up to full.</param>
/// <param name="UsableAhAfterReplacement">The smallest group replaced by one equal to the median, all balanced.</param>
/// <param name="LimitingNow">The group that empties first, from 1.</param>
/// <param name="ReplacedGroup">The group that would be replaced, from 1.</param>
/// <param name="NextBottleneck">The group that limits after that, from 1.</param>
public sealed record Recovery(
    double UsableAhNow, double UsableAhAfterBalance, double UsableAhAfterReplacement, int LimitingNow, int ReplacedGroup, int NextBottleneck)
{
    /// <summary>Works the three figures out.</summary>
    /// <param name="capacityAh">Ampere-hours of each group, shape [n], n ≥ 1.</param>
    /// <param name="charge">State of charge of each group at one moment, shape [n].</param>
    /// <exception cref="ArgumentException">The shapes differ, or n = 0.</exception>
    public static Recovery Of(IReadOnlyList<double> capacityAh, IReadOnlyList<double> charge)
    {
        if (capacityAh.Count == 0 || capacityAh.Count != charge.Count)
            throw new ArgumentException("As many charges as capacities, and one at least.");
        int n = capacityAh.Count;
        double[] left = [.. Enumerable.Range(0, n).Select(k => charge[k] * capacityAh[k])];
        double[] room = [.. Enumerable.Range(0, n).Select(k => (1 - charge[k]) * capacityAh[k])];
        (double afterAh, int next) = AfterReplacing(capacityAh, 1);
        int smallest = Smallest(capacityAh);
        return new Recovery(left.Min() + room.Min(), capacityAh.Min(), afterAh, Array.IndexOf(left, left.Min()) + 1, smallest + 1, next);
    }

    /// <summary>Usable charge after the smallest groups are replaced by median ones, all balanced, and the group that limits then.</summary>
    /// <param name="capacityAh">Ampere-hours of each group.</param>
    /// <param name="groups">How many are replaced.</param>
    public static (double UsableAh, int NextBottleneck) AfterReplacing(IReadOnlyList<double> capacityAh, int groups)
    {
        double median = Robust.Median([.. capacityAh]);
        double[] after = [.. capacityAh];
        foreach (int k in Enumerable.Range(0, after.Length).OrderBy(k => capacityAh[k]).ThenBy(k => k).Take(groups))
            after[k] = Math.Max(median, after[k]);
        return (after.Min(), Smallest(after) + 1);
    }

    private static int Smallest(IReadOnlyList<double> values)
    {
        int at = 0;
        for (int k = 1; k < values.Count; k++)
            at = values[k] < values[at] ? k : at;
        return at;
    }
}
