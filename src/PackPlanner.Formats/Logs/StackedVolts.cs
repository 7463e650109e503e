using PackPlanner.Core.Cells;

namespace PackPlanner.Formats.Logs;

/// <summary>Taps of a string measured from pack minus: each column holds its group and all below it.</summary>
internal static class StackedVolts
{
    // Volts of lithium cells in use, and so the distance from tap to tap.
    private const double LeastV = 1.5;
    private const double MostV = 4.6;

    /// <summary>Whether the columns rise from tap to tap by the volts of one cell, in V or mV.</summary>
    internal static bool Are(LogColumn[] family) => family.Length >= 2 && ScaleOf([.. family.OrderBy(column => column.Number).Select(column => Middle(column.Sample))]) is not null;

    /// <summary>Takes the tap below off each column in place.</summary>
    /// <param name="groups">In the order of their numbers, figures as written.</param>
    /// <param name="said">Gets a sentence when it was done.</param>
    internal static void TakeApart(LogColumn[] groups, List<string> said)
    {
        if (groups.Length < 2 || ScaleOf([.. groups.Select(column => Middle(column.Values))]) is null)
            return;
        for (int group = groups.Length - 1; group > 0; group--)
        {
            double[] upper = groups[group].Values;
            double[] lower = groups[group - 1].Values;
            for (int i = 0; i < upper.Length; i++)
                upper[i] = Math.Round(upper[i] - lower[i], 9);
        }

        said.Add($"The volts rise from {groups[0].Name} to {groups[^1].Name} by one cell each: they are taps measured from pack minus, and each group is the difference of two.");
    }

    private static double? ScaleOf(double[] middles)
    {
        foreach (double scale in (double[])[1, 0.001])
        {
            // The last one stands above what any single cell can have.
            bool stacked = middles[0] * scale is > LeastV and < MostV && middles[^1] * scale > MostV;
            for (int i = 1; i < middles.Length && stacked; i++)
                stacked = (middles[i] - middles[i - 1]) * scale is > LeastV and < MostV;
            if (stacked)
                return scale;
        }

        return null;
    }

    private static double Middle(double[] figures) => Robust.UpperMedian(SomeFigures.Measured(figures).Where(figure => figure > 0));
}
