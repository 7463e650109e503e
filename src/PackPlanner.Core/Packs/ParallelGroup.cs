using UnitsNet;

namespace PackPlanner.Core.Packs;

/// <summary>Cells joined in parallel, seen from outside as one.</summary>
/// <param name="Number">Counted from 1 at pack minus.</param>
/// <param name="Labels">The cells in it; empty when only the group was measured.</param>
/// <param name="Capacity">Sum of the cells' capacities; null when one is unknown.</param>
/// <param name="DcResistance">All cells in parallel; null when one is unknown.</param>
public sealed record ParallelGroup(
    int Number, IReadOnlyList<string> Labels, ElectricCharge? Capacity, ElectricResistance? DcResistance);
