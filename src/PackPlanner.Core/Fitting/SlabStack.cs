namespace PackPlanner.Core.Fitting;

/// <summary>Slabs of boxes one behind another along an axis: which classes, where, and what stands in each.</summary>
internal sealed class SlabStack(Scene scene, IReadOnlyList<Attitude> attitudes, Axis along, CancellationToken cancel)
{
    private readonly Dictionary<string, List<Body>> filled = [];

    internal List<Body> Fill(FitEffort effort, int enough)
    {
        List<SlabClass> classes = SlabClass.Of(attitudes, along);
        List<(SlabClass Class, double Start)> slabs = [.. classes.SelectMany(k => Starts(k, classes).Select(s => (k, s))).OrderBy(s => s.s).ThenBy(s => classes.IndexOf(s.k))];
        int[] quick = [.. slabs.Select(s => Filled(s.Class, s.Start, FitEffort.Quick, enough).Count)];
        List<int> chosen = Choose(slabs, quick);
        if (!effort.IsQuick)
        {
            // The full search may overturn what the quick one chose between classes, so every class in the running is searched.
            int[] full = [.. slabs.Select((s, i) => quick[i] == 0 ? 0 : Filled(s.Class, s.Start, FitEffort.Full, enough).Count)];
            chosen = Choose(slabs, full);
        }

        return [.. chosen.SelectMany(i => Filled(slabs[i].Class, slabs[i].Start, effort, enough))];
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
                double free = slabs[i].Start - slabs[j].Start - slabs[j].Class.Thickness;
                if (value[i] > 0 && free >= slabs[j].Class.GapTo(slabs[i].Class) - Geometry2.RoundingMm && best[j] + value[i] > best[i])
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

    private List<Body> Filled(SlabClass slab, double start, FitEffort effort, int enough)
    {
        int most = effort.IsQuick ? 900 : 5000;
        List<Body> candidates = SlabCandidates.Of(scene, slab, start, most);
        if (candidates.Count == 0)
            return [];
        (Axis first, Axis second) = Axes3.Others(along);
        // Slabs with the same candidates have the same answer, moved along.
        string key = effort.IsQuick + string.Join(';', candidates.Select(b => FormattableString.Invariant($"{b.Centre[first]:R},{b.Centre[second]:R},{attitudes.ToList().IndexOf(b.Attitude)}")));
        if (!filled.TryGetValue(key, out List<Body>? known))
        {
            int[][] clash = IndependentSet.Clashes(candidates, scene.Case.Clearances);
            IndependentSet set = new(clash, seed: 1);
            int steps = effort.IsQuick ? 60 : (int)Math.Clamp(60_000L * effort.MillionSteps / candidates.Count, 200, 200_000);
            int[] picked = set.Search(Orders(candidates), steps, enough, cancel);
            known = [.. picked.Select(i => candidates[i])];
            filled[key] = known;
        }

        double centre = start + (slab.Thickness / 2);
        return [.. known.Select(b => b with { Centre = b.Centre.With(along, centre) })];
    }

    private List<int[]> Orders(List<Body> candidates)
    {
        (Axis first, Axis second) = Axes3.Others(along);
        List<int[]> orders = [];
        foreach ((double p, double q) in new[] { (1.0, 1e-3), (1e-3, 1.0), (-1.0, 1e-3), (1e-3, -1.0), (1.0, 1.0), (-1.0, 1.0), (1.0, -1.0), (-1.0, -1.0) })
        {
            foreach (int favour in new[] { -1, 0, 1 })
            {
                orders.Add([.. Enumerable.Range(0, candidates.Count).OrderBy(i =>
                    (p * (candidates[i].Centre[first] + (Sign(p) * candidates[i].Attitude.Size(first) / 2)))
                    + (q * (candidates[i].Centre[second] + (Sign(q) * candidates[i].Attitude.Size(second) / 2)))
                    + (favour * 1e-2 * candidates[i].Attitude.Size(first))).ThenBy(i => i)]);
            }
        }

        return orders;
    }

    /// <summary>Boxes are ordered by the side that faces the corner from which the fill starts.</summary>
    private static double Sign(double direction) => direction > 0 ? -1 : 1;

    private SortedSet<double> Starts(SlabClass slab, List<SlabClass> classes)
    {
        SortedSet<double> starts = [];
        double[] steps = [.. classes.SelectMany(a => classes.Select(b => a.Thickness + a.GapTo(b))).Distinct()];
        foreach (Prism3 part in scene.Parts)
        {
            (double low, double high) = part.Extent(along);
            List<double> ups = [low], downs = [high];
            if (along != part.Extrusion)
            {
                ups.AddRange(along == part.First ? part.U : part.V);
                downs.AddRange(along == part.First ? part.U : part.V);
            }

            ups.AddRange(scene.Blocks.Select(b => b.Extent(along).High));
            downs.AddRange(scene.Blocks.Select(b => b.Extent(along).Low));
            ups.AddRange(scene.Tubes.Select(t => Math.Max(t.From[along], t.To[along]) + t.Radius));
            downs.AddRange(scene.Tubes.Select(t => Math.Min(t.From[along], t.To[along]) - t.Radius));
            double first = low + slab.WallBelow, last = high - slab.WallAbove - slab.Thickness;
            foreach (double sum in Sums(steps, high - low))
            {
                foreach (SlabClass at in classes)
                {
                    foreach (double up in ups)
                        Add(sum == 0 ? up + slab.WallBelow : up + at.WallBelow + sum, first, last);
                    foreach (double down in downs)
                        Add(sum == 0 ? down - slab.WallAbove - slab.Thickness : down - at.WallAbove - sum - slab.Thickness, first, last);
                }
            }
        }

        const int Most = 60;
        double[] all = [.. starts];
        return all.Length <= Most ? starts : [.. Enumerable.Range(0, Most).Select(i => all[i * (all.Length - 1) / (Most - 1)])];

        void Add(double s, double first, double last)
        {
            s = Math.Round(s, 7);
            if (s >= first - Geometry2.RoundingMm && s <= last + Geometry2.RoundingMm)
                starts.Add(s);
        }
    }

    private static SortedSet<double> Sums(double[] steps, double length)
    {
        SortedSet<double> sums = [0];
        Queue<double> todo = new([0]);
        while (todo.TryDequeue(out double sum) && sums.Count < 200)
        {
            foreach (double step in steps)
            {
                double next = Math.Round(sum + step, 7);
                if (next <= length && sums.Add(next))
                    todo.Enqueue(next);
            }
        }

        return sums;
    }
}
