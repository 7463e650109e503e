using PackPlanner.Core.Diagnosis;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats.Sheets;
using PackPlanner.Formats.Words;
using ScottPlot;

namespace PackPlanner.Formats.Pictures;

/// <summary>How the groups stand against one another at the end of the longest rest of the latest log.</summary>
internal static class RestPicture
{
    internal static string? WhyNot(SheetInput input) => VoltsPicture.WhyNot(input)
        ?? (Rated(input) is null ? "the chemistry and the rated Ah are not both known" : Longest(input) is null ? "the log has no rest of a minute" : null);

    internal static IReadOnlyList<Chart> Draw(SheetInput input)
    {
        LogRest rest = Longest(input)!;
        Chart chart = new(
            input, $"At rest for {Figures.Fixed(rest.LengthS / 60, 0)} minutes, from hour {Figures.Digits(rest.FromS / 3600, 3)}", "group, from pack minus",
            $"mV from the middle group's {Figures.Fixed(rest.MedianV, 3)} V");
        (int Group, double Millivolt)[] known = [.. rest.ApartV.Select((v, k) => (Group: k + 1, Millivolt: 1000 * v)).Where(bar => double.IsFinite(bar.Millivolt))];
        double most = known.Max(bar => Math.Abs(bar.Millivolt));
        chart.Bars(known.Select(bar => new Bar { Position = bar.Group, Value = bar.Millivolt, FillColor = Math.Abs(bar.Millivolt) == most ? Chart.Dark : Chart.Light, Size = 0.7 }));
        (int group, double millivolt) = known.First(bar => Math.Abs(bar.Millivolt) == most);
        chart.Words($"{Figures.Digits(millivolt, 3)} mV", group, millivolt, millivolt < 0 ? Alignment.UpperCenter : Alignment.LowerCenter, bold: true);
        chart.Numbers(rest.ApartV.Length);
        double low = known.Min(bar => bar.Millivolt), high = known.Max(bar => bar.Millivolt), room = 0.2 * Math.Max(1, high - low);
        chart.Plot.Axes.SetLimits(0.3, rest.ApartV.Length + 0.7, Math.Min(0, low) - room, Math.Max(0, high) + room);
        return [chart];
    }

    private static double? Rated(SheetInput input) => JobLogs.Given(input.Job.Givens, input.Job.Logs[^1].Log)?.RatedGroupAh;

    private static LogRest? Longest(SheetInput input) => LogRest.Of(input.Job.Logs[^1].Log, Rated(input)!.Value, most: 1) is [LogRest longest] ? longest : null;
}
