namespace PackPlanner.Core.Fitting;

/// <summary>One cell in each group: a path through neighbours, fewest free neighbours first, turning back where it is stuck.</summary>
internal static class SeriesPath
{
    /// <summary>Cells in series order; null when none was found within the budget of steps.</summary>
    /// <param name="graph">Which cells a plate can join.</param>
    /// <param name="series">Cells in the path.</param>
    /// <param name="jumpers">Breaks allowed, bridged by cable.</param>
    /// <param name="start">The first cell.</param>
    /// <param name="rank">Breaks ties; the smaller comes first.</param>
    /// <param name="steps">Cells that may be tried.</param>
    internal static int[]? Find(NeighbourGraph graph, int series, int jumpers, int start, double[] rank, int steps)
    {
        int n = graph.Count;
        bool[] used = new bool[n];
        int[] path = new int[series], jumpsAt = new int[series];
        List<int>[] options = new List<int>[series];
        int depth = 0, left = steps;
        path[0] = start;
        used[start] = true;
        options[0] = Options(0);
        while (depth < series - 1)
        {
            if (--left < 0)
                return null;
            List<int> open = options[depth];
            if (open.Count == 0)
            {
                used[path[depth]] = false;
                if (--depth < 0)
                    return null;
                continue;
            }

            int next = open[0];
            open.RemoveAt(0);
            depth++;
            path[depth] = next;
            used[next] = true;
            bool jumped = !graph.Near[path[depth - 1]].Contains(next);
            jumpsAt[depth] = jumpsAt[depth - 1] + (jumped ? 1 : 0);
            options[depth] = Options(depth);
        }

        return path;

        List<int> Options(int at)
        {
            int cell = path[at];
            List<int> open = [.. graph.Near[cell].Where(j => !used[j]).OrderBy(Free).ThenBy(j => rank[j])];
            if (open.Count == 0 && jumpsAt[at] < jumpers)
                open = [.. Enumerable.Range(0, n).Where(j => !used[j]).OrderBy(Free).ThenBy(j => graph.Distance(cell, j)).ThenBy(j => rank[j]).Take(4)];
            return open;
        }

        int Free(int j) => graph.Near[j].Count(k => !used[k]);
    }
}
