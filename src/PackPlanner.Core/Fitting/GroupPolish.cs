namespace PackPlanner.Core.Fitting;

/// <summary>
/// Shortens the plates of groups of a few cells: a cell at the border goes to the group beside it, which gives one back, or a spare takes the
/// place of a member. Worse steps are taken less and less often (annealing). Groups stay in one piece, links stay, and none gets narrower
/// than the narrowest was.
/// </summary>
/// <remarks>Source: [Kirkpatrick1983] for the annealing.</remarks>
internal sealed class GroupPolish
{
    private readonly NeighbourGraph graph;
    private readonly int series;
    private readonly int parallel;
    private readonly int[] groupOf;
    private readonly int[][] members;
    private readonly int[] pairs;
    private readonly int narrowest;
    private readonly double[] plate;
    private readonly Random random;

    private GroupPolish(NeighbourGraph graph, int[] groupOf, int series, int seed)
    {
        (this.graph, this.series, this.groupOf, random) = (graph, series, [.. groupOf], new Random(seed));
        members = [.. Enumerable.Range(0, series + 1).Select(g => Enumerable.Range(0, groupOf.Length).Where(i => groupOf[i] == g).ToArray())];
        parallel = members[1].Length;
        pairs = LinkMeasures.Pairs(graph, groupOf, series);
        narrowest = pairs.Where(p => p > 0).DefaultIfEmpty(1).Min();
        plate = [.. Enumerable.Range(0, series + 1).Select(Plate)];
    }

    /// <summary>Group numbers with plates no longer than before.</summary>
    internal static int[] Shorten(NeighbourGraph graph, int[] groupOf, int series, int seed, int moves, CancellationToken cancel)
    {
        GroupPolish polish = new(graph, groupOf, series, seed);
        double length = polish.plate.Sum(), best = length, step = graph.SmallestMm ?? 1;
        int[] bestOf = [.. groupOf];
        for (int move = 0; move < moves; move++)
        {
            if ((move & 1023) == 0 && cancel.IsCancellationRequested)
                break;
            length += polish.Move(Annealing.Heat(step, move, moves));
            if (length >= best - 1e-9)
                continue;
            best = length;
            polish.groupOf.CopyTo(bestOf, 0);
        }

        return bestOf;
    }

    /// <summary>Tries one exchange; by how much the plates grew, 0 when it was not made.</summary>
    private double Move(double heat)
    {
        int a = random.Next(graph.Count);
        if (graph.Near[a].Length == 0)
            return 0;
        int b = graph.Near[a][random.Next(graph.Near[a].Length)], g = groupOf[a], h = groupOf[b];
        if (g == 0 || g == h)
            return 0;
        // b comes to the group of a, which gives any other of its cells.
        int c = members[g][random.Next(parallel)];
        if (c == a && parallel > 1)
            return 0;
        Exchange(b, c);
        double change = 0;
        Span<int> touched = stackalloc int[4];
        int n = Touched(g, h, touched);
        Span<double> plates = stackalloc double[4];
        bool holds = InOnePiece(g) && (h == 0 || InOnePiece(h)) && LinksHold(g, h);
        if (holds)
        {
            for (int t = 0; t < n; t++)
            {
                plates[t] = Plate(touched[t]);
                change += plates[t] - plate[touched[t]];
            }

            holds = Annealing.Takes(change, heat, random);
        }

        if (!holds)
        {
            Exchange(c, b);
            return 0;
        }

        for (int t = 0; t < n; t++)
            plate[touched[t]] = plates[t];
        foreach (int k in (ReadOnlySpan<int>)[g - 1, g, h - 1, h])
        {
            if (k >= 1 && k < series)
                pairs[k - 1] = PairsAfter(k);
        }

        return change;
    }

    /// <summary>Swaps the groups of two cells.</summary>
    private void Exchange(int b, int c)
    {
        (int g, int h) = (groupOf[c], groupOf[b]);
        members[g][Array.IndexOf(members[g], c)] = b;
        members[h][Array.IndexOf(members[h], b)] = c;
        (groupOf[b], groupOf[c]) = (g, h);
    }

    /// <summary>Plates are counted 0 (minus end of the first group), k (group k to the next), series (plus end of the last).</summary>
    private static int Touched(int g, int h, Span<int> touched)
    {
        int n = 0;
        foreach (int k in (ReadOnlySpan<int>)[g - 1, g, h - 1, h])
        {
            if (k >= 0 && !(h == 0 && k == 0 && g != 1) && !touched[..n].Contains(k))
                touched[n++] = k;
        }

        return n;
    }

    private double Plate(int k)
    {
        if (k == 0 || k == series)
            return LinkMeasures.Tree(graph, members[Math.Max(1, k)]);
        return pairs[k - 1] == 0 ? 0 : LinkMeasures.Tree(graph, [.. members[k], .. members[k + 1]]);
    }

    private bool LinksHold(int g, int h)
    {
        foreach (int k in (ReadOnlySpan<int>)[g - 1, g, h - 1, h])
        {
            if (k >= 1 && k < series && pairs[k - 1] > 0 && PairsAfter(k) < narrowest)
                return false;
        }

        return true;
    }

    /// <summary>Neighbouring pairs between group k and the next.</summary>
    private int PairsAfter(int k)
    {
        int sum = 0;
        foreach (int i in members[k])
        {
            foreach (int j in graph.Near[i])
                sum += groupOf[j] == k + 1 ? 1 : 0;
        }

        return sum;
    }

    private bool InOnePiece(int g)
    {
        int[] cells = members[g];
        Span<int> order = stackalloc int[parallel];
        Span<bool> seen = stackalloc bool[parallel];
        order[0] = 0;
        seen[0] = true;
        int known = 1;
        for (int at = 0; at < known; at++)
        {
            foreach (int j in graph.Near[cells[order[at]]])
            {
                int index = groupOf[j] == g ? Array.IndexOf(cells, j) : -1;
                if (index < 0 || seen[index])
                    continue;
                seen[index] = true;
                order[known++] = index;
            }
        }

        return known == parallel;
    }
}
