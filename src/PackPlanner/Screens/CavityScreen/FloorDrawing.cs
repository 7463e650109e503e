using PackPlanner.Core.Fitting;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.CavityScreen;

/// <summary>The cavity from above, to scale: walls, what must stay free, and the cells of one layer.</summary>
internal static class FloorDrawing
{
    /// <summary>Cells of each layer, from the floor up; cells whose middles are within a millimetre in height stand together.</summary>
    internal static IReadOnlyList<IReadOnlyList<PlacedCell>> Layers(FitAnswer answer) =>
        [.. answer.Cells.GroupBy(cell => Math.Round(cell.Centre.Z)).OrderBy(layer => layer.Key).Select(layer => (IReadOnlyList<PlacedCell>)[.. layer])];

    internal static void Paint(Area area, FitCase fitCase, FitAnswer answer, int layer)
    {
        (double lowX, double lowY, double highX, double highY) = Extent(fitCase);
        // A sign is about twice as high as it is wide.
        double scale = Math.Min((area.Width - 2) / (highX - lowX), 2 * (area.Height - 2) / (highY - lowY));
        int Column(double x) => 1 + (int)Math.Round((x - lowX) * scale);
        int Row(double y) => 1 + (int)Math.Round((highY - y) * scale / 2);
        foreach (NamedSolid part in fitCase.Cavity)
            Outline(area, Box(part.Shape), Column, Row, ' ');
        foreach (NamedSolid part in fitCase.KeepOuts)
            Outline(area, Box(part.Shape), Column, Row, '#');
        IReadOnlyList<IReadOnlyList<PlacedCell>> layers = Layers(answer);
        if (layers.Count == 0)
            return;
        IReadOnlyList<PlacedCell> shown = layers[Math.Clamp(layer, 0, layers.Count - 1)];
        double[] heights = [.. shown.Select(cell => Math.Round(cell.Centre.Y)).Distinct().OrderDescending()];
        int first = Row(highY);
        // Rows that would fall together are drawn one below the other instead, where nothing else gives the scale.
        bool byRank = fitCase.KeepOuts.Count == 0 && heights.Select(y => Row(y)).Distinct().Count() < heights.Length && heights.Length <= Row(lowY) - first + 1;
        foreach (PlacedCell cell in shown)
            area.Write(Column(cell.Centre.X), byRank ? first + Array.IndexOf(heights, Math.Round(cell.Centre.Y)) : Row(cell.Centre.Y), cell.Group is null ? "·" : "o");
    }

    private static (double LowX, double LowY, double HighX, double HighY) Extent(FitCase fitCase)
    {
        (double X0, double Y0, double X1, double Y1)[] boxes = [.. fitCase.Cavity.Select(part => Box(part.Shape))];
        return (boxes.Min(b => b.X0), boxes.Min(b => b.Y0), boxes.Max(b => b.X1), boxes.Max(b => b.Y1));
    }

    private static (double X0, double Y0, double X1, double Y1) Box(Solid solid)
    {
        switch (solid)
        {
            case Solid.Box box:
                return (box.From.X, box.From.Y, box.To.X, box.To.Y);
            case Solid.Tube tube:
                double r = tube.DiameterMm / 2;
                return (Math.Min(tube.From.X, tube.To.X) - r, Math.Min(tube.From.Y, tube.To.Y) - r, Math.Max(tube.From.X, tube.To.X) + r, Math.Max(tube.From.Y, tube.To.Y) + r);
            case Solid.Prism prism:
                double lowU = prism.Outline.Min(p => p.U), highU = prism.Outline.Max(p => p.U), lowV = prism.Outline.Min(p => p.V), highV = prism.Outline.Max(p => p.V);
                return prism.Extrusion switch
                {
                    Axis.Y => (lowU, prism.FromMm, highU, prism.ToMm),
                    Axis.Z => (lowU, lowV, highU, highV),
                    _ => (prism.FromMm, lowU, prism.ToMm, highU),
                };
            default:
                throw new System.Diagnostics.UnreachableException();
        }
    }

    private static void Outline(Area area, (double X0, double Y0, double X1, double Y1) box, Func<double, int> column, Func<double, int> row, char fill)
    {
        (int left, int right, int top, int bottom) = (column(box.X0) - 1, column(box.X1) + 1, row(box.Y1) - 1, row(box.Y0) + 1);
        if (fill == '#')
        {
            (left, right, top, bottom) = (left + 1, right - 1, top + 1, bottom - 1);
            for (int y = top; y <= bottom; y++)
                area.Write(left, y, new string('#', Math.Max(1, right - left + 1)));
            return;
        }

        string across = new('─', Math.Max(0, right - left - 1));
        area.Write(left, top, "┌" + across + "┐");
        area.Write(left, bottom, "└" + across + "┘");
        for (int y = top + 1; y < bottom; y++)
        {
            area.Write(left, y, "│");
            area.Write(right, y, "│");
        }
    }
}
