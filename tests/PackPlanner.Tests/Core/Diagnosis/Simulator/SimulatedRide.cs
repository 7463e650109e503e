using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Tests.Core.Diagnosis.Simulator;

/// <summary>Drives an invented pack through rests, rides and charges.</summary>
internal sealed class SimulatedRide(Random random, SimulatedPack pack, SimulatedLogger logger)
{
    private readonly double[] volts = new double[pack.Groups.Length];
    private readonly double[] lowest = [.. pack.Groups.Select(g => g.StartCharge)];
    private readonly double[] highest = [.. pack.Groups.Select(g => g.StartCharge)];
    private int? endedRide, endedCharge;

    internal void Rest(double seconds)
    {
        for (double t = 0; t < seconds; t += 0.5)
            Step(0.5, 0);
    }

    /// <summary>Parked with the logger asleep.</summary>
    internal void Sleep(double seconds)
    {
        logger.Asleep = true;
        for (double t = 0; t < seconds; t += 10)
            Step(10, 0);
        logger.Asleep = false;
    }

    /// <summary>Rides at a mean C-rate until the first group is empty under load, or some charge is drawn.</summary>
    internal void Drive(double rate, double maxAh)
    {
        double drawn = 0, cutoff = pack.EmptyV;
        while (drawn < maxAh)
        {
            double a = random.NextDouble(), wanted = a < 0.12 ? 0 : a < 0.2 ? -0.4 * random.NextDouble() : 2 * random.NextDouble() * random.NextDouble() * 2;
            double seconds = 4 + (40 * random.NextDouble());
            for (double t = 0; t < seconds; t += 0.5)
            {
                double amps = wanted * rate * pack.RatedAh * (1 + (0.06 * SimulatedCurves.Normal(random)));
                if (highest.Max() > 0.995 && amps < 0 && drawn < 0.02 * pack.RatedAh)
                    amps = 0;
                // Riders ease off as the pack sags.
                if (volts.Min() < cutoff + 0.1 && amps > 0)
                    amps *= 0.5;
                Step(0.5, amps);
                drawn += amps * 0.5 / 3600;
                if (volts.Min() < cutoff)
                {
                    endedRide = Array.IndexOf(volts, volts.Min());
                    return;
                }
            }
        }
        endedRide = Array.IndexOf(volts, volts.Min());
    }

    /// <summary>Charges at a C-rate until the first group is full at that current tapering to C/20.</summary>
    internal void Charge(double rate)
    {
        double amps = rate * pack.RatedAh;
        while (amps > 0.05 * pack.RatedAh)
        {
            Step(1, -amps);
            if (volts.Max() > pack.FullV)
            {
                amps *= 0.97;
                endedCharge = Array.IndexOf(volts, volts.Max());
            }
        }
    }

    internal SimulatedTruth Truth()
    {
        SimulatedGroup[] groups = pack.Groups;
        double[] capacity = [.. groups.Select(g => g.CapacityAh)], start = [.. groups.Select(g => g.StartCharge)];
        double middle = Median(start);
        double[] sorted = [.. capacity.Order()];
        sorted[0] = Median(capacity);
        double now = groups.Min(g => g.StartCharge * g.CapacityAh) + groups.Min(g => (1 - g.StartCharge) * g.CapacityAh);
        return new SimulatedTruth(
            capacity, [.. start.Select(s => s - middle)], [.. groups.Select(g => pack.OneSecondOhm(g, logger.MeanDegrees))], start,
            [.. groups.Select(g => (IReadOnlyList<string>)g.Required)], [.. groups.Select(g => (IReadOnlyList<string>)g.Allowed)],
            Told(), now, capacity.Min(), sorted.Min());
    }

    private string Told()
    {
        int ends = endedRide ?? endedCharge ?? 0;
        if (pack.Family != CurveFamily.Lfp)
        {
            double seen = highest[ends] - lowest[ends];
            return seen >= 0.7 ? "yes" : seen < 0.4 ? "no" : "either";
        }
        double middleTop = Median(highest);
        bool top = Math.Max(middleTop, highest[ends]) > 0.98, bottom = lowest[ends] < 0.1;
        bool nearly = Math.Max(middleTop, highest[ends]) > 0.93 && lowest[ends] < 0.2;
        return top && bottom ? "yes" : nearly ? "either" : "no";
    }

    private void Step(double seconds, double amps)
    {
        pack.Step(seconds, amps, volts);
        logger.See(seconds, amps, volts);
        for (int k = 0; k < volts.Length; k++)
        {
            lowest[k] = Math.Min(lowest[k], pack.Groups[k].Charge);
            highest[k] = Math.Max(highest[k], pack.Groups[k].Charge);
        }
    }

    private static double Median(double[] values)
    {
        double[] sorted = [.. values.Order()];
        return (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
    }
}
