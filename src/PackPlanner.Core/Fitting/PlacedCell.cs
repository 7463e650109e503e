namespace PackPlanner.Core.Fitting;

/// <summary>A cell in its place in the pack.</summary>
/// <param name="Cell">Its number, from 1.</param>
/// <param name="Centre">Centre of the bare body.</param>
/// <param name="SizeMm">Size of the bare body as placed.</param>
/// <param name="RoundAlong">Axis of a round cell; null for a box.</param>
/// <param name="Plus">Where the plus pole looks: "+z" for a round cell; for a box the end of its long side; null for a spare.</param>
/// <param name="Terminals">Where the terminal face of a box looks; null for a round cell.</param>
/// <param name="Group">1..series in series order; null for a spare place.</param>
public sealed record PlacedCell(int Cell, PointMm Centre, PointMm SizeMm, Axis? RoundAlong, string? Plus, string? Terminals, int? Group);
