namespace PackPlanner.Core.Fitting;

/// <summary>Slabs of boxes one behind another along an axis: which classes, where, and what stands in each.</summary>
internal sealed class SlabStack(Scene scene, IReadOnlyList<Attitude> attitudes, Axis along, CancellationToken cancel)
{
    // Fewer slabs looked at well tell more than many hardly looked at.
    private const long TooLittleEach = 60_000;

    private const int Favours = 3;

    // Directions in which a slab is filled, from its sides and corners.
    private static readonly (double P, double Q)[] Corners = [(1.0, 1e-3), (1e-3, 1.0), (-1.0, 1e-3), (1e-3, -1.0), (1.0, 1.0), (-1.0, 1.0), (1.0, -1.0), (-1.0, -1.0)];

    private readonly Dictionary<string, List<Body>> filled = [];
    private readonly HashSet<string> searched = [];
    private List<(SlabClass Class, double Start)> slabs = [];
    private List<Body>[] candidates = [];
    private string[] keys = [];
    private int[] value = [];

    /// <summary>Proven limits of one slab, for those classes that were searched completely.</summary>
    internal Dictionary<SlabClass, int> Proven { get; } = [];

    /// <summary>How the boxes may stand.</summary>
    internal IReadOnlyList<Attitude> Attitudes => attitudes;

    /// <summary>The axis across the slabs.</summary>
    internal Axis Along => along;

    /// <summary>Boxes in the best stack found so far.</summary>
    internal int Count => Choose(slabs, value).Sum(i => value[i]);

    /// <summary>Places looked at by the quick look, words of their clashes and places in the orders of filling: what it cost.</summary>
    internal long Work { get; private set; }

    /// <summary>Fills every possible slab by a quick look.</summary>
    /// <param name="work">What it may cost at most, about: with more places or slabs an even choice of them is looked at.</param>
    internal void LookQuickly(long work)
    {
        slabs = Slabs(mostStarts: 40);
        if (work / Math.Max(1, slabs.Count) < TooLittleEach)
            slabs = Slabs(mostStarts: 12);
        candidates = new List<Body>[slabs.Count];
        long each = work / 3 / Math.Max(1, slabs.Count);
        int most = (int)Math.Clamp(Math.Sqrt(64.0 * each), 200, 5000);
        long[] looks = new long[slabs.Count];
        Parallel.For(0, slabs.Count, i => candidates[i] = cancel.IsCancellationRequested ? [] : SlabCandidates.Of(scene, slabs[i].Class, slabs[i].Start, most, each, out looks[i]));
        keys = [.. candidates.Select(Key)];
        int[] first = [.. Enumerable.Range(0, slabs.Count).Where(i => Array.IndexOf(keys, keys[i]) == i)];
        List<Body>[] quick = new List<Body>[first.Length];
        Parallel.For(0, first.Length, f => quick[f] = cancel.IsCancellationRequested ? [] : Fill(candidates[first[f]], steps: 0, int.MaxValue));
        Work = looks.Sum() + first.Sum(f => (long)candidates[f].Count * (ClashBits.Words(candidates[f].Count) + (Corners.Length * Favours)));
        for (int f = 0; f < first.Length; f++)
            filled[keys[first[f]]] = quick[f];
        value = [.. keys.Select(k => filled[k].Count)];
    }

    /// <summary>Searches the slabs that the best stacks are made of, the most promising first, until the steps are spent.</summary>
    internal void LookWell(long steps, int enough)
    {
        const int Most = 10;
        // Where one or two slabs are all there is, as in a single layer round a post, they are worth far more steps.
        bool few = keys.Distinct().Take(3).Count() < 3;
        for (int round = 0; round < Most && !cancel.IsCancellationRequested; round++)
        {
            int[] through = Through();
            int best = through.DefaultIfEmpty(0).Max();
            // A slab may hold a few more than the quick look found; further behind it will not be part of the best stack.
            int next = Enumerable.Range(0, slabs.Count)
                .Where(i => value[i] > 0 && through[i] >= best - 2 - (value[i] / 10) && !searched.Contains(keys[i]))
                .OrderByDescending(i => through[i]).ThenByDescending(i => value[i]).FirstOrDefault(-1);
            if (next < 0 || best >= enough)
                return;
            searched.Add(keys[next]);
            int places = Math.Max(1, candidates[next].Count);
            int share = (int)Math.Clamp(steps / 3 / places * (few ? Math.Clamp(8000 / places, 1, 6) : 1), 50, 200_000);
            int slabEnough = RectangleSlab.Applies(scene) ? RectangleSlab.AreaBound(scene, slabs[next].Class) : int.MaxValue;
            Keep(next, Fill(candidates[next], share, slabEnough));
            if (RectangleSlab.Applies(scene))
            {
                (List<Body> better, int proven) = RectangleSlab.Search(scene, slabs[next].Class, filled[keys[next]].Count, steps / 5, cancel);
                Keep(next, better);
                Proven[slabs[next].Class] = proven;
            }

            value = [.. keys.Select(k => filled[k].Count)];
        }
    }

