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
        double sum = Tree(graph, members[1]) + Tree(graph, members[series]);
        for (int k = 1; k < series; k++)
        {
            if (pairs[k - 1] > 0)
                sum += Tree(graph, [.. members[k], .. members[k + 1]]);
        }

        return sum / least;
    }

    /// <summary>Length of the minimum spanning tree over centres, millimetres (Prim, all pairs).</summary>
    private static double Tree(NeighbourGraph graph, List<int> cells)
    {
        int n = cells.Count;
        double[] near = new double[n];
        bool[] done = new bool[n];
        Array.Fill(near, double.PositiveInfinity);
        double sum = 0;
        int at = 0;
        for (int step = 1; step < n; step++)
        {
            done[at] = true;
            int next = -1;
            for (int i = 0; i < n; i++)
            {
                if (done[i])
                    continue;
                near[i] = Math.Min(near[i], graph.Distance(cells[at], cells[i]));
                if (next < 0 || near[i] < near[next])
                    next = i;
            }

            sum += near[next];
            at = next;
        }

        return sum;
    }
}
