namespace PackPlanner.Core.UsableEnergy;

/// <summary>The spread where a controller's limit may end the ride: each group moves its own end, its volts and the controller's end at once.</summary>
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
    private readonly double loadA;
    private readonly double limitV;
    private readonly double[] capacityAh;
    private readonly double[] ohm;

    private SampledSpread(SeriesString ridden, double loadA, double limitV)
    {
        (this.ridden, this.loadA, this.limitV) = (ridden, loadA, limitV);
        (capacityAh, ohm) = ([.. ridden.CapacityAh], [.. ridden.CellOhm]);
    }

    internal static (double LowWh, double HighWh) Of(SeriesString ridden, DischargeRun full, GroupEnds ends, double limitV) =>
        new SampledSpread(ridden, full.EffectiveA, limitV).Of(full, ends);

    private (double LowWh, double HighWh) Of(DischargeRun full, GroupEnds ends)
    {
        EndEnergy energy = new(ridden, full);
        double plainAh = EndAh(ends.MeanAh.Min());
        Random random = new(Seed);
        double[] drawnWh = new double[Draws];
        for (int draw = 0; draw < Draws; draw++)
        {
            double leastAh = double.PositiveInfinity;
            double alongWh = 0;
            for (int g = 0; g < capacityAh.Length; g++)
            {
                double capacity = EnergyDraws.Normal(random);
                double resistance = EnergyDraws.Normal(random);
                capacityAh[g] = ridden.CapacityAh[g] + ends.SigmaAh[g] * capacity;
                ohm[g] = ridden.CellOhm[g] * (1 + EnergySpread.ResistanceFraction * resistance);
                leastAh = Math.Min(leastAh, ends.MeanAh[g] + ends.ByCapacityAh[g] * capacity + ends.ByResistanceAh[g] * resistance);
                alongWh += ends.AlongByCapacityWh[g] * capacity + ends.AlongByResistanceWh[g] * resistance;
            }

            drawnWh[draw] = full.DeliveredWh + energy.MoreWh(EndAh(leastAh) - plainAh) + alongWh;
        }

        Array.Sort(drawnWh);
        return (drawnWh[(int)(0.05 * Draws)], drawnWh[(int)(0.95 * Draws)]);
    }

    // The cells' end, or the controller's where that comes first.
    private double EndAh(double cellsAh)
    {
        if (!(cellsAh > 0) || PackV(cellsAh) > limitV)
            return Math.Max(0, cellsAh);
        double low = PackV(cellsAh / 2) > limitV ? cellsAh / 2 : 0;
        double high = cellsAh;
        for (int i = 0; i < Halvings; i++)
        {
            double middle = (low + high) / 2;
            if (PackV(middle) > limitV)
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
            double fraction = ridden.StartFraction[g] - takenAh / capacityAh[g];
            volts += ridden.Curve.VoltsAt(fraction) - loadA * ohm[g] * ResistanceLaw.AtCharge(fraction);
        }

        return volts;
    }
}
