namespace PackPlanner.Core.Fitting;

/// <summary>
/// Closes up layers of round cells that stand too far apart for a link: each cell by itself moves towards the layer before it as far as
/// walls and keep-outs let it, so that links reach although a cell beside a tube has to stay where it is.
/// </summary>
internal static class LayerShift
{
    private const double StepMm = 0.5;

    /// <summary>The same cells, moved along their axis in each of four ways; only those ways in which something moves.</summary>
    /// <param name="scene">The cavity.</param>
    /// <param name="layout">Round cells of one direction.</param>
    internal static IEnumerable<Layout> ClosedUp(Scene scene, Layout layout)
    {
        if (layout.Bodies.Count == 0 || layout.Bodies[0].Attitude.RoundAlong is not Axis axis)
            yield break;
        foreach (int sign in (int[])[1, -1])
        {
            foreach (bool level in (bool[])[true, false])
            {
                if (Moved(scene, layout.Bodies, axis, sign, level) is { } bodies && LayoutCheck.Broken(scene, bodies).Count == 0)
                    yield return layout with { Bodies = bodies, Regular = false };
            }
        }
    }

    /// <param name="scene">The cavity.</param>
    /// <param name="cells">Round cells of one direction.</param>
    /// <param name="axis">That direction.</param>
    /// <param name="sign">1: towards the low end of the axis; -1: towards the high end.</param>
    /// <param name="level">A cell that cannot go far enough for a link stays, so that a layer stands on two levels only.</param>
    private static Body[]? Moved(Scene scene, IReadOnlyList<Body> cells, Axis axis, int sign, bool level)
    {
        double pitch = cells[0].Attitude.Size(axis) + scene.Case.Clearances.LayerGapMm, reach = scene.Case.LinkReachMm;
        Body[] bodies = [.. cells.OrderBy(b => sign * b.Centre[axis])];
        bool moved = false;
        double before = double.NaN;
        for (int from = 0; from < bodies.Length;)
        {
            int to = from + 1;
            while (to < bodies.Length && sign * (bodies[to].Centre[axis] - bodies[from].Centre[axis]) < pitch / 2)
                to++;
            double spare = (sign * bodies[from].Centre[axis]) - before - pitch;
            for (int i = from; i < to && spare > reach + Geometry2.RoundingMm; i++)
            {
                double by = FreeWay(scene, bodies[i], axis, sign, spare, level ? spare - reach : 0);
                moved |= by > 0;
                bodies[i] = bodies[i] with { Centre = bodies[i].Centre.With(axis, bodies[i].Centre[axis] - (sign * by)) };
            }

            before = bodies[from..to].Max(b => sign * b.Centre[axis]);
            from = to;
        }

        return moved ? bodies : null;
    }

    /// <summary>How far a cell can move, at most <paramref name="most"/>; 0 when that is less than <paramref name="least"/>.</summary>
    private static double FreeWay(Scene scene, in Body body, Axis axis, int sign, double most, double least)
    {
        for (double by = most; by > 0 && by >= least - Geometry2.RoundingMm; by -= StepMm)
        {
            if (LayoutCheck.IsClear(scene, body with { Centre = body.Centre.With(axis, body.Centre[axis] - (sign * by)) }))
                return by;
        }

        return 0;
    }
}
