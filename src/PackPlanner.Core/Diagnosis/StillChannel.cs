namespace PackPlanner.Core.Diagnosis;

/// <summary>A channel that stands still, or never reads.</summary>
/// <param name="Group">From 0.</param>
/// <param name="Volts">Where it stands; NaN where it never holds the volts of a cell.</param>
/// <param name="First">First row.</param>
/// <param name="Last">Last row.</param>
/// <param name="OthersMovedV">By how much the middle of the others moves meanwhile.</param>
internal readonly record struct StillChannel(int Group, double Volts, int First, int Last, double OthersMovedV);
