namespace PackPlanner.Core.Fitting;

/// <summary>How many discs at a distance can have their centres in a region: never fewer than the truth.</summary>
/// <remarks>
/// Source: [Groemer1960]: n points of a convex set with area A and perimeter p, no two nearer than d, satisfy
/// n ≤ 2A/(√3 d²) + p/(2d) + 1. A part that is not convex is covered by its hull, or cut at its inward corners into convex pieces whose
/// bounds add up; the smaller counts. What keep-outs certainly cost is taken off: <see cref="BlockedBound"/>.
/// </remarks>
internal static class DiscBound
{
    /// <summary>Bound for one layer of cells in a part seen along their axis.</summary>
    internal static int OneLayer(double[] u, double[] v, double clearance, double distance, params IReadOnlyList<Blocked2> blocked)
    {
        List<(double U, double V, bool Wall)> outline = [.. u.Zip(v, (a, b) => (a, b, true))];
        int hull = Convex(Hull(outline), clearance, distance, blocked);
        if (Geometry2.IsConvex(u, v))
            return hull;
        int pieces = 0;
        foreach (List<(double U, double V, bool Wall)> piece in ConvexPieces(outline, 0))
            pieces += Convex(piece, clearance, distance, blocked);
        return Math.Min(hull, pieces);
    }

    /// <summary>Groemer's bound for the part of a convex outline that lies further than a clearance from those edges that are walls.</summary>
    private static int Convex(List<(double U, double V, bool Wall)> outline, double clearance, double distance, IReadOnlyList<Blocked2> blocked)
    {
        List<(double U, double V)> kept = [.. outline.Select(c => (c.U, c.V))];
        for (int i = 0; i < outline.Count && kept.Count > 0; i++)
        {
            (double au, double av, bool wall) = outline[i];
            (double bu, double bv, _) = outline[(i + 1) % outline.Count];
            double length = Math.Sqrt(((bu - au) * (bu - au)) + ((bv - av) * (bv - av)));
            if (length == 0 || !wall)
                continue;
            double nu = -(bv - av) / length, nv = (bu - au) / length;
            // The hair keeps an exactly filled cavity from being cut away by rounding.
            kept = Clip(kept, nu, nv, (nu * au) + (nv * av) + clearance - 1e-7);
        }

        return BlockedBound.Of(kept, blocked, clearance, distance);
    }

    /// <summary>Groemer's bound for points in a convex outline, walls and keep-outs left aside.</summary>
    internal static int Groemer(List<(double U, double V)> kept, double distance)
    {
        if (kept.Count == 0)
            return 0;
        double area = 0, perimeter = 0;
        for (int i = 0, j = kept.Count - 1; i < kept.Count; j = i++)
        {
            area += (kept[j].U * kept[i].V) - (kept[i].U * kept[j].V);
            perimeter += Math.Sqrt(((kept[i].U - kept[j].U) * (kept[i].U - kept[j].U)) + ((kept[i].V - kept[j].V) * (kept[i].V - kept[j].V)));
        }

        return (int)Math.Floor((Math.Abs(area) / (Math.Sqrt(3) * distance * distance)) + (perimeter / (2 * distance)) + 1 + 1e-9);
    }

    /// <summary>The part of a convex outline that lies beyond a line.</summary>
    internal static List<(double U, double V)> Clip(List<(double U, double V)> points, double nu, double nv, double offset)
    {
        List<(double U, double V)> kept = [];
        for (int i = 0, j = points.Count - 1; i < points.Count; j = i++)
        {
            double a = (nu * points[j].U) + (nv * points[j].V) - offset, b = (nu * points[i].U) + (nv * points[i].V) - offset;
            if (a < 0 != b < 0)
            {
                double t = a / (a - b);
                kept.Add((points[j].U + (t * (points[i].U - points[j].U)), points[j].V + (t * (points[i].V - points[j].V))));
            }

            if (b >= 0)
                kept.Add(points[i]);
        }

        return kept;
    }

    private static List<(double U, double V, bool Wall)> Hull(List<(double U, double V, bool Wall)> points)
    {
        // Each half of the hull, walked from left to right and back (monotone chain).
        List<(double U, double V, bool Wall)> sorted = [.. points.OrderBy(p => p.U).ThenBy(p => p.V)];
        List<(double U, double V, bool Wall)> hull = [];
        foreach (IEnumerable<(double U, double V, bool Wall)> pass in new[] { sorted, Enumerable.Reverse(sorted) })
        {
            int from = hull.Count;
            foreach ((double U, double V, bool Wall) p in pass)
            {
                while (hull.Count >= from + 2 && Cross(hull[^2], hull[^1], p) <= 0)
                    hull.RemoveAt(hull.Count - 1);
                hull.Add(p);
            }

            hull.RemoveAt(hull.Count - 1);
        }

        return hull;
    }

    /// <summary>Cuts at the first inward corner, to the corner that can be seen from it and lies nearest; the cut is no wall.</summary>
    private static List<List<(double U, double V, bool Wall)>> ConvexPieces(List<(double U, double V, bool Wall)> outline, int depth)
    {
        int n = outline.Count;
        for (int i = 0; i < n && depth < 40; i++)
        {
            if (Cross(outline[(i + n - 1) % n], outline[i], outline[(i + 1) % n]) >= -1e-9)
                continue;
            int best = -1;
            double least = double.PositiveInfinity;
            for (int j = 0; j < n; j++)
            {
                double du = outline[j].U - outline[i].U, dv = outline[j].V - outline[i].V, d = (du * du) + (dv * dv);
                if (j == i || (j + 1) % n == i || (i + 1) % n == j || d >= least || !Sees(outline, i, j))
                    continue;
                (best, least) = (j, d);
            }

            if (best < 0)
                continue;
            (int a, int b) = (Math.Min(i, best), Math.Max(i, best));
            List<(double U, double V, bool Wall)> one = [.. outline[a..b], outline[b] with { Wall = false }];
            List<(double U, double V, bool Wall)> two = [.. outline[b..], .. outline[..a], outline[a] with { Wall = false }];
            return [.. ConvexPieces(one, depth + 1), .. ConvexPieces(two, depth + 1)];
        }

        return [Hull(outline).Count == n ? outline : [.. Hull(outline).Select(p => p with { Wall = false })]];
    }

    private static bool Sees(List<(double U, double V, bool Wall)> outline, int i, int j)
    {
        double[] u = [.. outline.Select(p => p.U)], v = [.. outline.Select(p => p.V)];
        (double U, double V, bool _) a = outline[i], b = outline[j];
        if (!Geometry2.Contains(u, v, (a.U + b.U) / 2, (a.V + b.V) / 2))
            return false;
        for (int k = 0, m = outline.Count - 1; k < outline.Count; m = k++)
        {
            if (k == i || k == j || m == i || m == j)
                continue;
            if (Cross(a, b, outline[k]) * Cross(a, b, outline[m]) <= 0 && Cross(outline[m], outline[k], a) * Cross(outline[m], outline[k], b) <= 0)
                return false;
        }

        return true;
    }

    private static double Cross((double U, double V, bool Wall) a, (double U, double V, bool Wall) b, (double U, double V, bool Wall) c) =>
        ((b.U - a.U) * (c.V - a.V)) - ((b.V - a.V) * (c.U - a.U));
}
