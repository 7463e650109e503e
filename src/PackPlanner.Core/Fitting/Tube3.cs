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
        double a0 = From[axis] - low, da = To[axis] - From[axis], p0 = From[first] - x, dp = To[first] - From[first], q0 = From[second] - y, dq = To[second] - From[second];
        double height = high - low, across2 = (dp * dp) + (dq * dq);
        // Where the line passes nearest to the axis beside the body, not above or below it, no other point of it is nearer.
        double nearest = across2 > 0 ? Math.Clamp(-((p0 * dp) + (q0 * dq)) / across2, 0, 1) : 0, beside = a0 + (nearest * da);
        if (beside >= 0 && beside <= height)
        {
            at = nearest;
            double px = p0 + (at * dp), py = q0 + (at * dq);
            return Math.Max(0, Math.Sqrt((px * px) + (py * py)) - r);
        }

        at = Least(a0, da, p0, dp, q0, dq, height, r);
        _ = Slope(at, a0, da, p0, dp, q0, dq, height, r, out double squared);
        return Math.Sqrt(squared);
    }

    /// <summary>Slope of the square of the distance along the bar, which never falls, and the square itself.</summary>
    private static double Slope(double t, double a0, double da, double p0, double dp, double q0, double dq, double height, double r, out double squared)
    {
        double along = a0 + (t * da), px = p0 + (t * dp), py = q0 + (t * dq);
        double side = along < 0 ? along : along > height ? along - height : 0;
        double line2 = (px * px) + (py * py), slope = side * da;
        squared = side * side;
        if (line2 > r * r)
        {
            double line = Math.Sqrt(line2), out2 = line - r;
            squared += out2 * out2;
            slope += out2 * ((px * dp) + (py * dq)) / line;
        }

        return slope;
    }

    /// <summary>Where the slope crosses zero in 0..1, else the end nearest to it: false position, halving a side that stays.</summary>
    private static double Least(double a0, double da, double p0, double dp, double q0, double dq, double height, double r)
    {
        double low = 0, high = 1;
        double below = Slope(0, a0, da, p0, dp, q0, dq, height, r, out _), above = Slope(1, a0, da, p0, dp, q0, dq, height, r, out _);
        if (below >= 0)
            return 0;
        if (above <= 0)
            return 1;
        int stayed = 0;
        for (int i = 0; i < 100 && high - low > 1e-13; i++)
        {
            // Every fourth step halves, so that a flat stretch or a kink cannot hold it up.
            double t = i % 4 == 3 ? (low + high) / 2 : ((low * above) - (high * below)) / (above - below);
            double s = Slope(t, a0, da, p0, dp, q0, dq, height, r, out _);
            // The square is known to a billionth of a square millimetre then: its slope is no steeper than this times the step left.
            if (Math.Abs(s) * (high - low) < 1e-10)
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
        }

        return (low + high) / 2;
    }

    /// <summary>Distance from the bar's centre line to a solid box, millimetres.</summary>
    internal double ToBox(in Box3 box)
    {
        double low = 0, high = 1;
        if (BoxSlope(0, box, out double first) >= 0)
            return Math.Sqrt(first);
        if (BoxSlope(1, box, out double last) <= 0)
            return Math.Sqrt(last);
        double squared = first;
        // The slope of the square never falls and is straight between the planes of the box: halving finds where it crosses zero.
        for (int i = 0; i < 48 && squared > 0; i++)
        {
            double middle = (low + high) / 2, slope = BoxSlope(middle, box, out squared);
            if (slope == 0)
                break;
            (low, high) = slope < 0 ? (middle, high) : (low, middle);
        }

        return Math.Sqrt(squared);
    }

    /// <summary>Whether a point lies in the bar.</summary>
    internal bool Holds(PointMm p)
    {
        double x = To.X - From.X, y = To.Y - From.Y, z = To.Z - From.Z, length2 = (x * x) + (y * y) + (z * z);
        double at = (((p.X - From.X) * x) + ((p.Y - From.Y) * y) + ((p.Z - From.Z) * z)) / length2;
        double t = length2 > 0 ? Math.Clamp(at, 0, 1) : 0;
        double dx = From.X + (t * x) - p.X, dy = From.Y + (t * y) - p.Y, dz = From.Z + (t * z) - p.Z;
        return (dx * dx) + (dy * dy) + (dz * dz) < Radius * Radius;
    }

    /// <summary>Whether a box could be nearer than the bar is thick, by their outer measures alone.</summary>
    internal bool CanTouch(in Box3 box) =>
        Math.Min(From.X, To.X) - Radius < box.X1 && Math.Max(From.X, To.X) + Radius > box.X0
        && Math.Min(From.Y, To.Y) - Radius < box.Y1 && Math.Max(From.Y, To.Y) + Radius > box.Y0
        && Math.Min(From.Z, To.Z) - Radius < box.Z1 && Math.Max(From.Z, To.Z) + Radius > box.Z0;

    private double BoxSlope(double t, in Box3 box, out double squared)
    {
        double x = To.X - From.X, y = To.Y - From.Y, z = To.Z - From.Z;
        double dx = Beyond(From.X + (t * x), box.X0, box.X1), dy = Beyond(From.Y + (t * y), box.Y0, box.Y1), dz = Beyond(From.Z + (t * z), box.Z0, box.Z1);
        squared = (dx * dx) + (dy * dy) + (dz * dz);
        return (dx * x) + (dy * y) + (dz * z);
    }

    /// <summary>How far a value lies beyond an interval: below zero under it, 0 within.</summary>
    private static double Beyond(double value, double low, double high) => value < low ? value - low : value > high ? value - high : 0;
}
