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
}
