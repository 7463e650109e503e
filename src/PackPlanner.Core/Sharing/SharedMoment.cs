namespace PackPlanner.Core.Sharing;

/// <summary>The currents of all groups after some charge has been taken.</summary>
/// <param name="AtAh">Ampere-hours taken since the start.</param>
/// <param name="Groups">Each group's division of the load.</param>
public sealed record SharedMoment(double AtAh, IReadOnlyList<GroupShare> Groups);
