using MathNet.Numerics.Distributions;
using PackPlanner.Core.Cells;

namespace PackPlanner.Core.UsableEnergy;

/// <summary>How far the usable energy can be trusted, from how well capacities and resistances repeat.</summary>
/// <remarks>
/// Readings are taken as independent and normal. The charge taken is the least of several uncertain figures: one for
/// each group and, where it is given, one for the controller's limit. Without a controller, and with all groups charged
/// alike, the distribution of that least is formed exactly. The controller's figure and the first group that is full hang
/// on every group's, so there it is sampled, from the same straight-line effects and a fixed seed. The energy follows by
/// the volts that the string has around its end, plus the part that each group's own capacity, resistance and charge have
/// in its volts on the way. A seeded Monte Carlo run over whole discharges checks it in the tests. The curve itself and
/// the rule for the cold have no spread here.
/// </remarks>
internal static class EnergySpread
{
    /// <summary>One standard deviation of a resistance reading, as a fraction. Common practice, no source.</summary>
    internal const double ResistanceFraction = 0.10;

    internal static UsableSpread Of(EnergyRequest request, DischargeRun full, SeriesString ridden, double topFraction)
    {
        double kept = 1 - request.ReserveFraction;
        GroupEnds ends = new(request, ridden, full);
        bool together = request.PackEmptyV is not null || request.Groups.Any(group => group.StateOfChargeFraction is not null);
        (double low, double high) = together ? SampledSpread.Of(request, ridden, full, ends, topFraction) : ByCell(ridden, full, ends);
        return new UsableSpread((high - low) / 2 * kept, Math.Max(0, low) * kept, high * kept, EndAlike(request, ends, full.LowestGroup));
    }

    // Groups that reach their end no later than the readings' noise, nine times in ten, after the one that ends it; itself among them.
    private static int EndAlike(EnergyRequest request, GroupEnds ends, int last)
    {
        double SquareAh(int g) => Square(ends.ByCapacityAh[g]) + Square(ends.ByResistanceAh[g])
            + Square((request.Groups[g].StateOfChargeSigma ?? 0) * request.Groups[g].CapacityAh);
        return ends.MeanAh.Where((meanAh, g) => g == last || meanAh - ends.MeanAh[last] <= NormalRange.NinetyPercent * Math.Sqrt(SquareAh(g) + SquareAh(last))).Count();
    }

    /// <summary>One standard deviation of a group's capacity over the capacity.</summary>
    internal static double CapacityFractionOf(EnergyRequest request, SeriesGroup group) => group.CapacitySigmaAh is { } sigmaAh
        ? sigmaAh / group.CapacityAh
        : request.RepeatabilityFraction / Math.Sqrt(group.Parallel ?? 1);

    /// <summary>One standard deviation of a group's resistance over the resistance.</summary>
    internal static double ResistanceFractionOf(SeriesGroup group) => group.ResistanceSigmaMilliohm / group.ResistanceMilliohm ?? ResistanceFraction;

    /// <summary>The value that the least of independent normal figures stays below with a probability.</summary>
    internal static double QuantileOfLeast(double[] mean, double[] sigma, double probability)
    {
        double low = mean.Zip(sigma, (m, s) => m - 8 * s).Min();
        double high = mean.Zip(sigma, (m, s) => m + 8 * s).Min();
        for (int i = 0; i < 80; i++)
        {
            double middle = (low + high) / 2;
            double allAbove = 1;
            for (int g = 0; g < mean.Length; g++)
                allAbove *= sigma[g] > 0 ? 1 - Normal.CDF(mean[g], sigma[g], middle) : mean[g] > middle ? 1 : 0;
            if (1 - allAbove < probability)
                low = middle;
            else
                high = middle;
        }

        return (low + high) / 2;
    }

    private static (double LowWh, double HighWh) ByCell(SeriesString ridden, DischargeRun full, GroupEnds ends)
    {
        EndEnergy energy = new(ridden, full);
        double[] sigma = [.. ends.ByCapacityAh.Select((byCapacityAh, g) => Math.Sqrt(Square(byCapacityAh) + Square(ends.ByResistanceAh[g])))];
        // The run itself says where the readings end it; the estimate of each group only says by how much that may move.
        double leastAh = ends.MeanAh.Min();
        double lowWh = energy.MoreWh(QuantileOfLeast(ends.MeanAh, sigma, 0.05) - leastAh);
        double highWh = energy.MoreWh(QuantileOfLeast(ends.MeanAh, sigma, 0.95) - leastAh);
        double alongWh = NormalRange.NinetyPercent * Math.Sqrt(ends.AlongByCapacityWh.Sum(Square) + ends.AlongByResistanceWh.Sum(Square));
        // Of many equal groups one is surely below its reading: then even the high end may lie below the plain figure.
        double high = highWh >= 0 ? Math.Sqrt(Square(highWh) + Square(alongWh)) : highWh + alongWh;
        return (full.DeliveredWh - Math.Sqrt(Square(lowWh) + Square(alongWh)), full.DeliveredWh + high);
    }

    private static double Square(double value) => value * value;
}
