namespace PackPlanner.Core.Fitting;

/// <summary>
/// Places worth trying for boxes in a slab: against a wall, a keep-out or a slope, or a sum of sizes and gaps away from one. Any layout
/// between walls along the axes can be pushed into such places without losing a box (normal patterns).
/// </summary>
/// <remarks>Source: [Silva2016] on normal patterns.</remarks>
internal static class SlabCandidates
{
    /// <summary>The places of one slab.</summary>
    /// <param name="scene">Walls and keep-outs.</param>
    /// <param name="slab">The attitudes that may stand in it.</param>
    /// <param name="start">Where the bare bodies begin along the axis across the slab.</param>
    /// <param name="most">Places kept at most.</param>
    /// <param name="mostLooks">Crossings of the two axes' places looked at, about; of more an even choice is taken.</param>
    /// <param name="looks">How many places were looked at: the work.</param>
    internal static List<Body> Of(Scene scene, SlabClass slab, double start, int most, long mostLooks, out long looks)
    {
        long looked = 0;
        (Axis first, Axis second) = Axes3.Others(slab.Along);
        double[] steps1 = Steps(slab, first), steps2 = Steps(slab, second);
        List<Body> bodies = [];
        HashSet<(long, long, int)> seen = [];
        Box3 any = slab.Attitudes[0].Skin(Axes3.Place(slab.Along, start + (slab.Thickness / 2), 0, 0));
        SlabMask mask = new(scene, slab.Along, any.Low(slab.Along), any.High(slab.Along));
        for (int a = 0; a < slab.Attitudes.Count; a++)
        {
            Attitude attitude = slab.Attitudes[a];
            (double[] at1, double[] at2) = Thinned(
                Positions(scene, slab, attitude, first, steps1, start), Positions(scene, slab, attitude, second, steps2, start), mostLooks / slab.Attitudes.Count);
            foreach (double p in at1)
            {
                foreach (double q in at2)
                    Add(p, q, attitude, a);
                foreach (double q in Contacts(scene, slab, attitude, first, p, steps2))
                    Add(p, q, attitude, a);
            }

            foreach (double q in at2)
            {
                foreach (double p in Contacts(scene, slab, attitude, second, q, steps1))
                    Add(p, q, attitude, a);
            }
        }

        looks = looked;
        // Beyond the limit an even choice is kept; the search is then no longer exact.
        return bodies.Count <= most ? bodies : [.. Enumerable.Range(0, most).Select(i => bodies[(int)((long)i * bodies.Count / most)])];

        void Add(double p, double q, Attitude attitude, int number)
        {
            looked++;
            if (bodies.Count > 4 * most)
                return;
            PointMm centre = Axes3.Place(
                slab.Along, start + (slab.Thickness / 2), p + (attitude.Size(first) / 2), q + (attitude.Size(second) / 2));
            Box3 skin = attitude.Skin(centre);
            bool? clear = mask.IsClear(skin);
            if (clear != false && seen.Add(((long)Math.Round(p * 1e4), (long)Math.Round(q * 1e4), number)) && (clear ?? scene.BoxIsClear(skin)))
                bodies.Add(new Body(centre, attitude));
        }
    }

    private static (double[] At1, double[] At2) Thinned(double[] at1, double[] at2, long most)
    {
        double share = Math.Sqrt(most / Math.Max(1.0, (double)at1.Length * at2.Length));
        return share >= 1 ? (at1, at2) : (Even(at1), Even(at2));

        double[] Even(double[] all)
        {
            int kept = Math.Max(2, (int)(share * all.Length));
            return kept >= all.Length ? all : [.. Enumerable.Range(0, kept).Select(i => all[(long)i * (all.Length - 1) / (kept - 1)])];
        }
    }

    /// <summary>Sizes along an axis, each with every gap that may follow it.</summary>
    private static double[] Steps(SlabClass slab, Axis axis)
    {
        int low = Attitude.Face(axis, false), high = Attitude.Face(axis, true);
        double[] gaps = [.. slab.Attitudes.SelectMany(a => new[] { a.Want(low), a.Want(high) }).Distinct()];
        return [.. slab.Attitudes.SelectMany(a => gaps.Where(g => g >= Math.Min(a.Want(low), a.Want(high))).Select(g => a.Size(axis) + g)).Distinct().Order()];
    }

