using MathNet.Numerics.Distributions;

namespace PackPlanner.Core.UsableEnergy;

/// <summary>How far the usable energy can be trusted, from how well capacities and resistances repeat.</summary>
/// <remarks>
/// Readings are taken as independent and normal. Where a cell ends the ride, the charge taken is the least of several
/// uncertain figures, and the distribution of that least is formed exactly; the energy follows by what one more
/// ampere-hour would bring, plus the part that each group's own capacity and resistance have in its volts on the way.
/// A seeded Monte Carlo run over whole discharges checks it in the tests. States of charge, the curve itself and the
/// rule for the cold have no spread here.
/// </remarks>
internal static class EnergySpread
{
    /// <summary>One standard deviation of a resistance reading, as a fraction. Common practice, no source.</summary>
    internal const double ResistanceFraction = 0.10;

    private const double NinetyPercent = 1.6448536269514722;

    internal static UsableSpread Of(EnergyRequest request, DischargeRun full, SeriesString ridden)
    {
        double[] sigmaAh = [.. request.Groups.Select((group, g) => request.RepeatabilityFraction / Math.Sqrt(group.Parallel ?? 1) * ridden.CapacityAh[g])];
        double kept = 1 - request.ReserveFraction;
        (double low, double high) = full.ByController ? ByController(ridden, full, sigmaAh) : ByCell(request, ridden, full, sigmaAh);
        return new UsableSpread((high - low) / 2 * kept, Math.Max(0, low) * kept, high * kept);
    }

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

    private static (double LowWh, double HighWh) ByCell(EnergyRequest request, SeriesString ridden, DischargeRun full, double[] sigmaAh)
    {
        double[] mean = new double[ridden.Groups];
        double[] sigma = new double[ridden.Groups];
        for (int g = 0; g < ridden.Groups; g++)
        {
            double end = StringModel.LoadedEnd(ridden.Curve, full.EffectiveA, ridden.CellOhm[g], request.EndsAtV);
            double part = ridden.StartFraction[g] - end;
            mean[g] = part * ridden.CapacityAh[g];
            double endByOhm = full.EffectiveA * ridden.CellOhm[g] * ResistanceLaw.AtCharge(end) * ResistanceFraction / ridden.Curve.SlopeAt(end);
            sigma[g] = Math.Sqrt(Square(part * sigmaAh[g]) + Square(endByOhm * ridden.CapacityAh[g]));
        }

        // The run itself says where the readings end it; the estimate of each group only says by how much that may move.
        double lowWh = (QuantileOfLeast(mean, sigma, 0.05) - mean.Min()) * full.EndPackV;
        double highWh = (QuantileOfLeast(mean, sigma, 0.95) - mean.Min()) * full.EndPackV;
        double alongWh = NinetyPercent * Math.Sqrt(Enumerable.Range(0, ridden.Groups)
            .Sum(g => Square(ByCapacity(ridden, full, g) * sigmaAh[g]) + Square(ByResistance(ridden, full, g))));
        // Of many equal groups one is surely below its reading: then even the high end may lie below the plain figure.
        double high = highWh >= 0 ? Math.Sqrt(Square(highWh) + Square(alongWh)) : highWh + alongWh;
        return (full.DeliveredWh - Math.Sqrt(Square(lowWh) + Square(alongWh)), full.DeliveredWh + high);
    }

    // A larger group moves the controller's limit to a later moment and raises the volts until then: both pull one way.
    private static (double LowWh, double HighWh) ByController(SeriesString ridden, DischargeRun full, double[] sigmaAh)
    {
        double voltPerAh = 0;
        for (int g = 0; g < ridden.Groups; g++)
            voltPerAh += ridden.Curve.SlopeAt(ridden.FractionAt(g, full.TakenAh)) / ridden.CapacityAh[g];
        double variance = 0;
        for (int g = 0; g < ridden.Groups; g++)
        {
            double end = ridden.FractionAt(g, full.TakenAh);
            double laterAhPerAh = ridden.Curve.SlopeAt(end) * full.TakenAh / Square(ridden.CapacityAh[g]) / voltPerAh;
            double soonerAh = full.EffectiveA * ridden.CellOhm[g] * ResistanceLaw.AtCharge(end) * ResistanceFraction / voltPerAh;
            variance += Square((ByCapacity(ridden, full, g) + laterAhPerAh * full.EndPackV) * sigmaAh[g])
                + Square(ByResistance(ridden, full, g) + soonerAh * full.EndPackV);
        }

        double halfWh = NinetyPercent * Math.Sqrt(variance);
        return (full.DeliveredWh - halfWh, full.DeliveredWh + halfWh);
    }

    // Watt-hours that one more ampere-hour of a group brings at the same charge taken, because it stays at higher volts.
    private static double ByCapacity(SeriesString ridden, DischargeRun full, int g)
    {
        double end = ridden.FractionAt(g, full.TakenAh);
        return (ridden.Curve.MeanVolts(end, ridden.StartFraction[g]) - ridden.Curve.VoltsAt(end)) * full.TakenAh / ridden.CapacityAh[g];
    }

    // One sigma of a group's heat, watt-hours.
    private static double ByResistance(SeriesString ridden, DischargeRun full, int g) =>
        full.EffectiveA * ridden.CellOhm[g] * full.TakenAh * ResistanceFraction;

    private static double Square(double value) => value * value;
}
