using PackPlanner.Core.Screening;
using PackPlanner.Formats.Sheets;
using PackPlanner.Formats.Words;
using ScottPlot;

namespace PackPlanner.Formats.Pictures;

/// <summary>Each cell of the lot as a mark: resistance against capacity; without resistances the cells in the order of their capacity.</summary>
internal static class LotPicture
{
    // Of fewer cells nothing spreads.
    private const int Fewest = 3;

    private static readonly (Verdict Verdict, string Says, MarkerShape Shape, float Size)[] Kinds =
    [
        (Verdict.Use, "use", MarkerShape.OpenCircle, 11),
        (Verdict.Hold, "hold", MarkerShape.FilledTriangleUp, 15),
        (Verdict.Reject, "reject", MarkerShape.Eks, 15),
    ];

    internal static string? WhyNot(SheetInput input) => input.Lot is not { } lot ? "the job has no cells"
        : lot.Cells.Count(cell => cell.CapacityAh is not null) < Fewest ? "fewer than three cells have a capacity" : null;

    internal static IReadOnlyList<Chart> Draw(SheetInput input)
    {
        ScreenedLot lot = input.Lot!;
        bool both = lot.Cells.Count(cell => cell is { CapacityAh: not null, ResistanceMilliohm: not null }) >= Fewest;
        string title = $"Spread of the lot: {Figures.Fixed(lot.Cells.Count, 0)} cells";
        Chart chart = both
            ? new Chart(input, title, "capacity, Ah", "resistance, mΩ")
            : new Chart(input, title, "cells, smallest first", "capacity, Ah");
        foreach ((Verdict verdict, string says, MarkerShape shape, float size) in Kinds)
        {
            Coordinates[] points = both ? Both(lot, verdict) : InOrder(lot, verdict);
            if (points.Length == 0)
                continue;
            ScottPlot.Plottables.Markers marks = chart.Plot.Add.Markers(points, shape, size, Chart.Ink);
            marks.MarkerStyle.LineWidth = verdict == Verdict.Reject ? 3 : 1.5f;
            marks.LegendText = $"{says}: {Figures.Fixed(points.Length, 0)}";
        }

        Limits(chart, lot, both);
        chart.Plot.ShowLegend(Edge.Bottom);
        return [chart];
    }

    private static Coordinates[] Both(ScreenedLot lot, Verdict verdict) =>
    [
        .. lot.Cells.Where(cell => cell.Verdict == verdict && cell is { CapacityAh: not null, ResistanceMilliohm: not null })
            .Select(cell => new Coordinates(cell.CapacityAh!.Value, cell.ResistanceMilliohm!.Value)),
    ];

    private static Coordinates[] InOrder(ScreenedLot lot, Verdict verdict) =>
    [
        .. lot.Cells.Where(cell => cell.CapacityAh is not null).OrderBy(cell => cell.CapacityAh).ThenBy(cell => cell.Label, StringComparer.Ordinal)
            .Select((cell, i) => (cell.Verdict, Point: new Coordinates(i + 1, cell.CapacityAh!.Value)))
            .Where(cell => cell.Verdict == verdict).Select(cell => cell.Point),
    ];

    // One limit for each model; of many models the lines would say nothing.
    private static void Limits(Chart chart, ScreenedLot lot, bool capacityAcross)
    {
        double[] limits = [.. lot.Models.Select(model => model.LeastAh).OfType<double>().Distinct().Order()];
        if (limits.Length is 0 or > 3)
            return;
        foreach (double limit in limits)
        {
            ScottPlot.Plottables.AxisLine line = capacityAcross ? chart.Plot.Add.VerticalLine(limit) : chart.Plot.Add.HorizontalLine(limit);
            line.Color = Chart.Middle;
            line.LineWidth = 3;
            line.LegendText = $"least: {Figures.Digits(limit, 3)} Ah";
        }
    }
}
