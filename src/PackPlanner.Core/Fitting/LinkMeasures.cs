namespace PackPlanner.Core.Fitting;

/// <summary>How good the links of a grouping are.</summary>
internal static class LinkMeasures
{
    /// <summary>Neighbouring pairs between each group and the next; shape [series - 1].</summary>
    internal static int[] Pairs(NeighbourGraph graph, int[] groupOf, int series)
    {
        int[] pairs = new int[Math.Max(0, series - 1)];
        for (int i = 0; i < groupOf.Length; i++)
        {
            int g = groupOf[i];
            if (g == 0 || g == series)
                continue;
            pairs[g - 1] += graph.Near[i].Count(j => groupOf[j] == g + 1);
        }

        return pairs;
    }

    /// <summary>
    /// Length of all plates, as minimum spanning trees over the centres that each joins (first group, each pair, last group; cable links
    /// left out), over the least that any layout with this nearest distance could need. Null when there is nothing to join.
    /// </summary>
    internal static double? BusbarRatio(NeighbourGraph graph, int[] groupOf, int series, int[] pairs)
    {
        List<int>[] members = [.. Enumerable.Range(0, series + 1).Select(_ => new List<int>())];
        for (int i = 0; i < groupOf.Length; i++)
            members[groupOf[i]].Add(i);
        int parallel = members[Math.Min(1, series)].Count, jumped = pairs.Count(p => p == 0);
        double least = ((2.0 * (parallel - 1)) + ((series - 1.0 - jumped) * ((2.0 * parallel) - 1))) * (graph.SmallestMm ?? 0);
        if (least <= 0)
            return null;
        double sum = Tree(graph, [.. members[1]]) + Tree(graph, [.. members[series]]);
        for (int k = 1; k < series; k++)
        {
            if (pairs[k - 1] > 0)
                sum += Tree(graph, [.. members[k], .. members[k + 1]]);
        }

        return sum / least;
    }

    /// <summary>Length of the minimum spanning tree over centres, millimetres (Prim, all pairs).</summary>
    internal static double Tree(NeighbourGraph graph, ReadOnlySpan<int> cells)
    {
        const int Few = 256;
        int n = cells.Length;
        Span<double> near = n <= Few ? stackalloc double[Few] : new double[n];
        Span<int> open = n <= Few ? stackalloc int[Few] : new int[n];
        for (int i = 0; i < n; i++)
            (near[i], open[i]) = (double.PositiveInfinity, cells[i]);
        double sum = 0;
        // The cells still to be joined stand at the front; the one joined last is replaced by the last of them.
        for (int left = n - 1, at = n > 0 ? open[0] : 0, hole = 0; left > 0; left--)
        {
            (open[hole], near[hole]) = (open[left], near[left]);
            int next = 0;
            for (int i = 0; i < left; i++)
            {
                near[i] = Math.Min(near[i], graph.Distance(at, open[i]));
                next = near[i] < near[next] ? i : next;
            }

            sum += near[next];
            (at, hole) = (open[next], next);
        }

        return sum;
    }
}
