namespace PackPlanner.Core.Fitting;

/// <summary>A parallel group in its place.</summary>
/// <param name="Group">1..series.</param>
/// <param name="Cells">Numbers of its cells.</param>
/// <param name="Plus">Where its plus poles look; see <see cref="PlacedCell"/>.</param>
/// <param name="MassKg">Mass of its cells; null when not known.</param>
/// <param name="Centre">Middle of its cells.</param>
public sealed record PlacedGroup(int Group, IReadOnlyList<int> Cells, string Plus, double? MassKg, PointMm Centre);
