namespace PackPlanner.Core.Grouping;

/// <summary>What a spare in the place of a failed cell would give.</summary>
/// <param name="Cell">The spare's label.</param>
/// <param name="Group">Number of the failed cell's group, from 1.</param>
/// <param name="GroupAh">Capacity of that group after, ampere-hours.</param>
/// <param name="PackAh">Smallest group after, ampere-hours.</param>
/// <param name="GroupResistanceMilliohm">Of that group after; null when a resistance is unknown.</param>
/// <param name="BringToV">Volts to bring the spare to before it is joined: the group's own; null when unknown.</param>
public sealed record SpareOption(
    string Cell, int Group, double GroupAh, double PackAh, double? GroupResistanceMilliohm, double? BringToV);
