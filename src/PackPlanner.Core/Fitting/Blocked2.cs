namespace PackPlanner.Core.Fitting;

/// <summary>What a keep-out takes from one layer of round cells, seen along their axis: a convex outline from which every centre stays away.</summary>
/// <param name="U">Corners, anticlockwise, millimetres.</param>
/// <param name="V">Corners.</param>
internal sealed record Blocked2(double[] U, double[] V)
{
    // A hair less than what is blocked: a cell that only touches it is allowed.
    private const double Hair = 2 * Geometry2.RoundingMm;

    /// <summary>
    /// Keep-outs that no cell of a layer can pass above or below, wherever in the layer its bare body begins. Keep-outs that are not convex, or
    /// prisms drawn out along another axis, are left out, which only makes a bound larger.
    /// </summary>
    /// <param name="scene">The keep-outs.</param>
    /// <param name="axis">The axis of the cells.</param>
    /// <param name="mostLow">The highest place at which a skin of the layer may begin.</param>
    /// <param name="leastHigh">The lowest at which one may end.</param>
    internal static IReadOnlyList<Blocked2> Of(Scene scene, Axis axis, double mostLow, double leastHigh)
    {
        List<Blocked2> blocked = [];
        foreach (Prism3 given in scene.Blocks)
        {
            Prism3 block = given.Along(axis);
            if (block.Extrusion == axis && block.IsConvex && block.Low < leastHigh - Hair && block.High > mostLow + Hair)
                blocked.Add(new Blocked2(block.U, block.V));
        }

        foreach (Tube3 tube in scene.Tubes)
        {
            if (OfTube(tube, axis, mostLow + Hair, leastHigh - Hair) is { } strip)
                blocked.Add(strip);
        }

        return blocked;
    }

    /// <summary>The four corners of a rectangle, at any angle.</summary>
    internal bool IsRectangle => U.Length == 4 && Math.Abs(Turn(0)) < 1e-9 && Math.Abs(Turn(1)) < 1e-9 && Math.Abs(Turn(2)) < 1e-9;

    // The sides at a corner and the next, one times the other: nought at a right angle.
    private double Turn(int corner)
    {
        (int a, int b, int c) = (corner, (corner + 1) % 4, (corner + 2) % 4);
        double first = Math.Sqrt(((U[b] - U[a]) * (U[b] - U[a])) + ((V[b] - V[a]) * (V[b] - V[a]))), second = Math.Sqrt(((U[c] - U[b]) * (U[c] - U[b])) + ((V[c] - V[b]) * (V[c] - V[b])));
        return (((U[b] - U[a]) * (U[c] - U[b])) + ((V[b] - V[a]) * (V[c] - V[b]))) / Math.Max(first * second, 1e-12);
    }

    // Across the centre line, at its own height, a bar is as wide as it is thick: that strip is taken as far as the line is beside every cell of the layer.
    private static Blocked2? OfTube(Tube3 tube, Axis axis, double mostLow, double leastHigh)
    {
        (Axis first, Axis second) = Axes3.Others(axis);
        double a0 = tube.From[axis], da = tube.To[axis] - a0, from = 0, to = 1;
        if (mostLow >= leastHigh)
            return null;
        if (Math.Abs(da) > 1e-9)
            (from, to) = (Math.Max(0, Math.Min((mostLow - a0) / da, (leastHigh - a0) / da)), Math.Min(1, Math.Max((mostLow - a0) / da, (leastHigh - a0) / da)));
        else if (a0 < mostLow || a0 > leastHigh)
            return null;
        if (from > to)
            return null;
        double p0 = tube.From[first], q0 = tube.From[second], dp = tube.To[first] - p0, dq = tube.To[second] - q0, length = Math.Sqrt((dp * dp) + (dq * dq));
        if (length * (to - from) < 1e-6)
        {
            double[] angles = [.. Enumerable.Range(0, 24).Select(i => i * Math.PI / 12)];
            return new Blocked2([.. angles.Select(a => p0 + (from * dp) + (tube.Radius * Math.Cos(a)))], [.. angles.Select(a => q0 + (from * dq) + (tube.Radius * Math.Sin(a)))]);
        }

        double nu = -dq / length * tube.Radius, nv = dp / length * tube.Radius, u0 = p0 + (from * dp), u1 = p0 + (to * dp), v0 = q0 + (from * dq), v1 = q0 + (to * dq);
        return new Blocked2([u0 - nu, u1 - nu, u1 + nu, u0 + nu], [v0 - nv, v1 - nv, v1 + nv, v0 + nv]);
    }
}
