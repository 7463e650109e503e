namespace PackPlanner.Core.Fitting;

/// <summary>
/// Finds groups of equal size, each in one piece and each beside the next: as many cells in a group as possible, then short plates, then
/// the widest narrowest link.
/// </summary>
internal static class GroupPlanner
{
    private const double LongPlates = 1.05;
    private const int SmallGroup = 16;
    private const int Polished = 8;
    private const int PolishMoves = 100_000;

    /// <summary>The best plan found; null when not even one cell in each group can be linked in series.</summary>
    /// <param name="graph">Which cells a plate can join.</param>
    /// <param name="series">Groups wanted, at least 1.</param>
    /// <param name="largest">Cells in a group at most.</param>
    /// <param name="smallest">Cells in a group at least.</param>
    /// <param name="jumpers">Links that may be made by cable.</param>
    /// <param name="anglesRad">Directions of the rows, tried beside 0, 30, 60, 90 degrees.</param>
    /// <param name="cancel">Stops the search; the best so far is kept.</param>
    internal static GroupPlan? Plan(
        NeighbourGraph graph, int series, int largest, int smallest, int jumpers, IReadOnlyList<double> anglesRad, CancellationToken cancel)
    {
        largest = Math.Min(largest, LargestByPieces(graph, series, largest, jumpers));
        if (largest < Math.Max(1, smallest))
            return null;
        double[][] orders = [.. SweepOrders.Of(graph.Bodies, Angles(anglesRad))];
        for (int parallel = largest; parallel >= Math.Max(1, smallest); parallel--)
        {
            List<int[]> valid = parallel == 1
                ? Shortened(graph, Paths(graph, series, jumpers, orders, Math.Clamp(4_000_000 / Math.Max(1, series * graph.Count), 40, 600), cancel), cancel)
                : Grown(graph, series, parallel, jumpers, orders, cancel);
            if (valid.Count > 0)
                return parallel == 1 ? Choose(graph, valid, series, parallel) : Polish(graph, Choose(graph, valid, series, parallel), valid, series, cancel);
            if (cancel.IsCancellationRequested)
                return AtOnce(graph, series, parallel, Math.Max(1, smallest), jumpers, orders);
        }

        return null;
    }

    /// <summary>What a search that was stopped can still group: an even choice of the sweeps, ever smaller groups until some can be linked.</summary>
    private static GroupPlan? AtOnce(NeighbourGraph graph, int series, int largest, int smallest, int jumpers, double[][] orders)
    {
        int few = Math.Clamp(150_000 / graph.Count, 8, orders.Length);
        double[][] chosen = [.. Enumerable.Range(0, few).Select(o => orders[o * orders.Length / few])];
        for (int parallel = largest; parallel >= smallest; parallel -= Math.Max(1, parallel / 12))
        {
            List<int[]> valid = parallel == 1
                ? [.. Paths(graph, series, jumpers, chosen, tries: Math.Clamp(1_000_000 / (series * graph.Count), 20, 200), CancellationToken.None).Select(p => Numbered(graph, p))]
                : [.. Swept(graph, series, parallel, jumpers, chosen, CancellationToken.None).Select(s => s.Completed == series ? s.GroupOf : null).OfType<int[]>()];
            if (valid.Count > 0)
                return Choose(graph, [.. valid.Take(8)], series, parallel);
        }

        return null;
    }

    /// <summary>What the pieces of the graph allow: a group lies in one piece, and only so many pieces may be joined by cable.</summary>
    private static int LargestByPieces(NeighbourGraph graph, int series, int largest, int jumpers)
    {
        List<int> sizes = [.. graph.Pieces(_ => true).Sizes.OrderDescending().Take(jumpers + 1)];
        while (largest > 0 && sizes.Sum(s => s / largest) < series)
            largest--;
        return largest;
    }

    private static List<double> Angles(IReadOnlyList<double> given)
    {
        List<double> angles = [0, Math.PI / 2, Math.PI / 6, Math.PI / 3, Math.PI * 2 / 3, Math.PI * 5 / 6, Math.PI / 4, Math.PI * 3 / 4];
        foreach (double angle in given.SelectMany(a => new[] { a, a + (Math.PI / 3), a + (2 * Math.PI / 3), a + (Math.PI / 2) }))
        {
            double a = angle % Math.PI;
            if (!angles.Any(known => Math.Abs(known - a) < 1e-3))
                angles.Add(a);
        }

        return angles;
    }

    private static List<int[]> Grown(
        NeighbourGraph graph, int series, int parallel, int jumpers, double[][] orders, CancellationToken cancel)
    {
        (int[]? GroupOf, int Completed)[] found = Swept(graph, series, parallel, jumpers, orders, cancel);
        List<int[]> valid = [.. found.Select(f => f.Completed == series ? f.GroupOf : null).OfType<int[]>()];
        if (valid.Count > 0)
            return valid;
        // No plain sweep did it: shuffle the best ones a little.
        int tries = Math.Clamp(400_000 / Math.Max(1, graph.Count), 60, 2000);
        int[] best = [.. Enumerable.Range(0, orders.Length).OrderByDescending(o => found[o].Completed).ThenBy(o => o).Take(20)];
        int[]?[] shuffled = new int[tries][];
        double step = graph.SmallestMm ?? 1;
        Parallel.For(0, tries, t =>
        {
            if (cancel.IsCancellationRequested)
                return;
            Random random = new(t);
            double noise = step * (0.2 + (2.0 * t / tries));
            double[] rank = [.. orders[best[t % best.Length]].Select(r => r + (noise * random.NextDouble()))];
            (int[] groupOf, int done) = GroupGrower.Grow(graph, rank, series, parallel, jumpers);
            shuffled[t] = done == series ? groupOf : null;
        });
        return [.. shuffled.OfType<int[]>()];
    }

