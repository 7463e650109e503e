namespace PackPlanner.Core.Fitting;

/// <summary>When two cells are far enough apart, and when they are near enough, and face each other, to be linked.</summary>
internal static class PairRules
{
    /// <summary>Whether two cells keep the distances that their faces ask for, <paramref name="forgiveMm"/> forgiven.</summary>
    internal static bool Apart(in Body a, in Body b, Clearances c, double forgiveMm)
    {
        if (a.Attitude.RoundAlong is Axis axis && b.Attitude.RoundAlong == axis)
        {
            double along = Math.Abs(a.Centre[axis] - b.Centre[axis]) - a.Attitude.Size(axis);
            return along >= c.LayerGapMm - forgiveMm || AxisDistance(a, b, axis) >= Diameter(a, axis) + c.CellGapMm - forgiveMm;
        }

        Box3 p = a.Box, q = b.Box;
        foreach (Axis d in Axes3.All)
        {
            if (Box3.Gap(p, q, d) >= Wanted(a, b, d) - forgiveMm)
                return true;
        }

        return false;
    }

    /// <summary>Whether a link plate can join two cells.</summary>
    internal static bool Neighbours(in Body a, in Body b, Clearances c, double reachMm)
    {
        // Our own places carry rounding; the user's rules forgive 0.02 mm, of which this uses half.
        double reach = reachMm + 0.01;
        if (a.Attitude.RoundAlong is Axis axis)
        {
            // Cylinders that cross have no ends side by side: no plate joins them.
            if (b.Attitude.RoundAlong != axis)
                return false;
            double length = a.Attitude.Size(axis), diameter = Diameter(a, axis);
            double along = Math.Abs(a.Centre[axis] - b.Centre[axis]), aside = AxisDistance(a, b, axis);
            return (aside <= diameter + c.CellGapMm + reach && along <= (length / 4) - 1e-6)
                || (aside <= (diameter / 4) - 1e-6 && along - length <= c.LayerGapMm + reach);
        }

        Box3 p = a.Box, q = b.Box;
        foreach (Axis d in Axes3.All)
        {
            double gap = Box3.Gap(p, q, d);
            if (gap < -1e-6 || gap > Wanted(a, b, d) + reach)
                continue;
            (Axis first, Axis second) = Axes3.Others(d);
            if (-Box3.Gap(p, q, first) >= (Math.Min(p.Size(first), q.Size(first)) / 4) - 1e-6
                && -Box3.Gap(p, q, second) >= (Math.Min(p.Size(second), q.Size(second)) / 4) - 1e-6)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>What the two faces that look at each other along an axis want; the larger counts, so terminal faces share one space.</summary>
    internal static double Wanted(in Body a, in Body b, Axis d)
    {
        bool aBelow = a.Centre[d] <= b.Centre[d];
        return Math.Max(a.Attitude.Want(Attitude.Face(d, aBelow)), b.Attitude.Want(Attitude.Face(d, !aBelow)));
    }

    private static double Diameter(in Body a, Axis axis) => a.Attitude.Size(Axes3.Others(axis).First);

    private static double AxisDistance(in Body a, in Body b, Axis axis)
    {
        (Axis first, Axis second) = Axes3.Others(axis);
        double du = a.Centre[first] - b.Centre[first], dv = a.Centre[second] - b.Centre[second];
        return Math.Sqrt((du * du) + (dv * dv));
    }
}
