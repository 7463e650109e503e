namespace PackPlanner.Core.UsableEnergy;

/// <summary>Where each group would end a ride by itself, and what one standard deviation of its readings moves.</summary>
internal sealed class GroupEnds
{
    internal GroupEnds(EnergyRequest request, SeriesString ridden, DischargeRun full)
    {
        int n = ridden.Groups;
        (MeanAh, ByCapacityAh, ByResistanceAh) = (new double[n], new double[n], new double[n]);
        (AlongByCapacityWh, AlongByResistanceWh) = (new double[n], new double[n]);
        (EndFraction, SigmaAh, OhmFraction, AlongByStartWh) = (new double[n], new double[n], new double[n], new double[n]);
        for (int g = 0; g < n; g++)
        {
            double end = StringModel.LoadedEnd(ridden.Curve, full.EffectiveA, ridden.CellOhm[g], request.EndsAtV);
            double part = ridden.StartFraction[g] - end;
            EndFraction[g] = end;
            SigmaAh[g] = EnergySpread.CapacityFractionOf(request, request.Groups[g]) * ridden.CapacityAh[g];
            OhmFraction[g] = EnergySpread.ResistanceFractionOf(request.Groups[g]);
            MeanAh[g] = part * ridden.CapacityAh[g];
            ByCapacityAh[g] = part * SigmaAh[g];
            ByResistanceAh[g] = -full.EffectiveA * ridden.CellOhm[g] * ResistanceLaw.AtCharge(end) * OhmFraction[g]
                / ridden.Curve.SlopeAt(end) * ridden.CapacityAh[g];
            double stopped = ridden.FractionAt(g, full.TakenAh);
            AlongByCapacityWh[g] = (ridden.Curve.MeanVolts(stopped, ridden.StartFraction[g]) - ridden.Curve.VoltsAt(stopped))
                * full.TakenAh / ridden.CapacityAh[g] * SigmaAh[g];
            AlongByResistanceWh[g] = -full.EffectiveA * ridden.CellOhm[g] * full.TakenAh * OhmFraction[g];
            AlongByStartWh[g] = (ridden.Curve.VoltsAt(ridden.StartFraction[g]) - ridden.Curve.VoltsAt(stopped)) * ridden.CapacityAh[g];
        }
    }

    /// <summary>State of charge at which the group meets its cut-off under the load.</summary>
    internal double[] EndFraction { get; }

    /// <summary>One standard deviation of the group's resistance, as a fraction of it.</summary>
    internal double[] OhmFraction { get; }

    /// <summary>Watt-hours that starting fuller by the whole capacity would bring at the same charge, along the straight line.</summary>
    internal double[] AlongByStartWh { get; }

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
