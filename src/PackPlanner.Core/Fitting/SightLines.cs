namespace PackPlanner.Core.Fitting;

/// <summary>What a straight line along an axis meets in a case: for drawings at any scale and from any side.</summary>
public sealed class SightLines
{
    // A prism whose outline stands across the line of sight is tried at so many points.
    private const int Points = 9;

    private readonly Scene scene;

    /// <summary>Makes a case ready to be looked at.</summary>
    /// <param name="fitCase">A case without problems, see <see cref="FitCaseCheck"/>.</param>
    public SightLines(FitCase fitCase)
    {
        ArgumentNullException.ThrowIfNull(fitCase);
        scene = new Scene(fitCase);
    }

    /// <summary>The smallest and the largest coordinate of the cavity along an axis, millimetres.</summary>
    /// <param name="axis">Which axis.</param>
    /// <returns>Millimetres.</returns>
    public (double Low, double High) Extent(Axis axis) =>
        (scene.Parts.Min(part => part.Extent(axis).Low), scene.Parts.Max(part => part.Extent(axis).High));

    /// <summary>Looks along one line.</summary>
    /// <param name="along">The direction of sight.</param>
    /// <param name="first">Where the line stands, along the first of the two other axes in the order x, y, z; millimetres.</param>
    /// <param name="second">The same along the second.</param>
    /// <param name="low">From where on, millimetres along the direction of sight.</param>
    /// <param name="high">Up to where.</param>
    /// <returns>Whether any of it lies in the cavity, and whether any of it lies in a place that must stay free.</returns>
    public (bool Inside, bool Blocked) At(Axis along, double first, double second, double low, double high)
    {
        PointMm from = Axes3.Place(along, low, first, second), to = Axes3.Place(along, high, first, second);
        return (
            scene.Parts.Any(part => Meets(part, along, first, second, low, high)),
            scene.Blocks.Any(block => Meets(block, along, first, second, low, high))
                || scene.Tubes.Any(tube => tube.ToBox(new Box3(from.X, from.Y, from.Z, to.X, to.Y, to.Z)) < tube.Radius));
    }

    private static bool Meets(Prism3 part, Axis along, double first, double second, double low, double high)
    {
        Prism3 p = part.Along(along);
        if (p.Extrusion == along)
            return p.Low <= high && p.High >= low && Geometry2.Contains(p.U, p.V, first, second);
        PointMm at = Axes3.Place(along, low, first, second);
        if (at[p.Extrusion] < p.Low || at[p.Extrusion] > p.High)
            return false;
        (double least, double most) = p.Extent(along);
        (double start, double end) = (Math.Max(low, least), Math.Min(high, most));
        for (int i = 0; i < Points && start <= end; i++)
        {
            PointMm here = at.With(along, start + ((end - start) * (i + 0.5) / Points));
            if (Geometry2.Contains(p.U, p.V, here[p.First], here[p.Second]))
                return true;
        }

        return false;
    }
}
