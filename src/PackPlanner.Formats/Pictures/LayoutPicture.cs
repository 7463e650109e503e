using PackPlanner.Core.Fitting;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats.Sheets;
using PackPlanner.Formats.Words;
using ScottPlot;

namespace PackPlanner.Formats.Pictures;

/// <summary>The cells of a layer seen from above, in mm: number of the group, the end that faces up, spare places.</summary>
internal static class LayoutPicture
{
    // A cell is drawn at least this large, so that its number can be read at half size; and no picture is wider than a wall.
    private const double LeastCellPx = 46, MostPx = 2200, LeastPx = 760;
    private const double EdgeMm = 12;

    internal static string? WhyNot(SheetInput input) => input.Layout is not null ? null
        : input.Case is null ? "the job has no cavity" : "the pack does not fit its cavity";

    internal static IReadOnlyList<Chart> Draw(SheetInput input)
    {
        IReadOnlyList<double> layers = PlaceDrawing.Layers(input.Places);
        return [.. layers.Select((z, i) => Layer(input, z, layers.Count == 1 ? "" : $"Layer {Figures.Fixed(i + 1, 0)} of {Figures.Fixed(layers.Count, 0)} from below, seen from above"))];
    }

    private static Chart Layer(SheetInput input, double layerMm, string which)
    {
        PlacedLabel[] cells = [.. input.Places.Where(place => Math.Abs(place.Place.Centre.Z - layerMm) <= 1)];
        Chart chart = new(input, which.Length > 0 ? which : "Layout seen from above", "mm", "mm");
        double px = Scale(chart, input.Places);
        foreach (PlacedLabel cell in cells)
            Cell(chart, cell, px);
        if (cells.Any(cell => cell.Position == 1))
            Minus(chart, cells, input.Places);
        Legend(chart, cells);
        return chart;
    }

    private static double Scale(Chart chart, IReadOnlyList<PlacedLabel> places)
    {
        double left = places.Min(place => place.Place.Centre.X - (place.Place.SizeMm.X / 2)) - EdgeMm;
        double right = places.Max(place => place.Place.Centre.X + (place.Place.SizeMm.X / 2)) + EdgeMm;
        double near = places.Min(place => place.Place.Centre.Y - (place.Place.SizeMm.Y / 2)) - (2 * EdgeMm);
        double far = places.Max(place => place.Place.Centre.Y + (place.Place.SizeMm.Y / 2)) + EdgeMm;
        double smallest = places.Min(place => Math.Min(place.Place.SizeMm.X, place.Place.SizeMm.Y));
        double px = Math.Clamp(LeastCellPx / smallest, LeastPx / (right - left), MostPx / Math.Max(right - left, far - near));
        chart.Plot.Axes.SetLimits(left, right, near, far);
        chart.WidthPx = (int)Math.Ceiling((right - left) * px) + 130;
        chart.HeightPx = (int)Math.Ceiling((far - near) * px) + 230;
        // One millimetre is as long across as it is along.
        chart.Plot.Axes.SquareUnits();
        chart.Plot.Grid.IsVisible = false;
        return px;
    }

    private static void Cell(Chart chart, PlacedLabel cell, double px)
    {
        PointMm at = cell.Place.Centre, size = cell.Place.SizeMm;
        Color fill = cell.Position is null ? Chart.Paper : cell.PlusUp == true ? Chart.Light : Chart.Paper;
        if (cell.Place.RoundAlong == Axis.Z)
        {
            ScottPlot.Plottables.Ellipse circle = chart.Plot.Add.Circle(at.X, at.Y, size.X / 2);
            circle.FillColor = fill;
            Edge(circle.LineStyle, cell);
        }
        else
        {
            ScottPlot.Plottables.Rectangle box = chart.Plot.Add.Rectangle(at.X - (size.X / 2), at.X + (size.X / 2), at.Y - (size.Y / 2), at.Y + (size.Y / 2));
            box.FillColor = fill;
            Edge(box.LineStyle, cell);
        }

        if (cell.Position is not { } group)
            return;
        if (cell.PlusToward is { } toward)
        {
            double step = (toward[1] == 'x' ? size.X : size.Y) * (toward[0] == '+' ? 0.42 : -0.42);
            (double dx, double dy) = toward[1] == 'x' ? (step, 0.0) : (0.0, step);
            chart.Words("+", at.X + dx, at.Y + dy, Alignment.MiddleCenter, bold: true);
            chart.Words("−", at.X - dx, at.Y - dy, Alignment.MiddleCenter, bold: true);
        }

        string sign = cell.PlusUp switch { true => "+", false => "−", null => "" };
        float type = (float)Math.Clamp(Math.Min(size.X, size.Y) * px * 0.4, 12, 34);
        chart.Words($"{sign}{Figures.Fixed(group, 0)}", at.X, at.Y, Alignment.MiddleCenter, type, bold: true);
    }

    private static void Edge(LineStyle line, PlacedLabel cell)
    {
        line.Color = cell.Position is null ? Chart.Middle : Chart.Ink;
        line.Width = cell.Position is null ? 1 : 1.5f;
    }

    private static void Minus(Chart chart, PlacedLabel[] cells, IReadOnlyList<PlacedLabel> places)
    {
        double x = cells.Where(cell => cell.Position == 1).Average(cell => cell.Place.Centre.X);
        double foot = places.Min(place => place.Place.Centre.Y - (place.Place.SizeMm.Y / 2));
        bool right = x > places.Average(place => place.Place.Centre.X);
        chart.Words(right ? "pack minus this end ▲" : "▲ pack minus this end", x, foot - 3, right ? Alignment.UpperRight : Alignment.UpperLeft, bold: true);
    }

    private static void Legend(Chart chart, PlacedLabel[] cells)
    {
        List<LegendItem> items = [];
        void Add(string says, Color fill, Color edge) => items.Add(new LegendItem
        {
            LabelText = says,
            FillColor = fill,
            OutlineColor = edge,
            OutlineWidth = 1.5f,
        });
        if (cells.Any(cell => cell.PlusUp == true))
            Add("+ plus end up", Chart.Light, Chart.Ink);
        if (cells.Any(cell => cell.PlusUp == false))
            Add("− minus end up", Chart.Paper, Chart.Ink);
        if (cells.Any(cell => cell.Position is null))
            Add("spare place", Chart.Paper, Chart.Middle);
        if (items.Count == 0)
            return;
        chart.Plot.Legend.ManualItems.AddRange(items);
        chart.Plot.ShowLegend(ScottPlot.Edge.Bottom);
    }
}
