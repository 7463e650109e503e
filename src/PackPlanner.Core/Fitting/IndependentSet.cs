namespace PackPlanner.Core.Fitting;

/// <summary>Largest set of candidates of which no two clash: greedy in many orders, then insertions of two for one with random kicks.</summary>
/// <remarks>Source: [Andrade2012] for the local search.</remarks>
internal sealed class IndependentSet
{
    private readonly int[][] clash;
    private readonly int count;
    private readonly int[] tight;
    private readonly bool[] inside;
    private readonly long[] lastOut;
    private readonly Random random;

    internal IndependentSet(int[][] clash, int seed)
    {
        (this.clash, count, random) = (clash, clash.Length, new Random(seed));
        (tight, inside, lastOut) = (new int[count], new bool[count], new long[count]);
    }

    /// <summary>Which candidates of one slab clash with which; the two axes are those across the slab.</summary>
    internal static int[][] Clashes(IReadOnlyList<Body> bodies, Axis first, Axis second)
    {
        int n = bodies.Count;
        List<Attitude> attitudes = [.. bodies.Select(b => b.Attitude).Distinct()];
        int[] kind = [.. bodies.Select(b => attitudes.IndexOf(b.Attitude))];
        double[,] need1 = Needs(attitudes, first), need2 = Needs(attitudes, second);
        double[] low1 = [.. bodies.Select(b => b.Box.Low(first))], high1 = [.. bodies.Select(b => b.Box.High(first))];
        double[] low2 = [.. bodies.Select(b => b.Box.Low(second))], high2 = [.. bodies.Select(b => b.Box.High(second))];
        int[][] clash = new int[n][];
        const double Eps = Geometry2.RoundingMm / 2;
        // Candidates stand in few columns (one attitude, one place along the first axis): a whole column is apart, or a stretch of it clashes.
        int[][] columns = [.. Enumerable.Range(0, n).GroupBy(j => (kind[j], low1[j])).Select(g => g.OrderBy(j => low2[j]).ToArray())];
        double[][] starts = [.. columns.Select(column => column.Select(j => low2[j]).ToArray())];
        Parallel.For(0, n, i =>
        {
            List<int> with = [];
            for (int c = 0; c < columns.Length; c++)
            {
                int[] column = columns[c];
                int head = column[0], k = kind[head];
                if (low1[head] - high1[i] >= need1[kind[i], k] - Eps || low1[i] - high1[head] >= need1[k, kind[i]] - Eps)
                    continue;
                double reach = high2[head] - low2[head] + need2[k, kind[i]] + Geometry2.RoundingMm;
                int at = Array.BinarySearch(starts[c], low2[i] - reach);
                for (int m = at >= 0 ? at : ~at; m < column.Length; m++)
                {
                    int j = column[m];
                    if (low2[j] - high2[i] >= need2[kind[i], k] - Eps)
                        break;
                    if (j != i && low2[i] - high2[j] < need2[k, kind[i]] - Eps)
                        with.Add(j);
                }
            }

            with.Sort();
            clash[i] = [.. with];
        });
        return clash;
    }

    /// <summary>Gap wanted along an axis from an attitude (row) up to another (column).</summary>
    private static double[,] Needs(List<Attitude> attitudes, Axis axis)
    {
        double[,] needs = new double[attitudes.Count, attitudes.Count];
        for (int a = 0; a < attitudes.Count; a++)
        {
            for (int b = 0; b < attitudes.Count; b++)
                needs[a, b] = Math.Max(attitudes[a].Want(Attitude.Face(axis, true)), attitudes[b].Want(Attitude.Face(axis, false)));
        }

        return needs;
    }

    /// <summary>The largest set found within a number of steps, or one that reaches <paramref name="enough"/>.</summary>
    internal int[] Search(IReadOnlyList<int[]> orders, int steps, int enough, CancellationToken cancel)
    {
        int[] best = [];
        foreach (int[] order in orders)
        {
            Empty();
            foreach (int i in order)
            {
                if (!inside[i] && tight[i] == 0)
                    Insert(i);
            }

            Improve();
            if (Size() > best.Length)
                best = Members();
        }

        Empty();
        foreach (int i in best)
            Insert(i);
        int current = best.Length, sinceBest = 0;
        for (int step = 1; step <= steps && best.Length < enough && !cancel.IsCancellationRequested; step++)
        {
            int[] before = Members();
            Kick(step);
            Improve();
            int size = Size();
            sinceBest++;
            if (size > best.Length)
                (best, sinceBest) = (Members(), 0);
            // Mostly uphill; now and then a step down is kept, and after long vain search the best is taken up again.
            if (size < current && random.Next(1 + ((current - size) * (best.Length - size) * 4)) != 0)
                Restore(before);
            else
                current = size;
            if (sinceBest > 4000)
            {
                Restore(best);
                (current, sinceBest) = (best.Length, 0);
            }
        }

        return best;
    }

    private void Kick(int step)
    {
        int forced = random.Next(2 * Math.Max(1, Size())) == 0 ? 2 + random.Next(3) : 1;
        for (int k = 0; k < forced; k++)
        {
            // Of a few at random, the one longest out: it has the best chance to be new.
            int pick = -1;
            for (int t = 0; t < 4; t++)
            {
                int i = random.Next(count);
                if (!inside[i] && (pick < 0 || lastOut[i] < lastOut[pick]))
                    pick = i;
            }

            if (pick < 0)
                continue;
            foreach (int j in clash[pick])
            {
                if (inside[j])
                    Remove(j, step);
            }

            Insert(pick);
        }

        FillFree();
    }

    private void FillFree()
    {
        int offset = random.Next(count);
        for (int k = 0; k < count; k++)
        {
            int i = (k + offset) % count;
            if (!inside[i] && tight[i] == 0)
                Insert(i);
        }
    }

    /// <summary>Takes one out wherever two that clash only with it, and not with each other, can come in.</summary>
    private void Improve()
    {
        bool improved = true;
        List<int> single = [];
        while (improved)
        {
            improved = false;
            for (int x = 0; x < count && !improved; x++)
            {
                if (!inside[x])
                    continue;
                single.Clear();
                foreach (int j in clash[x])
                {
                    if (tight[j] == 1)
                        single.Add(j);
                }

                improved = single.Count >= 2 && TwoForOne(x, single);
            }
        }
    }

    private bool TwoForOne(int x, List<int> single)
    {
        for (int a = 0; a < single.Count; a++)
        {
            int[] with = clash[single[a]];
            for (int b = a + 1; b < single.Count; b++)
            {
                if (Array.BinarySearch(with, single[b]) >= 0)
                    continue;
                Remove(x, 0);
                Insert(single[a]);
                Insert(single[b]);
                FillFree();
                return true;
            }
        }

        return false;
    }

    private void Insert(int i)
    {
        inside[i] = true;
        foreach (int j in clash[i])
            tight[j]++;
    }

    private void Remove(int i, long step)
    {
        inside[i] = false;
        lastOut[i] = step;
        foreach (int j in clash[i])
            tight[j]--;
    }

    private void Empty()
    {
        Array.Clear(inside);
        Array.Clear(tight);
    }

    private void Restore(int[] members)
    {
        Empty();
        foreach (int i in members)
            Insert(i);
    }

    private int Size() => inside.Count(b => b);

    private int[] Members() => [.. Enumerable.Range(0, count).Where(i => inside[i])];
}
