namespace PackPlanner.Core.Grouping;

/// <summary>The best so far, while a search runs.</summary>
/// <param name="SmallestAh">Smallest group, ampere-hours.</param>
/// <param name="SpreadAh">Largest less smallest, ampere-hours.</param>
public sealed record GroupingProgress(double SmallestAh, double SpreadAh);
