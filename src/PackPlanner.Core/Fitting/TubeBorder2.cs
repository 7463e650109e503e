namespace PackPlanner.Core.Fitting;

/// <summary>A tube as seen by discs of one layer: the skin of a cell must stay clear of it.</summary>
internal sealed class TubeBorder2
{
    private readonly Tube3 tube;
    private readonly Axis axis;
    private readonly double low;
    private readonly double high;
    private readonly double skinRadius;
    private readonly double p0;
    private readonly double q0;
    private readonly double p1;
    private readonly double q1;
    private readonly bool level;
    private readonly double swell;

    internal TubeBorder2(Tube3 tube, Axis axis, double low, double high, double skinRadius)
    {
        (this.tube, this.axis, this.low, this.high, this.skinRadius) = (tube, axis, low, high, skinRadius);
        (Axis first, Axis second) = Axes3.Others(axis);
        (p0, q0, p1, q1) = (tube.From[first], tube.From[second], tube.To[first], tube.To[second]);
        double a0 = Math.Min(tube.From[axis], tube.To[axis]), a1 = Math.Max(tube.From[axis], tube.To[axis]);
        double beside = Math.Max(0, Math.Max(low - a1, a0 - high));
        // A bar that lies across the cells, or passes their whole length, is a rounded strip for the discs: no search for the nearest point.
        level = a1 - a0 < 1e-9 || (Math.Abs(p1 - p0) + Math.Abs(q1 - q0) < 1e-9 && a0 <= high && a1 >= low);
        double reach2 = (tube.Radius * tube.Radius) - (beside * beside);
        swell = reach2 > 0 ? skinRadius + Math.Sqrt(reach2) : double.NegativeInfinity;
    }

    internal string Key => FormattableString.Invariant($"t{p0}:{q0}:{p1}:{q1}:{tube.From[axis] - low}:{tube.To[axis] - low}:{tube.Radius}");

    /// <summary>Distance to spare, millimetres; below zero when the place is not allowed.</summary>
    internal double Margin(double x, double y)
    {
        double line = LineDistance(x, y, out _, out _);
        if (level)
            return line - swell;
        double far = line - skinRadius - tube.Radius;
        if (far > 0)
            return far;
        return tube.ToCylinder(axis, low, high, x, y, skinRadius, out _) - tube.Radius;
    }

    /// <summary>Adds the square of what is lacking, square millimetres, and its gradient; <paramref name="extra"/> is asked on top.</summary>
    internal double Push(double x, double y, double extra, ref double gx, ref double gy)
    {
        double line = LineDistance(x, y, out double qx, out double qy);
        double reach = level ? swell : skinRadius + tube.Radius;
        if (line >= reach + extra)
            return 0;
        double lack = reach + extra - line;
        if (!level)
        {
            double distance = tube.ToCylinder(axis, low, high, x, y, skinRadius, out double t);
            if (distance >= tube.Radius + extra)
                return 0;
            (qx, qy) = (p0 + (t * (p1 - p0)), q0 + (t * (q1 - q0)));
            lack = tube.Radius + extra - distance;
            line = Math.Sqrt(((x - qx) * (x - qx)) + ((y - qy) * (y - qy)));
        }

        (double ux, double uy) = line > 1e-9 ? ((x - qx) / line, (y - qy) / line) : (1, 0);
        gx -= 2 * lack * ux;
        gy -= 2 * lack * uy;
        return lack * lack;
    }

    private double LineDistance(double x, double y, out double qx, out double qy) =>
        Math.Sqrt(Geometry2.SegmentDistanceSquared(x, y, p0, q0, p1, q1, out qx, out qy));
}
