namespace PackPlanner.Core.UsableEnergy;

/// <summary>Where each group would end a ride by itself, and what one standard deviation of its readings moves.</summary>
internal sealed class GroupEnds
{
    internal GroupEnds(EnergyRequest request, SeriesString ridden, DischargeRun full, double[] sigmaAh)
    {
        int n = ridden.Groups;
        (MeanAh, ByCapacityAh, ByResistanceAh) = (new double[n], new double[n], new double[n]);
        (AlongByCapacityWh, AlongByResistanceWh) = (new double[n], new double[n]);
        SigmaAh = sigmaAh;
        for (int g = 0; g < n; g++)
        {
            double end = StringModel.LoadedEnd(ridden.Curve, full.EffectiveA, ridden.CellOhm[g], request.EndsAtV);
            double part = ridden.StartFraction[g] - end;
            MeanAh[g] = part * ridden.CapacityAh[g];
            ByCapacityAh[g] = part * sigmaAh[g];
            ByResistanceAh[g] = -full.EffectiveA * ridden.CellOhm[g] * ResistanceLaw.AtCharge(end) * EnergySpread.ResistanceFraction
                / ridden.Curve.SlopeAt(end) * ridden.CapacityAh[g];
            double stopped = ridden.FractionAt(g, full.TakenAh);
            AlongByCapacityWh[g] = (ridden.Curve.MeanVolts(stopped, ridden.StartFraction[g]) - ridden.Curve.VoltsAt(stopped))
                * full.TakenAh / ridden.CapacityAh[g] * sigmaAh[g];
            AlongByResistanceWh[g] = -full.EffectiveA * ridden.CellOhm[g] * full.TakenAh * EnergySpread.ResistanceFraction;
        }
    }

    /// <summary>Charge taken when the group meets its cut-off, ampere-hours.</summary>
    internal double[] MeanAh { get; }

    /// <summary>One standard deviation of the group's capacity, ampere-hours.</summary>
    internal double[] SigmaAh { get; }

    /// <summary>What one more standard deviation of capacity adds to <see cref="MeanAh"/>.</summary>
    internal double[] ByCapacityAh { get; }

    /// <summary>What one more standard deviation of resistance adds to it; below zero.</summary>
    internal double[] ByResistanceAh { get; }

    /// <summary>Watt-hours that one more standard deviation of capacity brings at the same charge, because the volts stay higher.</summary>
    internal double[] AlongByCapacityWh { get; }

    /// <summary>Watt-hours that one more standard deviation of resistance brings at the same charge; below zero, it is heat.</summary>
    internal double[] AlongByResistanceWh { get; }
}
