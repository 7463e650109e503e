using System.Globalization;
using System.Text;
using PackPlanner.Core.Fitting;
using PackPlanner.Core.Jobs;

namespace PackPlanner.Formats.Sheets;

/// <summary>The placement as a drawing in millimetres of paper: cells with group and sign, an edge grid in mm of the pack, and where pack minus is.</summary>
internal static class PlaceDrawing
{
    /// <summary>What marks the hatching of walls in the drawing.</summary>
    internal const string Walls = "class=\"walls\"";

    private const double GridMm = 50;
    private const double Type = PlacePart.TypeMm;

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

    /// <summary>One part of one layer as SVG.</summary>
    /// <param name="places">All places.</param>
    /// <param name="layerMm">Height of the layer.</param>
    /// <param name="below">Seen from below, mirrored left to right.</param>
    /// <param name="part">Which part, and how large.</param>
    /// <param name="fitCase">The cavity, whose walls and free places are hatched; null without one.</param>
    internal static string Svg(IReadOnlyList<PlacedLabel> places, double layerMm, bool below, PlacePart part, FitCase? fitCase)
    {
        PlacedLabel[] cells = [.. places.Where(place => Math.Abs(place.Place.Centre.Z - layerMm) <= 1 && part.Holds(place))];
        Paper paper = new(part, below);
        StringBuilder svg = new();
        svg.Append(Inv($"<svg viewBox=\"0 0 {part.WidthMm:0.##} {part.HeightMm:0.##}\" width=\"{part.WidthMm:0.##}mm\" height=\"{part.HeightMm:0.##}mm\" overflow=\"visible\" role=\"img\" aria-label=\"placement seen from {(below ? "below" : "above")}\" font-family=\"Arial, Helvetica, sans-serif\" font-size=\"{Type:0.##}\">\n"));
        svg.Append(Inv($"<rect x=\"{Paper.Left:0.##}\" y=\"{Paper.Top:0.##}\" width=\"{paper.Right - Paper.Left:0.##}\" height=\"{paper.Foot - Paper.Top:0.##}\" fill=\"none\" stroke=\"#000\" stroke-width=\".35\"/>\n"));
        if (fitCase is not null && PlaceWalls.Path(fitCase, cells, part, below) is { Length: > 0 } walls)
            svg.Append(Inv($"<path {Walls} transform=\"translate({Paper.Left:0.##} {Paper.Top:0.##})\" d=\"{walls}\" fill=\"none\" stroke=\"#777\" stroke-width=\".3\"/>\n"));
        Grid(svg, paper, part.Frame);
        foreach (PlacedLabel cell in cells)
            Cell(svg, cell, paper, below);
        Minus(svg, cells, places, layerMm, paper, part, below);
        return svg.Append("</svg>").ToString();
    }

    private static void Grid(StringBuilder svg, Paper paper, (double X0, double Y0, double X1, double Y1) frame)
    {
        for (double at = FirstTick(frame.X0); at <= frame.X1; at += GridMm)
        {
            svg.Append(Inv($"<path d=\"M{paper.X(at):0.##} {Paper.Top - 2}V{Paper.Top}M{paper.X(at):0.##} {paper.Foot:0.##}v2\" stroke=\"#000\" stroke-width=\".25\"/>"));
            svg.Append(Inv($"<text x=\"{paper.X(at):0.##}\" y=\"{Paper.Top - 3:0.##}\" text-anchor=\"middle\">{at:0}</text>\n"));
        }

        for (double at = FirstTick(frame.Y0); at <= frame.Y1; at += GridMm)
        {
            svg.Append(Inv($"<path d=\"M{Paper.Left - 2:0.##} {paper.Y(at):0.##}H{Paper.Left:0.##}\" stroke=\"#000\" stroke-width=\".25\"/>"));
            svg.Append(Inv($"<text x=\"{Paper.Left - 2.5:0.##}\" y=\"{paper.Y(at) + (0.36 * Type):0.##}\" text-anchor=\"end\">{at:0}</text>\n"));
        }
    }

    // The sum makes a negative zero positive.
    private static double FirstTick(double from) => (Math.Ceiling(from / GridMm) * GridMm) + 0.0;

