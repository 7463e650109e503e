using MathNet.Numerics;

namespace PackPlanner.Core.Grouping;

/// <summary>What repeating the capacity tests alone would do to groups that are equal in truth.</summary>
internal static class MeasurementNoise
{
    /// <summary>One standard deviation of the sum of P capacities, in the unit of the mean.</summary>
    internal static double OfGroup(double repeatabilityFraction, double meanCapacity, int parallel) =>
        repeatabilityFraction * meanCapacity * Math.Sqrt(parallel);

    /// <summary>Expected range, largest less smallest, of the groups' sums, in the unit of their deviation.</summary>
    internal static double ExpectedRange(int groups, double deviation) => 2 * ExpectedLargest(groups) * deviation;

    /// <summary>Expected largest of n independent standard normal values; 0 for one.</summary>
    /// <remarks>
    /// Integral of 1 - F(x)^n over the positive less F(x)^n over the negative axis, F the normal distribution, by Simpson's
    /// rule with a step of 0.01: the tails beyond 9 do not reach the tenth digit.
    /// </remarks>
    internal static double ExpectedLargest(int n)
    {
        const double end = 9, step = 0.01;
        int intervals = (int)Math.Round(end / step);
        double sum = 0;
        for (int i = 0; i <= intervals; i++)
        {
            double weight = i == 0 || i == intervals ? 1 : i % 2 == 1 ? 4 : 2;
            sum += weight * (1 - Math.Pow(Normal(i * step), n) - Math.Pow(Normal(-i * step), n));
        }

        return sum * step / 3;
    }

    private static double Normal(double x) => 0.5 * SpecialFunctions.Erfc(-x / Math.Sqrt(2));
}