    /// <summary>Groups grown along each order; none where the search was stopped before.</summary>
    private static (int[]? GroupOf, int Completed)[] Swept(
        NeighbourGraph graph, int series, int parallel, int jumpers, double[][] orders, CancellationToken cancel)
    {
        (int[]?, int)[] found = new (int[]?, int)[orders.Length];
        Parallel.For(0, orders.Length, o => found[o] = cancel.IsCancellationRequested ? (null, 0) : GroupGrower.Grow(graph, orders[o], series, parallel, jumpers));
        return found;
    }

    /// <summary>The shortest paths of different starts, each shortened in its own way.</summary>
    private static List<int[]> Shortened(NeighbourGraph graph, IEnumerable<int[]> paths, CancellationToken cancel)
    {
        int[][] shortest = [.. paths.OrderBy(path => PathPolish.Length(graph, path)).Take(Polished)];
        int[][] polished = new int[shortest.Length][];
        Parallel.For(0, shortest.Length, i => polished[i] = cancel.IsCancellationRequested ? shortest[i] : PathPolish.Shorten(graph, shortest[i], seed: i, PolishMoves));
        return [.. polished.Select(path => Numbered(graph, path))];
    }

    private static int[] Numbered(NeighbourGraph graph, int[] path)
    {
        int[] groupOf = new int[graph.Count];
        for (int k = 0; k < path.Length; k++)
            groupOf[path[k]] = k + 1;
        return groupOf;
    }

    private static IEnumerable<int[]> Paths(NeighbourGraph graph, int series, int jumpers, double[][] orders, int tries, CancellationToken cancel)
    {
        int[]?[] found = new int[tries][];
        Parallel.For(0, tries, t =>
        {
            if (cancel.IsCancellationRequested)
                return;
            Random random = new(t);
            double[] rank = t < orders.Length ? orders[t] : [.. Enumerable.Range(0, graph.Count).Select(_ => random.NextDouble())];
            int start = t < orders.Length ? Array.IndexOf(rank, rank.Min()) : random.Next(graph.Count);
            found[t] = SeriesPath.Find(graph, series, jumpers, start, rank, steps: 4 * series + 200);
        });
        return found.OfType<int[]>();
    }

    /// <summary>Shortens the plates of small groups, where boxes of unequal sides make the sweeps' plates long.</summary>
    private static GroupPlan Polish(NeighbourGraph graph, GroupPlan chosen, List<int[]> valid, int series, CancellationToken cancel)
    {
        if (!(chosen.BusbarRatio > LongPlates) || chosen.Parallel > SmallGroup)
            return chosen;
        // The exchanges cost about the square of the group; four starts: the one chosen and the three shortest beside it.
        int moves = Math.Min(400_000, 12_000_000 / (chosen.Parallel * chosen.Parallel));
        int[][] starts = [chosen.GroupOf, .. valid.OrderBy(g => LinkMeasures.BusbarRatio(graph, g, series, LinkMeasures.Pairs(graph, g, series))).Take(3)];
        int[][] shorter = new int[starts.Length][];
        Parallel.For(0, starts.Length, i => shorter[i] = GroupPolish.Shorten(graph, starts[i], series, seed: i, moves, cancel));
        return Choose(graph, [.. shorter], series, chosen.Parallel);
    }

    private static GroupPlan Choose(NeighbourGraph graph, List<int[]> valid, int series, int parallel)
    {
        int most = Math.Min(valid.Count, Math.Max(30, 40_000_000 / Math.Max(1, graph.Count * parallel * 4)));
        List<(int[] GroupOf, int[] Pairs)> measured = [.. valid.Select(g => (g, LinkMeasures.Pairs(graph, g, series)))
            .OrderBy(v => v.Item2.Count(p => p == 0)).ThenByDescending(v => v.Item2.Where(p => p > 0).DefaultIfEmpty(0).Min()).Take(most)];
        GroupPlan[] plans = new GroupPlan[measured.Count];
        Parallel.For(0, plans.Length, i => plans[i] = new GroupPlan(
            measured[i].GroupOf, parallel, measured[i].Pairs, LinkMeasures.BusbarRatio(graph, measured[i].GroupOf, series, measured[i].Pairs)));
        // Plates a twentieth longer than the shortest are allowed for a wider link; cables are the last resort.
        int jumpers = plans.Min(p => p.Jumpers);
        double shortest = plans.Where(p => p.Jumpers == jumpers).Min(p => p.BusbarRatio ?? 1);
        return plans.Where(p => p.Jumpers == jumpers && (p.BusbarRatio ?? 1) <= (1.05 * shortest) + 1e-9)
            .OrderByDescending(p => p.Narrowest).ThenBy(p => p.BusbarRatio ?? 1).First();
    }
}
