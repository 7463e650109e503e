namespace PackPlanner.Core.Fitting;

/// <summary>
/// A polygon that a disc must stay inside of, or outside of, by a clearance. Margins are never larger than the true distance
/// and change by no more than one millimetre for each millimetre moved, so that a raster can rule out whole squares.
/// </summary>
internal sealed class Border2
{
    private readonly double[] u;
    private readonly double[] v;
    private readonly double[] normalU;
    private readonly double[] normalV;
    private readonly double[] offset;
    private readonly bool keepInside;
    private readonly bool halfPlanes;
    private readonly double clearance;
    private readonly double minU;
    private readonly double maxU;
    private readonly double minV;
    private readonly double maxV;

    /// <param name="u">Corners, anticlockwise.</param>
    /// <param name="v">Corners, anticlockwise.</param>
    /// <param name="clearance">How far the centre must stay from the polygon, millimetres.</param>
    /// <param name="keepInside">Inside the polygon, or outside.</param>
    internal Border2(double[] u, double[] v, double clearance, bool keepInside)
    {
        (this.u, this.v, this.clearance, this.keepInside) = (u, v, clearance, keepInside);
        halfPlanes = keepInside && Geometry2.IsConvex(u, v);
        (minU, maxU, minV, maxV) = (u.Min(), u.Max(), v.Min(), v.Max());
        int n = u.Length;
        (normalU, normalV, offset) = (new double[n], new double[n], new double[n]);
        for (int i = 0; i < n; i++)
        {
            int j = (i + 1) % n;
            double du = u[j] - u[i], dv = v[j] - v[i], length = Math.Sqrt((du * du) + (dv * dv));
            // An edge of no length has no direction: its neighbours already say all that it could.
            (normalU[i], normalV[i]) = length > 0 ? (-dv / length, du / length) : (0, 0);
            offset[i] = length > 0 ? (normalU[i] * u[i]) + (normalV[i] * v[i]) : double.NegativeInfinity;
        }
    }

    internal ReadOnlySpan<double> U => u;

    internal ReadOnlySpan<double> V => v;

    /// <summary>What the centres keep from the line, millimetres.</summary>
    internal double Clearance => clearance;

    /// <summary>Distance to spare, millimetres; below zero when the place is not allowed.</summary>
    internal double Margin(double x, double y)
    {
        if (halfPlanes)
        {
            double least = double.PositiveInfinity;
            for (int i = 0; i < u.Length; i++)
                least = Math.Min(least, (normalU[i] * x) + (normalV[i] * y) - offset[i]);
            return least - clearance;
        }

        if (!keepInside)
        {
            double far = BoxDistance(x, y);
            if (far > clearance)
                return far - clearance;
        }

        double inside = Geometry2.SignedDistance(u, v, x, y);
        return (keepInside ? inside : -inside) - clearance;
    }

    /// <summary>Adds the squares of what is lacking, square millimetres, and their gradient; <paramref name="extra"/> is asked on top of the clearance.</summary>
    internal double Push(double x, double y, double extra, ref double gx, ref double gy)
    {
        double want = clearance + extra;
        if (halfPlanes)
            return PushHalfPlanes(x, y, want, ref gx, ref gy);
        if (!keepInside && BoxDistance(x, y) >= want)
            return 0;
        bool right = Geometry2.Contains(u, v, x, y) == keepInside;
        double energy = 0, nearest = double.PositiveInfinity, nearU = 0, nearV = 0;
        int nearEdge = 0;
        for (int i = 0, j = u.Length - 1; i < u.Length; j = i++)
        {
            double d2 = Geometry2.SegmentDistanceSquared(x, y, u[j], v[j], u[i], v[i], out double qu, out double qv);
            if (d2 < nearest)
                (nearest, nearU, nearV, nearEdge) = (d2, qu, qv, j);
            if (right && d2 < want * want)
            {
                double d = Math.Sqrt(d2);
                double lack = want - d;
                (double du, double dv) = Direction(x, y, qu, qv, d, j);
                energy += lack * lack;
                gx -= 2 * lack * du;
                gy -= 2 * lack * dv;
            }
        }

        if (right)
            return energy;
        double depth = Math.Sqrt(nearest), all = want + depth;
        (double wu, double wv) = Direction(x, y, nearU, nearV, depth, nearEdge);
        // On the wrong side the way out is towards the border.
        double turn = depth > 1e-9 ? 1 : -1;
        gx += 2 * all * wu * turn;
        gy += 2 * all * wv * turn;
        return all * all;
    }

    private double PushHalfPlanes(double x, double y, double want, ref double gx, ref double gy)
    {
        double energy = 0;
        for (int i = 0; i < u.Length; i++)
        {
            double lack = want - ((normalU[i] * x) + (normalV[i] * y) - offset[i]);
            if (lack <= 0 || double.IsPositiveInfinity(offset[i]))
                continue;
            energy += lack * lack;
            gx -= 2 * lack * normalU[i];
            gy -= 2 * lack * normalV[i];
        }

        return energy;
    }

    /// <summary>From the border to the point; on the border itself, the side where the point should be.</summary>
    private (double U, double V) Direction(double x, double y, double qu, double qv, double d, int edge)
    {
        if (d > 1e-9)
            return ((x - qu) / d, (y - qv) / d);
        return keepInside ? (normalU[edge], normalV[edge]) : (-normalU[edge], -normalV[edge]);
    }

    private double BoxDistance(double x, double y)
    {
        double dx = Math.Max(0, Math.Max(minU - x, x - maxU)), dy = Math.Max(0, Math.Max(minV - y, y - maxV));
        return Math.Sqrt((dx * dx) + (dy * dy));
    }
}
