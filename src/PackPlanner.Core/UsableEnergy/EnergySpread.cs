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
        (double lowAh, double highAh) = full.ByController
            ? ByController(ridden, full, sigmaAh)
            : ByCell(request, ridden, full, sigmaAh);
        double alongWh = NinetyPercent * Along(ridden, full, sigmaAh);
        double kept = 1 - request.ReserveFraction;
        double low = full.DeliveredWh - Math.Sqrt(Square((full.TakenAh - lowAh) * full.EndPackV) + Square(alongWh));
        double highStepWh = (highAh - full.TakenAh) * full.EndPackV;
        // Of many equal groups one is surely below its reading: then even the high end lies below the plain figure.
        double high = highStepWh >= 0
            ? full.DeliveredWh + Math.Sqrt(Square(highStepWh) + Square(alongWh))
            : full.DeliveredWh + highStepWh + alongWh;
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

    private static (double LowAh, double HighAh) ByCell(EnergyRequest request, SeriesString ridden, DischargeRun full, double[] sigmaAh)
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
        double shiftAh = full.TakenAh - mean.Min();
        return (QuantileOfLeast(mean, sigma, 0.05) + shiftAh, QuantileOfLeast(mean, sigma, 0.95) + shiftAh);
    }

    private static (double LowAh, double HighAh) ByController(SeriesString ridden, DischargeRun full, double[] sigmaAh)
    {
        double voltPerAh = 0;
        double varianceV = 0;
        for (int g = 0; g < ridden.Groups; g++)
        {
            double end = ridden.FractionAt(g, full.TakenAh);
            double slope = ridden.Curve.SlopeAt(end);
            voltPerAh += slope / ridden.CapacityAh[g];
            varianceV += Square(slope * full.TakenAh / Square(ridden.CapacityAh[g]) * sigmaAh[g])
                + Square(full.EffectiveA * ridden.CellOhm[g] * ResistanceLaw.AtCharge(end) * ResistanceFraction);
        }

        double halfAh = NinetyPercent * Math.Sqrt(varianceV) / voltPerAh;
        return (full.TakenAh - halfAh, full.TakenAh + halfAh);
    }

    // One sigma of the watt-hours at a fixed charge taken: a larger group stays at higher volts, a larger resistance heats more.
    private static double Along(SeriesString ridden, DischargeRun full, double[] sigmaAh)
    {
        double variance = 0;
        for (int g = 0; g < ridden.Groups; g++)
        {
            double end = ridden.FractionAt(g, full.TakenAh);
            double higherV = ridden.Curve.MeanVolts(end, ridden.StartFraction[g]) - ridden.Curve.VoltsAt(end);
            variance += Square(higherV * full.TakenAh / ridden.CapacityAh[g] * sigmaAh[g])
                + Square(full.EffectiveA * ridden.CellOhm[g] * full.TakenAh * ResistanceFraction);
        }

        return Math.Sqrt(variance);
    }

    private static double Square(double value) => value * value;
}
