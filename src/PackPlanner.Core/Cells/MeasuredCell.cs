using UnitsNet;

namespace PackPlanner.Core.Cells;

/// <summary>One cell as measured at the bench, before any sorting.</summary>
/// <param name="Label">What is written on the cell; unique within its lot.</param>
/// <param name="Capacity">Charge delivered from full down to the cut-off voltage of the test; null when not measured.</param>
/// <param name="RestVoltage">Open-circuit voltage after a rest; null when it was not recorded.</param>
/// <param name="DcResistance">Pulse resistance ΔV/ΔI; null when not recorded.</param>
/// <param name="AcResistance">The 1 kHz figure, a different quantity; null when not recorded.</param>
public sealed record MeasuredCell(
    string Label,
    Reading<ElectricCharge>? Capacity,
    Reading<ElectricPotential>? RestVoltage,
    Reading<ElectricResistance>? DcResistance,
    Reading<ElectricResistance>? AcResistance);
