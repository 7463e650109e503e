namespace PackPlanner.Core.Fitting;

/// <summary>
/// Closes up boxes towards a corner, so that those left against opposite walls become neighbours, and ranks layouts of equal count by how
/// short the plates through them can be.
/// </summary>
internal static class BoxClosing
{
    private const double StepMm = 0.5;
    private const int Kept = 6;

    /// <summary>The fullest layouts, as found and pushed into each corner, the tidiest first; then the others.</summary>
    internal static IReadOnlyList<Layout> Ranked(Scene scene, IReadOnlyList<Layout> layouts, CancellationToken cancel)
    {
        int most = layouts[0].Bodies.Count;
        if (most < 2)
            return layouts;
        Layout[] full = [.. layouts.Where(l => l.Bodies.Count == most)];
        List<Layout> ways = [.. full];
        foreach (Layout layout in full)
        {
            for (int corner = 0; corner < 8 && !cancel.IsCancellationRequested; corner++)
                ways.Add(layout with { Bodies = Pushed(scene, layout.Bodies, corner) });
        }

        FitCase c = scene.Case;
        return
        [
            .. ways.Select((way, i) => (Way: way, Index: i, Loose: Looseness(NeighbourGraph.Of(way.Bodies, c.Clearances, c.LinkReachMm))))
                .DistinctBy(w => Math.Round(w.Loose, 3)).OrderBy(w => w.Loose).ThenBy(w => w.Index).Take(Kept).Select(w => w.Way),
            .. layouts.Where(l => l.Bodies.Count < most),
        ];
    }

    /// <summary>Mean distance from a cell to the two nearest of its neighbours: about the length of one link of a path through all cells.</summary>
    private static double Looseness(NeighbourGraph graph)
    {
        double sum = 0, far = 4 * Axes3.All.Max(graph.Bodies[0].Attitude.Size);
        for (int i = 0; i < graph.Count; i++)
        {
            double[] near = [.. graph.Near[i].Select(j => graph.Distance(i, j)).Order().Take(2)];
            sum += near.Sum() + (far * (2 - near.Length));
        }

        return sum / (2 * graph.Count);
    }

    /// <summary>Every box pushed along x, y, z in turn until nothing moves; the bits of the corner say towards which ends.</summary>
    private static Body[] Pushed(Scene scene, IReadOnlyList<Body> given, int corner)
    {
        const int Most = 12;
        Body[] bodies = [.. given];
        bool moved = true;
        for (int round = 0; round < Most && moved; round++)
        {
            moved = false;
            foreach (Axis axis in Axes3.All)
            {
                int sign = (corner & (1 << (int)axis)) == 0 ? -1 : 1;
                foreach (int i in Enumerable.Range(0, bodies.Length).OrderBy(i => -sign * bodies[i].Centre[axis]).ThenBy(i => i).ToArray())
                {
                    double by = FreeWay(scene, bodies, i, axis, sign);
                    if (by < 1e-6)
                        continue;
                    bodies[i] = bodies[i] with { Centre = bodies[i].Centre.With(axis, bodies[i].Centre[axis] + (sign * by)) };
                    moved = true;
                }
            }
        }

        return LayoutCheck.Broken(scene, bodies).Count == 0 ? bodies : [.. given];
    }

    private static double FreeWay(Scene scene, Body[] bodies, int i, Axis axis, int sign)
    {
        Body body = bodies[i];
        double most = scene.Parts.Max(p => p.Extent(axis).High) - scene.Parts.Min(p => p.Extent(axis).Low);
        (Axis first, Axis second) = Axes3.Others(axis);
        for (int j = 0; j < bodies.Length; j++)
        {
            Body other = bodies[j];
            double ahead = sign * (other.Centre[axis] - body.Centre[axis]);
            if (j == i || ahead <= 0 || IsPast(body, other, first) || IsPast(body, other, second))
                continue;
            most = Math.Min(most, Box3.Gap(body.Box, other.Box, axis) - PairRules.Wanted(body, other, axis));
        }

        double clear = 0;
        while (clear < most && IsClear(Math.Min(most, clear + StepMm)))
            clear = Math.Min(most, clear + StepMm);
        if (clear >= most)
            return Math.Max(0, most);
        double low = clear, high = Math.Min(most, clear + StepMm);
        for (int k = 0; k < 30; k++)
        {
            double middle = (low + high) / 2;
            if (IsClear(middle))
                low = middle;
            else
                high = middle;
        }

        return low;

        bool IsClear(double mm) => LayoutCheck.IsClear(scene, body with { Centre = body.Centre.With(axis, body.Centre[axis] + (sign * mm)) });
    }

    /// <summary>Whether two boxes stay apart along an axis, whatever they do along the others.</summary>
    private static bool IsPast(in Body a, in Body b, Axis axis) => Box3.Gap(a.Box, b.Box, axis) >= PairRules.Wanted(a, b, axis) - Geometry2.RoundingMm;
}
