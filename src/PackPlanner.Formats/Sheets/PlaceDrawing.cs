using System.Globalization;
using System.Text;
using PackPlanner.Core.Fitting;
using PackPlanner.Core.Jobs;

namespace PackPlanner.Formats.Sheets;

/// <summary>The placement as a drawing in mm: cavity, cells with group and sign, an edge grid, and where pack minus is.</summary>
internal static class PlaceDrawing
{
    private const double GridMm = 50;
    private const double EdgeMm = 16;

    /// <summary>Heights at which cells stand, from below.</summary>
    internal static IReadOnlyList<double> Layers(IReadOnlyList<PlacedLabel> places)
    {
        List<double> layers = [];
        foreach (double z in places.Select(place => place.Place.Centre.Z).Order())
        {
            if (layers.Count == 0 || z - layers[^1] > 1)
                layers.Add(z);
        }

        return layers;
    }

    /// <summary>One layer as SVG.</summary>
    /// <param name="fitCase">The cavity.</param>
    /// <param name="places">All places.</param>
    /// <param name="layerMm">Height of the layer.</param>
    /// <param name="below">Seen from below, mirrored left to right.</param>
    internal static string Svg(FitCase fitCase, IReadOnlyList<PlacedLabel> places, double layerMm, bool below)
    {
        PlacedLabel[] cells = [.. places.Where(place => Math.Abs(place.Place.Centre.Z - layerMm) <= 1)];
        (double x0, double y0, double x1, double y1) = Frame(places);
        double width = x1 - x0 + (2 * EdgeMm);
        double height = y1 - y0 + (2 * EdgeMm);
        // Paper has y downwards; the drawing has y to the back, so that the back is at the top of the page.
        double X(double x) => EdgeMm + (below ? x1 - x : x - x0);
        double Y(double y) => EdgeMm + y1 - y;
        StringBuilder svg = new();
        svg.Append(Inv($"<svg viewBox=\"0 0 {width:0.##} {height:0.##}\" role=\"img\" aria-label=\"placement seen from {(below ? "below" : "above")}\" font-family=\"Arial, Helvetica, sans-serif\">\n"));
        svg.Append(Inv($"<rect x=\"{EdgeMm}\" y=\"{EdgeMm}\" width=\"{x1 - x0:0.##}\" height=\"{y1 - y0:0.##}\" fill=\"none\" stroke=\"#000\" stroke-width=\".6\"/>\n"));
        Grid(svg, X, Y, (x0, y0, x1, y1));
        foreach (PlacedLabel cell in cells)
            Cell(svg, cell, X(cell.Place.Centre.X), Y(cell.Place.Centre.Y), below);
        MinusArrow(svg, cells, X, Y, (x0, y0, x1, y1));
        return svg.Append("</svg>").ToString();
    }

    private static (double X0, double Y0, double X1, double Y1) Frame(IReadOnlyList<PlacedLabel> places) => (
        places.Min(place => place.Place.Centre.X - (place.Place.SizeMm.X / 2)) - 4,
        places.Min(place => place.Place.Centre.Y - (place.Place.SizeMm.Y / 2)) - 4,
        places.Max(place => place.Place.Centre.X + (place.Place.SizeMm.X / 2)) + 4,
        places.Max(place => place.Place.Centre.Y + (place.Place.SizeMm.Y / 2)) + 4);

    private static void Grid(StringBuilder svg, Func<double, double> x, Func<double, double> y, (double X0, double Y0, double X1, double Y1) frame)
    {
        for (double at = FirstTick(frame.X0); at <= frame.X1; at += GridMm)
        {
            svg.Append(Inv($"<path d=\"M{x(at):0.##} {EdgeMm - 3}V{EdgeMm}M{x(at):0.##} {y(frame.Y0):0.##}v3\" stroke=\"#000\" stroke-width=\".4\"/>"));
            svg.Append(Inv($"<text x=\"{x(at):0.##}\" y=\"{EdgeMm - 4}\" font-size=\"6\" text-anchor=\"middle\">{at:0}</text>\n"));
        }

        for (double at = FirstTick(frame.Y0); at <= frame.Y1; at += GridMm)
        {
            svg.Append(Inv($"<path d=\"M{EdgeMm - 3} {y(at):0.##}H{EdgeMm}\" stroke=\"#000\" stroke-width=\".4\"/>"));
            svg.Append(Inv($"<text x=\"{EdgeMm - 4}\" y=\"{y(at) + 2:0.##}\" font-size=\"6\" text-anchor=\"end\">{at:0}</text>\n"));
        }
    }

    // The sum makes a negative zero positive.
    private static double FirstTick(double from) => (Math.Ceiling(from / GridMm) * GridMm) + 0.0;

    private static void Cell(StringBuilder svg, PlacedLabel cell, double x, double y, bool below)
    {
        PointMm size = cell.Place.SizeMm;
        string style = cell.Position is null ? "fill=\"none\" stroke=\"#000\" stroke-width=\".3\" stroke-dasharray=\"1.5 1\"" : "fill=\"none\" stroke=\"#000\" stroke-width=\".5\"";
        svg.Append(cell.Place.RoundAlong == Axis.Z
            ? Inv($"<circle cx=\"{x:0.##}\" cy=\"{y:0.##}\" r=\"{size.X / 2:0.##}\" {style}/>")
            : Inv($"<rect x=\"{x - (size.X / 2):0.##}\" y=\"{y - (size.Y / 2):0.##}\" width=\"{size.X:0.##}\" height=\"{size.Y:0.##}\" {style}/>"));
        if (cell.Position is not { } group)
        {
            svg.Append('\n');
            return;
        }

        // A ring inside marks the plus end as well, so that the sign is told apart at arm's length.
        bool? plus = cell.PlusUp ^ below;
        if (plus == true && cell.Place.RoundAlong == Axis.Z)
            svg.Append(Inv($"<circle cx=\"{x:0.##}\" cy=\"{y:0.##}\" r=\"{(size.X / 2) - 1.4:0.##}\" fill=\"none\" stroke=\"#000\" stroke-width=\".9\"/>"));
        string sign = plus switch { true => "+", false => "−", null => "" };
        svg.Append(Inv($"<text x=\"{x:0.##}\" y=\"{y + 2.8:0.##}\" font-size=\"8\" font-weight=\"bold\" text-anchor=\"middle\">{sign}{group}</text>\n"));
    }

    private static void MinusArrow(StringBuilder svg, PlacedLabel[] cells, Func<double, double> x, Func<double, double> y, (double X0, double Y0, double X1, double Y1) frame)
    {
        PlacedLabel[] first = [.. cells.Where(cell => cell.Position == 1)];
        if (first.Length == 0)
            return;
        double at = x(first.Average(cell => cell.Place.Centre.X));
        double foot = y(frame.Y0);
        double left = Math.Min(x(frame.X0), x(frame.X1));
        double right = Math.Max(x(frame.X0), x(frame.X1));
        bool toTheRight = at < (left + right) / 2;
        svg.Append(Inv($"<path d=\"M{at:0.##} {foot + 13:0.##}V{foot + 2:0.##}m-2.5 4l2.5 -4l2.5 4\" fill=\"none\" stroke=\"#000\" stroke-width=\"1\"/>"));
        svg.Append(Inv($"<text x=\"{at + (toTheRight ? 4 : -4):0.##}\" y=\"{foot + 12:0.##}\" font-size=\"8\" font-weight=\"bold\" text-anchor=\"{(toTheRight ? "start" : "end")}\">pack minus this end</text>\n"));
    }

    private static string Inv(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
