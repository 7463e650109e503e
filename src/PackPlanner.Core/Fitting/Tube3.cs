namespace PackPlanner.Core.Fitting;

/// <summary>A round bar with round ends, and its distance to cylinders and boxes along the axes.</summary>
internal sealed class Tube3(PointMm from, PointMm to, double radius)
{
    internal PointMm From { get; } = from;

    internal PointMm To { get; } = to;

    internal double Radius { get; } = radius;

    /// <summary>
    /// Distance from the bar's centre line to a solid cylinder, millimetres, and where on the centre line (0..1) it is least.
    /// The distance from a point to a convex body is convex along a line, so the slope of its square crosses zero once.
    /// </summary>
    internal double ToCylinder(Axis axis, double low, double high, double x, double y, double r, out double at)
    {
        (Axis first, Axis second) = Axes3.Others(axis);
        double a0 = From[axis], da = To[axis] - a0, p0 = From[first], dp = To[first] - p0, q0 = From[second], dq = To[second] - q0;
        // The square of the distance and its slope, which never falls: the least is where the slope crosses zero.
        (double Squared, double Slope) At(double t)
        {
            double along = a0 + (t * da), px = p0 + (t * dp) - x, py = q0 + (t * dq) - y;
            double side = along < low ? along - low : along > high ? along - high : 0;
            double line = Math.Sqrt((px * px) + (py * py)), out2 = Math.Max(0, line - r);
            return ((side * side) + (out2 * out2), (side * da) + (out2 > 0 ? out2 * ((px * dp) + (py * dq)) / line : 0));
        }

        at = SlopeCrossing(t => At(t).Slope);
        return Math.Sqrt(At(at).Squared);
    }

    /// <summary>Distance from the bar's centre line to a solid box, millimetres.</summary>
    internal double ToBox(in Box3 box)
    {
        Box3 b = box;
        double Squared(double t)
        {
            double dx = Lack(From.X + (t * (To.X - From.X)), b.X0, b.X1);
            double dy = Lack(From.Y + (t * (To.Y - From.Y)), b.Y0, b.Y1);
            double dz = Lack(From.Z + (t * (To.Z - From.Z)), b.Z0, b.Z1);
            return (dx * dx) + (dy * dy) + (dz * dz);
        }

        return Math.Sqrt(Squared(Least(Squared)));
    }

    /// <summary>Where a slope that never falls crosses zero in 0..1, else the end nearest to it: false position, halving a side that stays.</summary>
    private static double SlopeCrossing(Func<double, double> slope)
    {
        double low = 0, high = 1, below = slope(0), above = slope(1);
        if (below >= 0)
            return 0;
        if (above <= 0)
            return 1;
        int stayed = 0;
        for (int i = 0; i < 100 && high - low > 1e-13; i++)
        {
            // Every fourth step halves, so that a flat stretch or a kink cannot hold it up.
            double t = i % 4 == 3 ? (low + high) / 2 : ((low * above) - (high * below)) / (above - below);
            double s = slope(t);
            if (s == 0)
                return t;
            if (s < 0)
            {
                (low, below) = (t, s);
                above = stayed < 0 ? above / 2 : above;
                stayed = -1;
            }
            else
            {
                (high, above) = (t, s);
                below = stayed > 0 ? below / 2 : below;
                stayed = 1;
            }

            if (Math.Abs(s) < 1e-10)
                return t;
        }

        return (low + high) / 2;
    }

    private static double Lack(double value, double low, double high) => Math.Max(0, Math.Max(low - value, value - high));

    private static double Least(Func<double, double> f)
    {
        double low = 0, high = 1;
        for (int i = 0; i < 48; i++)
        {
            double a = low + ((high - low) * 0.38196601125), b = high - ((high - low) * 0.38196601125);
            if (f(a) <= f(b))
                high = b;
            else
                low = a;
        }

        double t = (low + high) / 2;
        // The ends are reached exactly, which the shrinking bracket only approaches.
        return f(0) <= f(t) ? 0 : f(1) <= f(t) ? 1 : t;
    }
}
