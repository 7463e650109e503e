using PackPlanner.Core.Diagnosis;
using PackPlanner.Formats.Sheets;
using PackPlanner.Formats.Words;
using ScottPlot;

namespace PackPlanner.Formats.Pictures;

/// <summary>Volts of the groups over the latest log: the band from the lowest to the highest, and the groups that stand out.</summary>
internal static class VoltsPicture
{
    // About one point for each two pixels; a log of millions of rows draws no slower than that.
    private const int Points = 450;
    private const int MostGroups = 4;

    // A mark on every so many points, at other points for each group, so that lines which cross stay apart without colour.
    private const int PointsForAMark = 28;

    private static readonly MarkerShape[] Shapes = [MarkerShape.OpenCircle, MarkerShape.FilledTriangleUp, MarkerShape.Eks, MarkerShape.FilledSquare];

    /// <summary>One stretch of the log: lowest and highest volts of any group in it, and the mean of each chosen group.</summary>
    internal sealed record Stretch(double Hours, double LowestV, double HighestV, IReadOnlyList<double> MeanV);

    internal static string? WhyNot(SheetInput input) => input.Job.Logs.LastOrDefault()?.Log is not { } log ? "the job has no log"
        : log.Rows < 2 || !log.GroupV.Any(volts => volts.Any(double.IsFinite)) ? "the log holds no volts" : null;

    internal static IReadOnlyList<Chart> Draw(SheetInput input)
    {
        RideLog log = input.Job.Logs[^1].Log;
        int[] chosen = Chosen(input, log);
        Stretch[] stretches = [.. Thinned(log, chosen).Where(stretch => double.IsFinite(stretch.LowestV))];
        Chart chart = new(input, $"Volts of {Figures.Fixed(log.Groups, 0)} groups over {OneLine.Of(input.Job.Logs[^1].Source.File)}", "hours", "volts of a group");
        ScottPlot.Plottables.FillY band = chart.Plot.Add.FillY(
            [.. stretches.Select(stretch => stretch.Hours)], [.. stretches.Select(stretch => stretch.LowestV)], [.. stretches.Select(stretch => stretch.HighestV)]);
        band.FillColor = Chart.Light;
        band.LineWidth = 0;
        band.LegendText = "lowest to highest group";
        for (int k = 0; k < chosen.Length; k++)
            Line(chart, stretches, k, chosen[k]);
        chart.Plot.ShowLegend(Edge.Bottom);
        chart.WidthPx = 1100;
        return [chart];
    }

    /// <summary>Groups with findings, surest first; without any, the one that goes lowest.</summary>
    internal static int[] Chosen(SheetInput input, RideLog log)
    {
        int[] found = input.Diagnosis is not { } told ? [] :
        [
            .. told.Groups.SelectMany(group => group.Findings.Where(finding => finding.Kind != FindingKind.CannotTell).Select(finding => (group.Group, finding.Sure)))
                .OrderBy(pair => pair.Sure).ThenBy(pair => pair.Group).Select(pair => pair.Group).Distinct().Take(MostGroups).Order(),
        ];
        return found.Length > 0 ? found : [1 + Enumerable.Range(0, log.Groups).MinBy(k => log.GroupV[k].Where(double.IsFinite).DefaultIfEmpty(double.MaxValue).Min())];
    }

    /// <summary>The log in stretches of equal numbers of rows.</summary>
    internal static IEnumerable<Stretch> Thinned(RideLog log, int[] chosen)
    {
        int count = Math.Min(Points, log.Rows);
        for (int i = 0; i < count; i++)
        {
            int first = (int)((long)log.Rows * i / count), end = (int)((long)log.Rows * (i + 1) / count);
            double lowest = double.PositiveInfinity, highest = double.NegativeInfinity;
            foreach (double[] volts in log.GroupV)
            {
                for (int row = first; row < end; row++)
                {
                    lowest = volts[row] < lowest ? volts[row] : lowest;
                    highest = volts[row] > highest ? volts[row] : highest;
                }
            }

            yield return new Stretch(
                log.TimeS[first] / 3600, lowest, highest,
                [.. chosen.Select(group => log.GroupV[group - 1][first..end].Where(double.IsFinite).DefaultIfEmpty(double.NaN).Average())]);
        }
    }

    /// <summary>The line of one group with its marks; it breaks where readings were lost.</summary>
    internal static void Line(Chart chart, Stretch[] stretches, int k, int group)
    {
        List<Coordinates> run = [];
        foreach (Stretch stretch in stretches)
        {
            if (double.IsFinite(stretch.MeanV[k]))
            {
                run.Add(new Coordinates(stretch.Hours, stretch.MeanV[k]));
                continue;
            }

            Run(chart, run);
            run.Clear();
        }

        Run(chart, run);
        Coordinates[] at =
        [
            .. stretches.Where((stretch, i) => (i + (k * PointsForAMark / MostGroups)) % PointsForAMark == 0 && double.IsFinite(stretch.MeanV[k]))
                .Select(stretch => new Coordinates(stretch.Hours, stretch.MeanV[k])),
        ];
        ScottPlot.Plottables.Markers marks = chart.Plot.Add.Markers(at, Shapes[k], 12, Chart.Ink);
        marks.MarkerStyle.LineWidth = 2;
        marks.LegendText = $"group {Figures.Fixed(group, 0)}";
    }

    private static void Run(Chart chart, List<Coordinates> run)
    {
        if (run.Count < 2)
            return;
        ScottPlot.Plottables.Scatter line = chart.Plot.Add.ScatterLine(run.ToArray());
        line.Color = Chart.Dark;
        line.LineWidth = 1.5f;
    }
}
