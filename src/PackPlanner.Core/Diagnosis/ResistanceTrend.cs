using PackPlanner.Core.Cells;
using static System.FormattableString;

namespace PackPlanner.Core.Diagnosis;

/// <summary>What resistance is usual at each place of the string, where it goes up and down along the string as temperature does.</summary>
/// <param name="Share">Usual resistance over the median group's; 1 everywhere in a pack without a trend; shape [groups].</param>
/// <param name="Spread">How far groups scatter about that, one standard deviation that a few odd ones do not move.</param>
/// <param name="Notes">What to tell of it.</param>
internal sealed record ResistanceTrend(double[] Share, double Spread, IReadOnlyList<string> Notes)
{
    // Three neighbours to each side: up to three bad groups in a row do not move their middle.
    private const int Reach = 3, LeastGroups = 8;

    // A trend is believed where it takes most of the scatter away, and only where there is scatter to speak of (our choice).
    private const double Explains = 0.6, LeastScatter = 0.04;

    /// <summary>Looks for a trend.</summary>
    internal static ResistanceTrend Of(IReadOnlyList<GroupEstimate> groups)
    {
        double[] share = [.. groups.Select(g => g.TotalShare)], level = [.. share.Select(_ => 1.0)];
        double scatter = Robust.Scatter(share);
        if (groups.Count < LeastGroups || scatter < LeastScatter)
            return new ResistanceTrend(level, groups.Count < 6 ? 0 : scatter, Hidden(scatter));
        double[] along = [.. Enumerable.Range(0, share.Length).Select(k => Usual(share, k))];
        double about = Robust.Scatter([.. share.Select((s, k) => s / along[k])]);
        if (about > Explains * scatter)
            return new ResistanceTrend(level, scatter, Hidden(scatter));
        (int low, int high) = (Array.IndexOf(along, along.Min()), Array.IndexOf(along, along.Max()));
        return new ResistanceTrend(along, about,
        [
            Invariant($"resistance rises along the string from group {low + 1} to group {high + 1} by {100 * ((along[high] / along[low]) - 1):f0} %, as where a part of the pack is cooler; each group is judged against its neighbours"),
            .. Hidden(about),
        ]);
    }

    /// <summary>The middle of a group's neighbours; at an end, where they all stand on one side, their straight line.</summary>
    /// <remarks>The group itself is left out: it must not excuse itself, nor make the scatter about the trend look small.</remarks>
    private static double Usual(double[] share, int k)
    {
        int from = Math.Max(0, k - Reach), to = Math.Min(share.Length - 1, k + Reach);
        if (k - from == to - k)
            return Robust.Median([.. share[from..k], .. share[(k + 1)..(to + 1)]]);
        // Theil and Sen: the median slope between any two, which one bad group does not turn.
        (from, to) = from == 0 ? (0, 2 * Reach) : (share.Length - 1 - (2 * Reach), share.Length - 1);
        int[] near = [.. Enumerable.Range(from, to - from + 1).Where(i => i != k)];
        double slope = Robust.Median([.. near.SelectMany(i => near.Where(j => j > i).Select(j => (share[j] - share[i]) / (j - i)))]);
        return Math.Max(0.3, Robust.Median([.. near.Select(i => share[i] - (slope * (i - k)))]));
    }

    private static string[] Hidden(double spread) => 4 * spread <= Verdicts.HighTotal ? [] :
        [Invariant($"the groups' resistances scatter by {100 * spread:f0} %, so that a bad joint or worn group is told only beyond {400 * spread:f0} %")];
}
