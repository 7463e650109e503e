namespace PackPlanner.Core.Diagnosis;

/// <summary>Everything a fit holds fixed.</summary>
/// <param name="Slices">The averaged log.</param>
/// <param name="Curve">Belief about the open-circuit curve.</param>
/// <param name="Shape">How resistance depends on charge and temperature.</param>
/// <param name="Resistance">What the windows said about resistance.</param>
/// <param name="RatedAh">Rated capacity of a group, ampere-hours.</param>
/// <param name="UnitOhm">Resistance that the fit counts in: about one group's.</param>
/// <param name="FloorV">Difference between two groups' curves that is expected anyway, one standard deviation.</param>
/// <param name="GrainV">Smallest step of the voltages as logged.</param>
/// <param name="HysteresisSdV">How large hysteresis may be, one standard deviation.</param>
/// <param name="Leaks">The log is long enough for leaks to show.</param>
/// <param name="Taps">Taps taken to be wrong: group a reads high by what group b reads low; b is -1 at an end of the string.</param>
/// <param name="LoadError">Share of the voltage drop under load that the resistance model may miss.</param>
/// <param name="OffsetSd">How far the current sensor's zero may be off, in the unit of <see cref="OffsetAt"/>.</param>
/// <param name="OwnCurves">A group may have a curve quite of its own, as aged groups do; false keeps all near the shared one.</param>
internal sealed record PackModel(
    ChargeSlices Slices, CurvePrior Curve, ResistanceShape Shape, ResistanceFit Resistance, double RatedAh, double UnitOhm,
    double FloorV, double GrainV, double HysteresisSdV, bool Leaks,
    IReadOnlyList<(int A, int B)> Taps, bool OwnCurves, double LoadError, double OffsetSd)
{
    /// <summary>Series groups.</summary>
    internal int Groups => Resistance.CellOhm.Length;

    /// <summary>Occasions on which a top balancer may have worked.</summary>
    internal int Tops => Leaks && Slices.Pieces.Length > 0 ? Slices.Pieces[0].TopH.Length : 0;

    /// <summary>Parameters common to all groups: curve, slow parts, hysteresis, mean log capacity, mean charge, tap errors.</summary>
    internal int Shared => TapAt + Taps.Count;

    /// <summary>Parameters of one group.</summary>
    internal int PerGroup => PackParameters.Leak + (Leaks ? 1 + Tops : 0);

    /// <summary>All parameters.</summary>
    internal int Size => Shared + (Groups * PerGroup);

    /// <summary>First slow part.</summary>
    internal int SlowAt => Curve.Shapes;

    /// <summary>First hysteresis term.</summary>
    internal int HysteresisAt => SlowAt + SlowCurrents.TauS.Length;

    /// <summary>Mean of the log of capacity over rated.</summary>
    internal int MeanAt => HysteresisAt + (2 * ChargeSlices.Memory.Length);

    /// <summary>What the current sensor reads too much under load, in thousandths of the rated capacity each hour.</summary>
    internal int OffsetAt => MeanAt + 2;

    /// <summary>First tap error, in units of 10 mV.</summary>
    internal int TapAt => OffsetAt + 1;

    /// <summary>First parameter of a group.</summary>
    internal int GroupAt(int group) => Shared + (group * PerGroup);
}
