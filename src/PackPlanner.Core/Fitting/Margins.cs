namespace PackPlanner.Core.Fitting;

/// <summary>How far the whole pack could still be moved to each side before a clearance is used up.</summary>
internal static class Margins
{
    private const double StepMm = 0.5;

    /// <summary>Free distance to -x, +x, -y, +y, -z, +z, millimetres.</summary>
    internal static double[] Of(Scene scene, IReadOnlyList<Body> bodies)
    {
        double[] margins = new double[6];
        if (bodies.Count == 0)
            return margins;
        Parallel.For(0, 6, face => margins[face] = Free(scene, bodies, (Axis)(face / 2), (face & 1) == 0 ? -1 : 1));
        return margins;
    }

    private static double Free(Scene scene, IReadOnlyList<Body> bodies, Axis axis, int sign)
    {
        // Beyond the far wall nothing is free, so the walk ends.
        double most = scene.Parts.Max(p => p.Extent(axis).High) - scene.Parts.Min(p => p.Extent(axis).Low);
        double free = most;
        // Those nearest to the wall first: they leave the others little way to be looked at.
        foreach (Body body in bodies.OrderByDescending(b => sign * b.Centre[axis]))
        {
            double clear = 0;
            while (clear < free && Clear(body, Math.Min(free, clear + StepMm)))
                clear = Math.Min(free, clear + StepMm);
            if (clear >= free)
                continue;
            double low = clear, high = Math.Min(free, clear + StepMm);
            for (int i = 0; i < 40; i++)
            {
                double middle = (low + high) / 2;
                if (Clear(body, middle))
                    low = middle;
                else
                    high = middle;
            }

            free = low;
        }

        return free;

        bool Clear(Body body, double mm) =>
            LayoutCheck.IsClear(scene, body with { Centre = body.Centre.With(axis, body.Centre[axis] + (sign * mm)) });
    }
}
