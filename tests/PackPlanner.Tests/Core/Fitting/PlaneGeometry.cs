namespace PackPlanner.Tests.Core.Fitting;

/// <summary>Plane geometry the long way: corners as pairs of numbers, every edge looked at.</summary>
internal static class PlaneGeometry
{
    internal static double Sq(double v) => v * v;

    internal static double[][] Rectangle(double u0, double v0, double u1, double v1) => [[u0, v0], [u1, v0], [u1, v1], [u0, v1]];

    internal static int Winding(double[][] outline, double x, double y)
    {
        double turned = 0;
        for (int i = 0; i < outline.Length; i++)
        {
            double[] a = outline[i], b = outline[(i + 1) % outline.Length];
            double ax = a[0] - x, ay = a[1] - y, bx = b[0] - x, by = b[1] - y;
            turned += Math.Atan2((ax * by) - (ay * bx), (ax * bx) + (ay * by));
        }

        return (int)Math.Round(turned / (2 * Math.PI));
    }

    internal static double Nearest(double[][] outline, double x, double y)
    {
        double least = double.PositiveInfinity;
        for (int i = 0; i < outline.Length; i++)
        {
            double[] a = outline[i], b = outline[(i + 1) % outline.Length];
            double dx = b[0] - a[0], dy = b[1] - a[1], l2 = Sq(dx) + Sq(dy);
            double t = l2 == 0 ? 0 : Math.Clamp((((x - a[0]) * dx) + ((y - a[1]) * dy)) / l2, 0, 1);
            least = Math.Min(least, Math.Sqrt(Sq(x - a[0] - (t * dx)) + Sq(y - a[1] - (t * dy))));
        }

        return least;
    }

    internal static bool Cross(double[][] p, double[][] q)
    {
        for (int i = 0; i < p.Length; i++)
        {
            for (int j = 0; j < q.Length; j++)
            {
                double[] a = p[i], b = p[(i + 1) % p.Length], c = q[j], d = q[(j + 1) % q.Length];
                if (Turn(a, b, c) * Turn(a, b, d) < 0 && Turn(c, d, a) * Turn(c, d, b) < 0)
                    return true;
            }
        }

        return false;
    }

    private static double Turn(double[] a, double[] b, double[] c) => ((b[0] - a[0]) * (c[1] - a[1])) - ((b[1] - a[1]) * (c[0] - a[0]));
}
