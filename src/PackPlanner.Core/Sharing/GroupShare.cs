namespace PackPlanner.Core.Sharing;

/// <summary>How the cells of one group divide a load at one instant.</summary>
/// <param name="Group">Number of the group, from 1.</param>
/// <param name="TerminalV">Volts between the two take-off points.</param>
/// <param name="CurrentA">Amperes of each cell in the order of the group, discharge positive.</param>
/// <param name="WorstCell">Index of the cell that carries most, in either direction; the first of equals.</param>
/// <param name="TimesEqual">Its current over an equal share; null without a load.</param>
/// <param name="CirculatingA">What the fuller cells would drive into the emptier ones without a load: the sum of the outgoing currents, amperes.</param>
public sealed record GroupShare(
    int Group, double TerminalV, IReadOnlyList<double> CurrentA, int WorstCell, double? TimesEqual, double CirculatingA);