    private static void Cell(StringBuilder svg, PlacedLabel cell, Paper paper, bool below)
    {
        double x = paper.X(cell.Place.Centre.X), y = paper.Y(cell.Place.Centre.Y);
        double wide = cell.Place.SizeMm.X * paper.Scale, deep = cell.Place.SizeMm.Y * paper.Scale;
        bool round = cell.Place.RoundAlong == Axis.Z;
        string style = cell.Position is null ? "fill=\"none\" stroke=\"#000\" stroke-width=\".2\" stroke-dasharray=\"1 .7\"" : "fill=\"none\" stroke=\"#000\" stroke-width=\".3\"";
        svg.Append(round
            ? Inv($"<circle cx=\"{x:0.##}\" cy=\"{y:0.##}\" r=\"{wide / 2:0.##}\" {style}/>")
            : Inv($"<rect x=\"{x - (wide / 2):0.##}\" y=\"{y - (deep / 2):0.##}\" width=\"{wide:0.##}\" height=\"{deep:0.##}\" {style}/>"));
        if (cell.Position is not { } group)
        {
            svg.Append('\n');
            return;
        }

        // A ring inside marks the plus end as well, so that the sign is told apart at arm's length.
        bool? plus = cell.PlusUp ^ below;
        if (plus == true && round)
            svg.Append(Inv($"<circle cx=\"{x:0.##}\" cy=\"{y:0.##}\" r=\"{(wide / 2) - 0.6:0.##}\" fill=\"none\" stroke=\"#000\" stroke-width=\".5\"/>"));
        string sign = plus switch { true => "+", false => "−", null => "" };
        // Along the longer side where a thin cell would not hold it across.
        Poles(svg, cell, x, y, wide, deep, below);
        string turned = !round && deep > wide ? Inv($" transform=\"rotate(-90 {x:0.##} {y:0.##})\"") : "";
        // A wider type face than the one reckoned with is drawn narrower, so that numbers stay inside their cells.
        string length = Inv($"textLength=\"{PlacePart.LengthMm(sign.Length, Inv($"{group}").Length):0.##}\" lengthAdjust=\"spacingAndGlyphs\"");
        svg.Append(Inv($"<text x=\"{x:0.##}\" y=\"{y + (0.36 * Type):0.##}\" {length} font-weight=\"bold\" text-anchor=\"middle\"{turned}>{sign}{group}</text>\n"));
    }

    // A box shows both its poles on one face and a lying round cell has one at each end: they stand where they are, from whichever side one looks.
    private static void Poles(StringBuilder svg, PlacedLabel cell, double x, double y, double wide, double deep, bool below)
    {
        if (cell.PlusToward is not { } toward)
            return;
        double along = (toward[1] == 'x' ? wide : deep) / 2 - (0.45 * Type);
        double step = toward[0] == '+' ? along : -along;
        (double dx, double dy) = toward[1] == 'x' ? (below ? -step : step, 0.0) : (0.0, -step);
        foreach ((string pole, int side) in new[] { ("+", 1), ("−", -1) })
            svg.Append(Inv($"<text x=\"{x + (side * dx):0.##}\" y=\"{y + (side * dy) + (0.36 * Type):0.##}\" font-weight=\"bold\" text-anchor=\"middle\">{pole}</text>"));
    }

    private static void Minus(StringBuilder svg, PlacedLabel[] cells, IReadOnlyList<PlacedLabel> places, double layerMm, Paper paper, PlacePart part, bool below)
    {
        PlacedLabel[] here = [.. cells.Where(cell => cell.Position == 1)];
        PlacedLabel[] first = here.Length > 0 ? here : [.. places.Where(place => place.Position == 1)];
        if (first.Length == 0)
            return;
        double at = Math.Clamp(paper.X(first.Average(cell => cell.Place.Centre.X)), Paper.Left + 2, paper.Right - 2);
        bool toTheRight = at < (Paper.Left + paper.Right) / 2;
        double aside = at + (toTheRight ? 3 : -3);
        string anchor = toTheRight ? "start" : "end";
        if (here.Length > 0)
            svg.Append(Inv($"<path d=\"M{at:0.##} {paper.Foot + 10:0.##}V{paper.Foot + 1.5:0.##}m-2 3l2 -3l2 3\" fill=\"none\" stroke=\"#000\" stroke-width=\".7\"/>"));
        string says = here.Length > 0 ? "pack minus this end" : Elsewhere(first, layerMm, part, below);
        // Where no arrow is drawn the words begin at the left edge: a narrow part is shorter than they are, the page is not.
        (double x, string from) = here.Length > 0 ? (aside, anchor) : (Paper.Left, "start");
        svg.Append(Inv($"<text x=\"{x:0.##}\" y=\"{paper.Foot + 9:0.##}\" font-weight=\"bold\" text-anchor=\"{from}\">{says}</text>\n"));
    }

    // No cell of group 1 is drawn here: say where to look for it.
    private static string Elsewhere(PlacedLabel[] first, double layerMm, PlacePart part, bool below)
    {
        if (!first.Any(place => Math.Abs(place.Place.Centre.Z - layerMm) <= 1))
            return "pack minus is on another layer";
        double x = first.Average(place => place.Place.Centre.X), y = first.Average(place => place.Place.Centre.Y);
        string end = x < part.Frame.X0 ? (below ? "right of" : "left of") : x > part.Frame.X1 ? (below ? "left of" : "right of") : y < part.Frame.Y0 ? "in front of" : "behind";
        return $"pack minus: in the part {end} this one";
    }

    private static string Inv(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    // Paper has y downwards; the pack has y to the back, so that the back is at the top of the page.
    private readonly struct Paper(PlacePart part, bool below)
    {
        internal double Scale => part.PaperPerMm;

        internal static double Left => PlacePart.EdgeMm;

        internal double Right => part.WidthMm - PlacePart.EdgeMm;

        internal static double Top => PlacePart.EdgeMm - 3;

        internal double Foot => part.HeightMm - PlacePart.EdgeMm - 3;

        internal double X(double x) => Left + ((below ? part.Frame.X1 - x : x - part.Frame.X0) * Scale);

        internal double Y(double y) => Top + ((part.Frame.Y1 - y) * Scale);
    }
}