    private static double[] Positions(Scene scene, SlabClass slab, Attitude attitude, Axis axis, double[] steps, double start)
    {
        double below = attitude.Wall(Attitude.Face(axis, false)), above = attitude.Wall(Attitude.Face(axis, true)), size = attitude.Size(axis);
        double least = scene.Parts.Min(p => p.Extent(axis).Low), most = scene.Parts.Max(p => p.Extent(axis).High);
        SortedSet<double> found = [];
        // Boxes behind the first keep the clearance of whichever attitude stood at the wall, so every attitude gives an origin.
        foreach (double wall in Walls(scene, slab, axis, start).Distinct())
        {
            foreach (Attitude at in slab.Attitudes)
            {
                double up = wall + at.Wall(Attitude.Face(axis, false)), down = wall - at.Wall(Attitude.Face(axis, true));
                // From an inner corner or a keep-out only a few sizes: beyond them the outer walls give the places.
                double reach = wall == least || wall == most ? most - least : 2.01 * steps[^1];
                foreach (double sum in SlabStarts.Sums(steps, Math.Min(reach, most - least), 400))
                {
                    double low = sum == 0 ? wall + below : up + sum, high = sum == 0 ? wall - above - size : down - sum - size;
                    if (low >= least && low + size <= most + Geometry2.RoundingMm)
                        found.Add(Math.Round(low, 7));
                    if (high >= least - Geometry2.RoundingMm && high + size <= most)
                        found.Add(Math.Round(high, 7));
                }
            }
        }

        return [.. found];
    }

    private static IEnumerable<double> Walls(Scene scene, SlabClass slab, Axis axis, double start)
    {
        foreach (Prism3 part in scene.Parts)
        {
            (double low, double high) = part.Extent(axis);
            yield return low;
            yield return high;
            if (axis != part.Extrusion)
            {
                foreach (double corner in axis == part.First ? part.U : part.V)
                    yield return corner;
            }
        }

        foreach (Prism3 block in scene.Blocks)
        {
            (double from, double to) = block.Extent(slab.Along);
            if (from >= start + slab.Thickness + slab.WallAbove || to <= start - slab.WallBelow)
                continue;
            yield return block.Extent(axis).Low;
            yield return block.Extent(axis).High;
        }

        foreach (Tube3 tube in scene.Tubes)
        {
            yield return Math.Min(tube.From[axis], tube.To[axis]) - tube.Radius;
            yield return Math.Max(tube.From[axis], tube.To[axis]) + tube.Radius;
        }
    }

    /// <summary>
    /// Where a box whose low side is at <paramref name="at"/> along one axis comes to rest on a slope when it is pushed along the other,
    /// and a sum of sizes further.
    /// </summary>
    private static IEnumerable<double> Contacts(Scene scene, SlabClass slab, Attitude attitude, Axis fixedAxis, double at, double[] steps)
    {
        Axis free = (Axis)(3 - (int)slab.Along - (int)fixedAxis);
        double from = at - attitude.Wall(Attitude.Face(fixedAxis, false)), to = at + attitude.Size(fixedAxis) + attitude.Wall(Attitude.Face(fixedAxis, true));
        double below = attitude.Wall(Attitude.Face(free, false)), above = attitude.Wall(Attitude.Face(free, true)), size = attitude.Size(free);
        foreach (Prism3 prism in scene.Parts.Concat(scene.Blocks))
        {
            if (prism.Extrusion != slab.Along || prism.IsBox)
                continue;
            (double[] f, double[] g) = fixedAxis == prism.First ? (prism.U, prism.V) : (prism.V, prism.U);
            for (int i = 0, j = f.Length - 1; i < f.Length; j = i++)
            {
                // Only slopes: walls along the axes already gave their sums.
                if (Math.Abs(f[i] - f[j]) < 1e-9 || Math.Abs(g[i] - g[j]) < 1e-9)
                    continue;
                foreach (double end in new[] { Math.Clamp(from, Math.Min(f[i], f[j]), Math.Max(f[i], f[j])), Math.Clamp(to, Math.Min(f[i], f[j]), Math.Max(f[i], f[j])) })
                {
                    double height = g[j] + ((end - f[j]) / (f[i] - f[j]) * (g[i] - g[j]));
                    yield return height + below;
                    yield return height - above - size;
                    foreach (double step in steps)
                    {
                        yield return height + below + step;
                        yield return height - above - size - step;
                    }
                }
            }
        }
    }
}
