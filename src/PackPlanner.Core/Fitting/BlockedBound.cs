namespace PackPlanner.Core.Fitting;

/// <summary>Groemer's bound for the places in a convex outline, less what keep-outs certainly cost: never fewer than the truth.</summary>
/// <remarks>
/// Two ways, of which the smaller counts. A keep-out that is a rectangle cuts the outline into convex pieces whose bounds add up. And points
/// set into the keep-outs, so deep that they are a cell's distance from every place that is allowed and from one another, count against
/// the bound of the whole outline: places and points together are no more than it says.
/// </remarks>
internal static class BlockedBound
{
    // Twice what a place may be off by through rounding: no layout of ours is above the bound by that.
    private const double Hair = 2 * Geometry2.RoundingMm;

    /// <summary>The bound.</summary>
    /// <param name="kept">Where centres may be but for the keep-outs: convex, anticlockwise.</param>
    /// <param name="blocked">The keep-outs.</param>
    /// <param name="clearance">What centres keep from them, millimetres.</param>
    /// <param name="distance">Centre to centre.</param>
    internal static int Of(List<(double U, double V)> kept, IReadOnlyList<Blocked2> blocked, double clearance, double distance)
    {
        int whole = Less(kept);
        List<List<(double U, double V)>> pieces = [kept];
        foreach (Blocked2 keepOut in blocked.Where(b => b.IsRectangle))
            pieces = [.. pieces.SelectMany(piece => Cut(piece, keepOut, clearance, distance))];
        return blocked.Count == 0 ? whole : Math.Min(whole, pieces.Sum(Less));

        int Less(List<(double U, double V)> piece)
        {
            int bound = DiscBound.Groemer(piece, distance);
            return blocked.Count == 0 || bound == 0 ? bound : Math.Max(0, bound - Inserted(piece, blocked, clearance, distance));
        }
    }

    /// <summary>The piece as it is, or without the rectangle and what centres keep from one pair of its sides, whichever has the smaller bound.</summary>
    private static List<List<(double U, double V)>> Cut(List<(double U, double V)> piece, Blocked2 keepOut, double clearance, double distance)
    {
        List<List<(double U, double V)>> best = [piece];
        int least = DiscBound.Groemer(piece, distance);
        foreach (int pair in new[] { 0, 1 })
        {
            // Grown on two opposite sides only, the rectangle holds no point further from it than the clearance.
            List<(double U, double V)> rest = piece;
            List<List<(double U, double V)>> pieces = [];
            foreach (int side in new[] { pair, pair + 2, 1 - pair, 3 - pair })
            {
                (double nu, double nv, double offset) = Side(keepOut, side);
                double at = offset + (side % 2 == pair ? clearance - Hair : 0);
                pieces.Add(DiscBound.Clip(rest, nu, nv, at));
                rest = DiscBound.Clip(rest, -nu, -nv, -at);
            }

            int sum = pieces.Sum(p => DiscBound.Groemer(p, distance));
            if (sum < least)
                (best, least) = ([.. pieces.Where(p => p.Count > 0)], sum);
        }

        return best;
    }

    /// <summary>How many points, a distance from one another and from every place that is allowed, the keep-outs take inside the piece.</summary>
    private static int Inserted(List<(double U, double V)> piece, IReadOnlyList<Blocked2> blocked, double clearance, double distance)
    {
        List<(double X, double Y)> points = [];
        foreach (Blocked2 keepOut in blocked)
        {
            List<(double U, double V)> deep = piece;
            for (int side = 0; side < keepOut.U.Length && deep.Count > 0; side++)
            {
                (double nu, double nv, double offset) = Side(keepOut, side);
                deep = DiscBound.Clip(deep, -nu, -nv, -offset + Math.Max(0, distance - clearance) + Hair);
            }

            double[] u = [.. deep.Select(p => p.U)], v = [.. deep.Select(p => p.V)];
            if (deep.Count < 3 || Math.Abs(Geometry2.TwiceArea(u, v)) < 1e-6)
                continue;
            DiscRegion region = new([new RegionPiece(new Border2(u, v, 0, keepInside: true), [], [], 0)]);
            RegionRaster raster = new(region, distance);
            List<(double X, double Y)> places = [];
            if (NestSweep.Best(region, raster, distance, phases: 4, stretched: true, keep: 1, CancellationToken.None) is [(Nest nest, _), ..])
                nest.Fill(region, raster, places);
            points.AddRange(places.Where(place => points.All(p => ((p.X - place.X) * (p.X - place.X)) + ((p.Y - place.Y) * (p.Y - place.Y)) >= distance * distance)).ToList());
        }

        return points.Count;
    }

    // Outward normal of a side, and how far out the side lies along it.
    private static (double Nu, double Nv, double Offset) Side(Blocked2 keepOut, int side)
    {
        int next = (side + 1) % keepOut.U.Length;
        double du = keepOut.U[next] - keepOut.U[side], dv = keepOut.V[next] - keepOut.V[side], length = Math.Max(1e-12, Math.Sqrt((du * du) + (dv * dv)));
        (double nu, double nv) = (dv / length, -du / length);
        return (nu, nv, (nu * keepOut.U[side]) + (nv * keepOut.V[side]));
    }
}
