using PackPlanner.Core.Cells;

namespace PackPlanner.Core.UsableEnergy;

/// <summary>Groups in series on their way from full to empty: everything as a function of the charge taken.</summary>
/// <remarks>
/// The same current flows through every group, so the charge taken, in ampere-hours, is the only variable that moves.
/// State of charge is 0 and 1 at the ends of <see cref="Curve"/>.
/// </remarks>
internal sealed class SeriesString
{
    /// <summary>Resting volts against state of charge, for every group.</summary>
    internal required OpenCircuitCurve Curve { get; init; }

    /// <summary>Ampere-hours between the ends of the curve, shape [groups].</summary>
    internal required double[] CapacityAh { get; init; }

    /// <summary>State of charge at the start, shape [groups].</summary>
    internal required double[] StartFraction { get; init; }

    /// <summary>DC resistance near half charge, ohms, shape [groups]; all 0 for a run at rest.</summary>
    internal required double[] CellOhm { get; init; }

    /// <summary>All series links and leads together, ohms.</summary>
    internal double LinkOhm { get; init; }

    internal int Groups => CapacityAh.Length;

    /// <summary>State of charge of a group after some charge has been taken.</summary>
    internal double FractionAt(int group, double takenAh) => StartFraction[group] - takenAh / CapacityAh[group];

    /// <summary>The string after some charge has been taken: resting volts and ohms of the whole, without the links.</summary>
    internal (double OpenV, double CellOhm) At(double takenAh)
    {
        double volts = 0;
        double ohms = 0;
        for (int group = 0; group < CapacityAh.Length; group++)
        {
            double fraction = FractionAt(group, takenAh);
            volts += Curve.VoltsAt(fraction);
            ohms += CellOhm[group] * ResistanceLaw.AtCharge(fraction);
        }

        return (volts, ohms);
    }

    /// <summary>The group that stands nearest to its end, and how far above it, in volts.</summary>
    /// <param name="takenAh">Charge taken.</param>
    /// <param name="loadA">Amperes; 0 judges the resting volts.</param>
    /// <param name="emptyV">Volts of a group at its end.</param>
    internal (int Group, double MarginV) Lowest(double takenAh, double loadA, double emptyV)
    {
        int lowest = 0;
        double margin = double.PositiveInfinity;
        for (int group = 0; group < CapacityAh.Length; group++)
        {
            double fraction = FractionAt(group, takenAh);
            double volts = Curve.VoltsAt(fraction) - loadA * CellOhm[group] * ResistanceLaw.AtCharge(fraction) - emptyV;
            if (volts < margin)
            {
                margin = volts;
                lowest = group;
            }
        }

        return (lowest, margin);
    }
}
