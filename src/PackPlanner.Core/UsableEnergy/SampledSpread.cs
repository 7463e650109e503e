namespace PackPlanner.Core.UsableEnergy;

/// <summary>
/// The spread where the groups hang together: a controller's limit, or charges that differ, so that the first full group
/// ends the charge for all. Each group moves its own end, its volts, the charge of all and the controller's end at once.
/// </summary>
/// <remarks>
/// A group's own end moves along straight lines. The controller's end is looked for on the curve in each draw, because at
/// the knee a group that is smaller than it reads loses more volts than a larger one gains.
/// </remarks>
internal sealed class SampledSpread
{
    // The 5 and 95 % points then stand within about 2 % of the half width. A fixed seed: the same pack, the same spread.
    private const int Draws = 8000;
    private const int Seed = 20261125;

    // Halvings of the second half of the ride: to some millionths of it.
    private const int Halvings = 18;

    private readonly SeriesString ridden;
    private readonly GroupEnds ends;
    private readonly Random random = new(Seed);
    private readonly double loadA;
    private readonly double? limitV;
    private readonly double topFraction;
    private readonly double?[] moment;
    private readonly double?[] momentSigma;
    private readonly double[] capacityAh;
    private readonly double[] ohm;
    private readonly double[] start;
    private readonly double[] ownEndAh;

    private SampledSpread(EnergyRequest request, SeriesString ridden, GroupEnds ends, double loadA, double topFraction)
    {
        (this.ridden, this.ends, this.loadA, this.topFraction, limitV) = (ridden, ends, loadA, topFraction, request.PackEmptyV);
        (capacityAh, ohm, start) = ([.. ridden.CapacityAh], [.. ridden.CellOhm], [.. ridden.StartFraction]);
        ownEndAh = new double[ridden.Groups];
        moment = [.. request.Groups.Select(group => group.StateOfChargeFraction)];
        momentSigma = [.. request.Groups.Select(group => group.StateOfChargeSigma)];
    }

    internal static (double LowWh, double HighWh) Of(
        EnergyRequest request, SeriesString ridden, DischargeRun full, GroupEnds ends, double topFraction) =>
        new SampledSpread(request, ridden, ends, full.EffectiveA, topFraction).Of(full);

    private (double LowWh, double HighWh) Of(DischargeRun full)
    {
        EndEnergy energy = new(ridden, full);
        double plainAh = EndAh(ends.MeanAh.Min());
        double[] drawnWh = new double[Draws];
        for (int draw = 0; draw < Draws; draw++)
        {
            double alongWh = Draw();
            drawnWh[draw] = full.DeliveredWh + energy.MoreWh(EndAh(ownEndAh.Min()) - plainAh) + alongWh;
        }

        Array.Sort(drawnWh);
        return (drawnWh[(int)(0.05 * Draws)], drawnWh[(int)(0.95 * Draws)]);
    }

    /// <summary>Draws every group's readings; returns the watt-hours that they bring on the way.</summary>
    private double Draw()
    {
        double alongWh = 0;
        double addedAh = double.PositiveInfinity;
        for (int g = 0; g < capacityAh.Length; g++)
        {
            double capacity = EnergyDraws.Normal(random);
            double resistance = EnergyDraws.Normal(random);
            capacityAh[g] = ridden.CapacityAh[g] + ends.SigmaAh[g] * capacity;
            ohm[g] = ridden.CellOhm[g] * (1 + ends.OhmFraction[g] * resistance);
            alongWh += ends.AlongByCapacityWh[g] * capacity + ends.AlongByResistanceWh[g] * resistance;
            ownEndAh[g] = ends.ByResistanceAh[g] * resistance;
            if (moment[g] is not { } fraction)
                continue;
            start[g] = momentSigma[g] is { } sigma ? fraction + sigma * EnergyDraws.Normal(random) : fraction;
            addedAh = Math.Min(addedAh, (topFraction - start[g]) * capacityAh[g]);
        }

        for (int g = 0; g < capacityAh.Length; g++)
        {
            if (moment[g] is not null)
            {
                start[g] += addedAh / capacityAh[g];
                alongWh += ends.AlongByStartWh[g] * (start[g] - ridden.StartFraction[g]);
            }

            ownEndAh[g] += (start[g] - ends.EndFraction[g]) * capacityAh[g];
        }

        return alongWh;
    }

    // The cells' end, or the controller's where that comes first.
    private double EndAh(double cellsAh)
    {
        if (limitV is not { } limit || !(cellsAh > 0) || PackV(cellsAh) > limit)
            return Math.Max(0, cellsAh);
        double low = PackV(cellsAh / 2) > limit ? cellsAh / 2 : 0;
        double high = cellsAh;
        for (int i = 0; i < Halvings; i++)
        {
            double middle = (low + high) / 2;
            if (PackV(middle) > limit)
                low = middle;
            else
                high = middle;
        }

        return high;
    }

    private double PackV(double takenAh)
    {
        double volts = -loadA * ridden.LinkOhm;
        for (int g = 0; g < capacityAh.Length; g++)
        {
            double fraction = start[g] - takenAh / capacityAh[g];
            volts += ridden.Curve.VoltsAt(fraction) - loadA * ohm[g] * ResistanceLaw.AtCharge(fraction);
        }

        return volts;
    }
}
