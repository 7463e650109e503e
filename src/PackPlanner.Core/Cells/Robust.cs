namespace PackPlanner.Core.Cells;

/// <summary>Middle and width of a set of readings that a few wild ones cannot move.</summary>
public static class Robust
{
    // 1 / 0.6745: turns the median absolute deviation of normal readings into their standard deviation.
    private const double NormalQuartile = 0.6745;

    // Of normal readings the mean absolute deviation is the standard deviation over this.
    private const double MeanDeviationFactor = 1.2533141373155003;

    /// <summary>The median.</summary>
    /// <param name="values">Any order, shape [n], finite.</param>
    /// <returns>The middle value, or the mean of the two middle ones; NaN when there are no values.</returns>
    public static double Median(ReadOnlySpan<double> values)
    {
        if (values.IsEmpty)
            return double.NaN;
        double[] sorted = values.ToArray();
        Array.Sort(sorted);
        int middle = sorted.Length / 2;
        return sorted.Length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
    }

    /// <summary>The median, of two middle ones the upper, so that it is one of the values.</summary>
    /// <param name="values">Any order, shape [n], finite.</param>
    /// <returns>NaN when there are no values.</returns>
    public static double UpperMedian(IEnumerable<double> values)
    {
        double[] sorted = [.. values];
        Array.Sort(sorted);
        return sorted.Length == 0 ? double.NaN : sorted[sorted.Length / 2];
    }

    /// <summary>The median, or null when there are no values.</summary>
    internal static double? MedianOrNull(IEnumerable<double> values)
    {
        double[] all = [.. values];
        return all.Length == 0 ? null : Median(all);
    }

    /// <summary>Median of the absolute distances from the median.</summary>
    /// <param name="values">Shape [n], n ≥ 1.</param>
    /// <returns>In the unit of the values.</returns>
    internal static double MedianAbsoluteDeviation(ReadOnlySpan<double> values) => Median(Distances(values));

    /// <summary>Standard deviation that normal readings with this median distance have.</summary>
    /// <param name="values">Shape [n], n ≥ 1.</param>
    /// <returns>In the unit of the values; 0 when more than half of them are the same.</returns>
    internal static double Scatter(ReadOnlySpan<double> values) => MedianAbsoluteDeviation(values) / NormalQuartile;

    /// <summary>Modified z scores: 0.6745 (x - median) / MAD.</summary>
    /// <param name="values">Shape [n], n ≥ 1.</param>
    /// <returns>Scores, shape [n]; all 0 when every value is the same.</returns>
    /// <remarks>
    /// Source: [Iglewicz1993]. Where more than half of the values are equal the MAD is 0 and the mean absolute
    /// deviation takes its place. Source: [FromMemory].
    /// </remarks>
    internal static double[] ModifiedScores(ReadOnlySpan<double> values)
    {
        double median = Median(values);
        double[] distance = Distances(values);
        double width = Median(distance) / NormalQuartile;
        if (width == 0)
            width = distance.Average() * MeanDeviationFactor;
        double[] scores = new double[values.Length];
        for (int i = 0; i < scores.Length; i++)
            scores[i] = width == 0 ? 0 : (values[i] - median) / width;
        return scores;
    }

    private static double[] Distances(ReadOnlySpan<double> values)
    {
        double median = Median(values);
        double[] distance = new double[values.Length];
        for (int i = 0; i < distance.Length; i++)
            distance[i] = Math.Abs(values[i] - median);
        return distance;
    }
}