    private List<(SlabClass Class, double Start)> Slabs(int mostStarts)
    {
        List<SlabClass> classes = SlabClass.Of(attitudes, along);
        return [.. classes.SelectMany(k => SlabStarts.Of(scene, k, classes, mostStarts).Select(s => (k, s))).OrderBy(s => s.s).ThenBy(s => classes.IndexOf(s.k))];
    }

    private void Keep(int slab, List<Body> found)
    {
        if (found.Count > filled[keys[slab]].Count)
            filled[keys[slab]] = found;
    }

    /// <summary>The boxes of the best stack.</summary>
    internal List<Body> Bodies() => [.. Choose(slabs, value).SelectMany(i =>
    {
        double centre = slabs[i].Start + (slabs[i].Class.Thickness / 2);
        return filled[keys[i]].Select(b => b with { Centre = b.Centre.With(along, centre) });
    })];

    /// <summary>For each slab, the boxes in the best stack that it is part of.</summary>
    private int[] Through()
    {
        int n = slabs.Count;
        int[] up = new int[n], down = new int[n];
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < i; j++)
                up[i] = Math.Max(up[i], Clear(slabs[j], slabs[i]) ? up[j] : 0);
            up[i] += value[i];
        }

        for (int i = n - 1; i >= 0; i--)
        {
            for (int j = i + 1; j < n; j++)
                down[i] = Math.Max(down[i], Clear(slabs[i], slabs[j]) ? down[j] : 0);
            down[i] += value[i];
        }

        return [.. Enumerable.Range(0, n).Select(i => up[i] + down[i] - value[i])];
    }

    private static bool Clear((SlabClass Class, double Start) below, (SlabClass Class, double Start) above) =>
        above.Start - below.Start - below.Class.Thickness >= below.Class.GapTo(above.Class) - Geometry2.RoundingMm;

    /// <summary>Alike for slabs with the same candidates, which then have the same answer, moved along.</summary>
    private string Key(List<Body> bodies)
    {
        (Axis first, Axis second) = Axes3.Others(along);
        System.Text.StringBuilder key = new();
        foreach (Body b in bodies)
            key.Append(System.Globalization.CultureInfo.InvariantCulture, $"{b.Centre[first]:R},{b.Centre[second]:R},{b.Attitude.TerminalFace}{b.Attitude.ThicknessAlong};");
        return key.ToString();
    }

    private List<Body> Fill(List<Body> places, int steps, int enough)
    {
        if (places.Count == 0)
            return [];
        (Axis first, Axis second) = Axes3.Others(along);
        IndependentSet set = new(ClashBits.Of(places, first, second), places.Count, seed: 1);
        return [.. set.Search(Orders(places), steps, enough, cancel).Select(i => places[i])];
    }

    private static List<int> Choose(List<(SlabClass Class, double Start)> slabs, int[] value)
    {
        int n = slabs.Count;
        int[] best = new int[n], before = new int[n];
        int last = -1;
        for (int i = 0; i < n; i++)
        {
            (best[i], before[i]) = (value[i], -1);
            for (int j = 0; j < i; j++)
            {
                if (value[i] > 0 && Clear(slabs[j], slabs[i]) && best[j] + value[i] > best[i])
                    (best[i], before[i]) = (best[j] + value[i], j);
            }

            if (last < 0 || best[i] > best[last])
                last = i;
        }

        List<int> chosen = [];
        for (int i = last; i >= 0 && value[i] > 0; i = before[i])
            chosen.Add(i);
        chosen.Reverse();
        return chosen;
    }

    private List<int[]> Orders(List<Body> candidates)
    {
        (Axis first, Axis second) = Axes3.Others(along);
        List<int[]> orders = [];
        foreach ((double p, double q) in Corners)
        {
            for (int favour = -1; favour < Favours - 1; favour++)
            {
                double[] ranks = new double[candidates.Count];
                for (int i = 0; i < ranks.Length; i++)
                {
                    (PointMm centre, Attitude attitude) = (candidates[i].Centre, candidates[i].Attitude);
                    ranks[i] = (p * (centre[first] + (Sign(p) * attitude.Size(first) / 2)))
                        + (q * (centre[second] + (Sign(q) * attitude.Size(second) / 2)))
                        + (favour * 1e-2 * attitude.Size(first));
                }

                orders.Add(Ranked(ranks));
            }
        }

        return orders;
    }

    /// <summary>Indexes by rising rank, those of equal rank by rising index.</summary>
    private static int[] Ranked(double[] ranks)
    {
        int[] order = [.. Enumerable.Range(0, ranks.Length)];
        Array.Sort(ranks, order);
        for (int from = 0, to; from < order.Length; from = to)
        {
            for (to = from + 1; to < order.Length && ranks[to] == ranks[from];)
                to++;
            Array.Sort(order, from, to - from);
        }

        return order;
    }

    /// <summary>Boxes are ordered by the side that faces the corner from which the fill starts.</summary>
    private static double Sign(double direction) => direction > 0 ? -1 : 1;
}
