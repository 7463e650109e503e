using MathNet.Numerics.Distributions;
using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Screening;

/// <summary>The generalised extreme studentised deviate test: how many readings do not belong to a normal lot.</summary>
/// <remarks>
/// Source: [Rosner1983] as given in [NistEhandbook] 1.3.5.17.3. It does not stop at the first reading that passes,
/// because two wild ones can hide each other. Good from about 15 readings on; with fewer it is only a guide.
/// </remarks>
internal static class ExtremeDeviates
{
    /// <summary>Runs the test.</summary>
    /// <param name="values">Shape [n], n ≥ 3.</param>
    /// <param name="most">Most outliers to look for, 1 ≤ most ≤ n - 2.</param>
    /// <param name="significance">Chance of a false alarm in a clean lot, for example 0.05.</param>
    /// <returns>One step for each candidate, in the order of removal, and how many of them are outliers.</returns>
    internal static (IReadOnlyList<Step> Steps, int Outliers) Test(ReadOnlySpan<double> values, int most, double significance)
    {
        int[] order = new int[values.Length];
        double[] sorted = values.ToArray();
        for (int i = 0; i < order.Length; i++)
            order[i] = i;
        Array.Sort(sorted, order);

        // Sums about the median keep their digits when the lot is far from zero.
        double origin = Robust.Median(values);
        double sum = 0;
        double squares = 0;
        foreach (double value in sorted)
        {
            sum += value - origin;
            squares += (value - origin) * (value - origin);
        }

        int low = 0;
        int high = sorted.Length - 1;
        List<Step> steps = [];
        int outliers = 0;
        for (int i = 1; i <= most; i++)
        {
            int left = high - low + 1;
            double mean = sum / left;
            double deviation = Math.Sqrt(Math.Max(0, (squares - sum * mean) / (left - 1)));
            if (deviation <= 1e-12 * Math.Max(Math.Abs(origin), double.Epsilon))
                break;
            bool takeLow = mean - (sorted[low] - origin) > sorted[high] - origin - mean;
            int at = takeLow ? low++ : high--;
            double away = sorted[at] - origin;
            double statistic = Math.Abs(away - mean) / deviation;
            double critical = Critical(values.Length, i, significance);
            steps.Add(new Step(order[at], statistic, critical));
            if (statistic > critical)
                outliers = i;
            sum -= away;
            squares -= away * away;
        }

        return (steps, outliers);
    }

    /// <summary>Critical value of one step; for the first one also Grubbs' two-sided critical value.</summary>
    /// <param name="count">Readings at the start, n.</param>
    /// <param name="candidate">Number of the step from 1.</param>
    /// <param name="significance">Chance of a false alarm on either side; for a one-sided test give twice the chance.</param>
    /// <returns>λ.</returns>
    internal static double Critical(int count, int candidate, double significance)
    {
        int left = count - candidate + 1;
        int freedom = left - 2;
        double t = StudentT.InvCDF(0, 1, freedom, 1 - significance / (2 * left));
        return (left - 1) * t / Math.Sqrt((freedom + t * t) * left);
    }

    /// <summary>One step of the test.</summary>
    /// <param name="Index">Which reading is farthest from the mean of those still in.</param>
    /// <param name="Statistic">R: its distance over their standard deviation.</param>
    /// <param name="Critical">λ: what R must exceed.</param>
    internal readonly record struct Step(int Index, double Statistic, double Critical);
}
