using PackPlanner.Core.Grouping;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats.Sheets;
using PackPlanner.Formats.Words;
using ScottPlot;

namespace PackPlanner.Formats.Pictures;

/// <summary>Ampere-hours of each group; the band shows what repeating the tests alone would make of equal groups.</summary>
internal static class GroupsPicture
{
    internal static string? WhyNot(SheetInput input) => input.Groups.Count == 0
        ? input.WhyNoGroups
        : input.Groups.Any(group => group.CapacityAh is null) ? "a cell of a group has no capacity" : null;

    internal static IReadOnlyList<Chart> Draw(SheetInput input)
    {
        IReadOnlyList<JobGroup> groups = input.Groups;
        double[] ah = [.. groups.Select(group => group.CapacityAh!.Value)];
        double mean = ah.Average();
        int parallel = groups.Max(group => group.Cells.Count);
        double spread = GroupNoise.SpreadAh(input.Lot!.Repeatability.Fraction, mean / parallel, groups.Count, parallel);
        Chart chart = new(input, $"Groups: {Figures.Fixed(groups.Count, 0)} of {Figures.Fixed(parallel, 0)} cells", "group, from pack minus", "capacity, Ah");
        ScottPlot.Plottables.VerticalSpan band = chart.Plot.Add.VerticalSpan(mean - (spread / 2), mean + (spread / 2), Chart.Light);
        band.LineStyle.Width = 0;
        band.LegendText = $"noise alone: {Figures.Digits(spread, 2)} Ah between equal groups";
        ScottPlot.Plottables.Markers marks = chart.Plot.Add.Markers(ah.Select((one, i) => new Coordinates(i + 1, one)).ToArray(), MarkerShape.FilledCircle, 13, Chart.Ink);
        marks.LegendText = $"tested sum, {Figures.Fixed(ah.Min(), 3)} to {Figures.Fixed(ah.Max(), 3)} Ah";
        chart.Numbers(groups.Count);
        // The band and all marks with room, so that a spread inside the noise is seen to be inside it.
        double reach = Math.Max(Math.Max(ah.Max() - mean, mean - ah.Min()), Math.Max(spread / 2, mean * 1e-4)) * 1.4;
        chart.Plot.Axes.SetLimits(0.3, groups.Count + 0.7, mean - reach, mean + reach);
        chart.Plot.ShowLegend(Edge.Bottom);
        return [chart];
    }
}
