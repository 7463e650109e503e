using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Screening;

/// <summary>Which readings are unlike their lot.</summary>
/// <remarks>
/// A reading is named only when three things agree: its modified z score is beyond 3.5 (robust, but with false
/// alarms in a large lot), the generalised extreme studentised deviate test names it too (few false alarms, but one
/// wide tail can blunt it), and it lies farther from the middle than twice its own spread.
/// </remarks>
internal static class Outliers
{
    /// <summary>Source: [Iglewicz1993].</summary>
    internal const double HighestScore = 3.5;

    /// <summary>Fewer readings than this make no lot.</summary>
    internal const int FewestReadings = 7;

    // In a lot too small for statistics a low reading meets its limit, but a mark that slipped up would pass them all. Our choice.
    private const double GrossTimes = 3;
    private const int FewestForGross = 3;

    private const double Significance = 0.05;

    /// <summary>Names the readings that are unlike the rest.</summary>
    /// <param name="values">Shape [n].</param>
    /// <param name="spreads">One standard deviation of each, shape [n].</param>
    /// <returns>Shape [n], true for an outlier; in a lot of three to six only what is over three times the median.</returns>
    internal static bool[] Of(ReadOnlySpan<double> values, ReadOnlySpan<double> spreads)
    {
        bool[] unlike = new bool[values.Length];
        if (values.Length < FewestReadings)
        {
            if (values.Length >= FewestForGross && Robust.Median(values) is > 0 and var middle)
                for (int i = 0; i < values.Length; i++)
                    unlike[i] = values[i] > GrossTimes * middle;
            return unlike;
        }

        double[] scores = Robust.ModifiedScores(values);
        int candidates = scores.Count(score => Math.Abs(score) > HighestScore);
        if (candidates == 0)
            return unlike;
        double median = Robust.Median(values);
        int most = Math.Min(Math.Max(candidates, values.Length / 4), values.Length - 3);
        (IReadOnlyList<ExtremeDeviates.Step> steps, int outliers) = ExtremeDeviates.Test(values, most, Significance);
        foreach (ExtremeDeviates.Step step in steps.Take(outliers))
        {
            int i = step.Index;
            unlike[i] = Math.Abs(scores[i]) > HighestScore && Math.Abs(values[i] - median) > 2 * spreads[i];
        }

        return unlike;
    }
}
