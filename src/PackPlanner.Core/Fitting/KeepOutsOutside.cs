namespace PackPlanner.Core.Fitting;

/// <summary>Keep-outs that lie wholly outside the space, where no cell can be anyway: most likely a slip of the tape measure.</summary>
public static class KeepOutsOutside
{
    /// <summary>Which keep-outs change nothing.</summary>
    /// <param name="fitCase">A case without problems, see <see cref="FitCaseCheck"/>.</param>
    /// <returns>
    /// Their places in the list, from 0. A box is judged as it is; an outline or a tube by the box around it, so that one which only passes
    /// a bend of the space may be left out here.
    /// </returns>
    public static IReadOnlyList<int> Of(FitCase fitCase)
    {
        ArgumentNullException.ThrowIfNull(fitCase);
        Prism3[] parts = [.. fitCase.Cavity.Select(part => Prism3.From(part.Shape)).OfType<Prism3>()];
        return [.. Enumerable.Range(0, fitCase.KeepOuts.Count).Where(i => !parts.Any(part => Scene.BoxOverlaps(part, Around(fitCase.KeepOuts[i].Shape))))];
    }

    private static Box3 Around(Solid shape)
    {
        if (Prism3.From(shape) is { } prism)
        {
            double[] low = [.. Axes3.All.Select(axis => prism.Extent(axis).Low)], high = [.. Axes3.All.Select(axis => prism.Extent(axis).High)];
            return new Box3(low[0], low[1], low[2], high[0], high[1], high[2]);
        }

        Solid.Tube tube = (Solid.Tube)shape;
        double radius = tube.DiameterMm / 2;
        (PointMm a, PointMm b) = (tube.From, tube.To);
        return new Box3(
            Math.Min(a.X, b.X) - radius, Math.Min(a.Y, b.Y) - radius, Math.Min(a.Z, b.Z) - radius,
            Math.Max(a.X, b.X) + radius, Math.Max(a.Y, b.Y) + radius, Math.Max(a.Z, b.Z) + radius);
    }
}
