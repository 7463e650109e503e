using System.Numerics;
using PackPlanner.Core.Cells;

namespace PackPlanner.Core.UsableEnergy;

/// <summary>A string after some charge has been taken: every group's resting volts and ohms, looked up once and used for any current.</summary>
/// <remarks>
/// The look at the curve is what a discharge spends its time on, so a run keeps the state of the last moment and
/// asks it again when only the current has changed.
/// </remarks>
internal sealed class StringState
{
    private readonly OpenCircuitCurve curve;
    private readonly double[] startFraction;
    private readonly double[] perAh;
    private readonly double[] halfOhm;
    private readonly double[] openV;
    private readonly double[] ohm;

    internal StringState(SeriesString pack)
    {
        curve = pack.Curve;
        startFraction = pack.StartFraction;
        perAh = [.. pack.CapacityAh.Select(ah => 1 / ah)];
        halfOhm = pack.CellOhm;
        openV = new double[pack.Groups];
        ohm = new double[pack.Groups];
    }

    /// <summary>Charge taken, ampere-hours.</summary>
    internal double TakenAh { get; private set; }

    /// <summary>Resting volts of the whole string.</summary>
    internal double OpenV { get; private set; }

    /// <summary>Ohms of all groups together, without the links.</summary>
    internal double CellOhm { get; private set; }

    /// <summary>Resting volts of each group, shape [groups].</summary>
    internal ReadOnlySpan<double> GroupOpenV => openV;

    /// <summary>Ohms of each group, shape [groups].</summary>
    internal ReadOnlySpan<double> GroupOhm => ohm;

    /// <summary>Change of <see cref="OpenV"/> and <see cref="CellOhm"/> for each ampere-hour since another moment.</summary>
    internal (double OpenV, double CellOhm) SlopeSince(StringState other)
    {
        double takenAh = TakenAh - other.TakenAh;
        return takenAh == 0 ? (0, 0) : ((OpenV - other.OpenV) / takenAh, (CellOhm - other.CellOhm) / takenAh);
    }

    /// <summary>Looks every group up after some charge has been taken.</summary>
    internal void MoveTo(double takenAh)
    {
        double volts = 0;
        double ohms = 0;
        // Of one length; said so that the compiler drops its checks inside the loop.
        ReadOnlySpan<double> start = startFraction;
        ReadOnlySpan<double> per = perAh.AsSpan(0, start.Length);
        ReadOnlySpan<double> half = halfOhm.AsSpan(0, start.Length);
        Span<double> volt = openV.AsSpan(0, start.Length);
        Span<double> now = ohm.AsSpan(0, start.Length);
        for (int g = 0; g < start.Length; g++)
        {
            double fraction = start[g] - takenAh * per[g];
            double groupV = curve.VoltsAt(fraction);
            double groupOhm = half[g] * ResistanceLaw.AtCharge(fraction);
            volt[g] = groupV;
            now[g] = groupOhm;
            volts += groupV;
            ohms += groupOhm;
        }

        (TakenAh, OpenV, CellOhm) = (takenAh, volts, ohms);
    }

    /// <summary>Volts of the group that stands lowest.</summary>
    /// <param name="loadA">Amperes; 0 asks for resting volts.</param>
    internal double LowestV(double loadA)
    {
        // Several groups at a time; a least figure does not depend on how many those are.
        Vector<double> lowestOfEach = new(double.PositiveInfinity);
        Vector<double> load = new(loadA);
        int g = 0;
        for (; g <= openV.Length - Vector<double>.Count; g += Vector<double>.Count)
            lowestOfEach = Vector.MinNative(lowestOfEach, new Vector<double>(openV, g) - load * new Vector<double>(ohm, g));
        double lowest = double.PositiveInfinity;
        for (int lane = 0; lane < Vector<double>.Count; lane++)
            lowest = Math.Min(lowest, lowestOfEach[lane]);
        for (; g < openV.Length; g++)
            lowest = Math.Min(lowest, openV[g] - loadA * ohm[g]);
        return lowest;
    }

    /// <summary>Index of the group that stands lowest; the first of equal ones.</summary>
    /// <param name="loadA">Amperes; 0 asks for resting volts.</param>
    internal int LowestGroup(double loadA)
    {
        int lowest = 0;
        for (int g = 1; g < openV.Length; g++)
            if (openV[g] - loadA * ohm[g] < openV[lowest] - loadA * ohm[lowest])
                lowest = g;
        return lowest;
    }
}
