using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.Plots;

/// <summary>Points of a lot, a sign for each kind; where several fall together the gravest sign shows.</summary>
internal static class ScatterPlot
{
    /// <param name="area">Where.</param>
    /// <param name="points">Place and sign of each; later ones lie on top.</param>
    /// <param name="unitX">Name of the bottom axis with its unit.</param>
    internal static void Paint(Area area, IReadOnlyList<(double X, double Y, string Sign)> points, string unitX)
    {
        if (area.Height < 4 || area.Width < 24 || points.Count == 0)
            return;
        (double lowX, double highX) = PlotFrame.Range(points.Select(p => p.X));
        (double lowY, double highY) = PlotFrame.Range(points.Select(p => p.Y));
        PlotFrame frame = new(area, lowX, highX, lowY, highY);
        frame.PaintAxes(unitX);
        Area inside = frame.Inside;
        // Ten thousand points fall on a few hundred places; each place is written once.
        Dictionary<(int X, int Y), string> signs = [];
        foreach ((double x, double y, string sign) in points)
            signs[((int)Math.Round(frame.ColumnOf(x)), (int)Math.Round(frame.RowOf(y)))] = sign;
        foreach (((int x, int y), string sign) in signs)
            inside.Write(x, y, sign);
    }
}
