using PackPlanner.Core.Cells;
using PackPlanner.Core.Diagnosis;
using PackPlanner.Formats.Sheets;
using PackPlanner.Formats.Words;
using ScottPlot;

namespace PackPlanner.Formats.Pictures;

/// <summary>Volts of the groups that stand out less those of the middle group, over the latest log.</summary>
internal static class ApartPicture
{
    internal static string? WhyNot(SheetInput input) => VoltsPicture.WhyNot(input)
        ?? (input.Job.Logs[^1].Log.Groups < 3 ? "with fewer than three groups there is no middle one" : null);

    internal static IReadOnlyList<Chart> Draw(SheetInput input)
    {
        RideLog log = input.Job.Logs[^1].Log;
        int[] chosen = VoltsPicture.Chosen(input, log);
        VoltsPicture.Stretch[] stretches = [.. Apart(log, chosen)];
        Chart chart = new(input, $"Groups less the middle group over {OneLine.Of(input.Job.Logs[^1].Source.File)}", "hours", "mV from the middle group");
        chart.Plot.Add.HorizontalLine(0, 1, Chart.Middle);
        for (int k = 0; k < chosen.Length; k++)
            VoltsPicture.Line(chart, stretches, k, chosen[k]);
        chart.Plot.ShowLegend(Edge.Bottom);
        chart.WidthPx = 1100;
        return [chart];
    }

    /// <summary>Stretches of the log with the millivolts of each chosen group less the median of all.</summary>
    internal static IEnumerable<VoltsPicture.Stretch> Apart(RideLog log, int[] chosen) =>
        VoltsPicture.Thinned(log, [.. Enumerable.Range(1, log.Groups)]).Select(stretch =>
        {
            double middle = Robust.Median([.. stretch.MeanV.Where(double.IsFinite)]);
            return stretch with { MeanV = [.. chosen.Select(group => 1000 * (stretch.MeanV[group - 1] - middle))] };
        });
}
