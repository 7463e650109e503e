namespace PackPlanner.Core.Fitting;

/// <summary>Plane geometry over doubles, millimetres.</summary>
internal static class Geometry2
{
    /// <summary>What our own answers may be off by through rounding; the user's rules forgive 0.02 mm.</summary>
    internal const double RoundingMm = 1e-6;

    /// <summary>Square of the distance from a point to a segment, and the nearest point of the segment.</summary>
    internal static double SegmentDistanceSquared(
        double px, double py, double ax, double ay, double bx, double by, out double qx, out double qy)
    {
        double dx = bx - ax, dy = by - ay, length2 = (dx * dx) + (dy * dy);
        double t = length2 > 0 ? (((px - ax) * dx) + ((py - ay) * dy)) / length2 : 0;
        t = t < 0 ? 0 : t > 1 ? 1 : t;
        qx = ax + (t * dx);
        qy = ay + (t * dy);
        return ((px - qx) * (px - qx)) + ((py - qy) * (py - qy));
    }

    /// <summary>Whether a point lies inside a simple polygon (even-odd rule).</summary>
    internal static bool Contains(ReadOnlySpan<double> u, ReadOnlySpan<double> v, double x, double y)
    {
        bool inside = false;
        for (int i = 0, j = u.Length - 1; i < u.Length; j = i++)
        {
            if (v[i] > y != v[j] > y && x < ((u[j] - u[i]) * (y - v[i]) / (v[j] - v[i])) + u[i])
                inside = !inside;
        }

        return inside;
    }

    /// <summary>Distance from a point to the border of a simple polygon: positive inside, negative outside.</summary>
    internal static double SignedDistance(ReadOnlySpan<double> u, ReadOnlySpan<double> v, double x, double y)
    {
        double nearest = double.PositiveInfinity;
        for (int i = 0, j = u.Length - 1; i < u.Length; j = i++)
            nearest = Math.Min(nearest, SegmentDistanceSquared(x, y, u[j], v[j], u[i], v[i], out _, out _));
        return Contains(u, v, x, y) ? Math.Sqrt(nearest) : -Math.Sqrt(nearest);
    }

    /// <summary>Twice the signed area: positive when the corners run anticlockwise.</summary>
    internal static double TwiceArea(ReadOnlySpan<double> u, ReadOnlySpan<double> v)
    {
        double sum = 0;
        for (int i = 0, j = u.Length - 1; i < u.Length; j = i++)
            sum += (u[j] * v[i]) - (u[i] * v[j]);
        return sum;
    }

    /// <summary>Whether all corners turn the same way.</summary>
    internal static bool IsConvex(ReadOnlySpan<double> u, ReadOnlySpan<double> v)
    {
        int n = u.Length;
        bool left = false, right = false;
        for (int i = 0; i < n; i++)
        {
            int j = (i + 1) % n, k = (i + 2) % n;
            double cross = ((u[j] - u[i]) * (v[k] - v[j])) - ((v[j] - v[i]) * (u[k] - u[j]));
            left |= cross > 1e-9;
            right |= cross < -1e-9;
        }

        return !(left && right);
    }

    /// <summary>The part of a segment inside a rectangle, as two parameters 0..1; false when there is none.</summary>
    internal static bool ClipToRectangle(
        double ax, double ay, double bx, double by, double x0, double y0, double x1, double y1, out double t0, out double t1)
    {
        t0 = 0;
        t1 = 1;
        return ClipToBand(ax, bx, x0, x1, ref t0, ref t1) && ClipToBand(ay, by, y0, y1, ref t0, ref t1);
    }

    /// <summary>Whether a rectangle lies inside a polygon; a border in common is allowed.</summary>
    internal static bool RectangleInside(
        ReadOnlySpan<double> u, ReadOnlySpan<double> v, double x0, double y0, double x1, double y1)
    {
        return Contains(u, v, (x0 + x1) / 2, (y0 + y1) / 2) && !AnEdgeEnters(u, v, x0, y0, x1, y1);
    }

    /// <summary>Whether the insides of a rectangle and a polygon have a point in common.</summary>
    internal static bool RectangleOverlaps(
        ReadOnlySpan<double> u, ReadOnlySpan<double> v, double x0, double y0, double x1, double y1)
    {
        return AnEdgeEnters(u, v, x0, y0, x1, y1) || Contains(u, v, (x0 + x1) / 2, (y0 + y1) / 2);
    }

    private static bool AnEdgeEnters(
        ReadOnlySpan<double> u, ReadOnlySpan<double> v, double x0, double y0, double x1, double y1)
    {
        const double Eps = RoundingMm;
        for (int i = 0, j = u.Length - 1; i < u.Length; j = i++)
        {
            if (ClipToRectangle(u[j], v[j], u[i], v[i], x0 + Eps, y0 + Eps, x1 - Eps, y1 - Eps, out _, out _))
                return true;
        }

        return false;
    }

    private static bool ClipToBand(double a, double b, double low, double high, ref double t0, ref double t1)
    {
        double d = b - a;
        if (d == 0)
            return a > low && a < high;
        double s = (low - a) / d, e = (high - a) / d;
        if (s > e)
            (s, e) = (e, s);
        t0 = Math.Max(t0, s);
        t1 = Math.Min(t1, e);
        return t0 < t1;
    }
}
