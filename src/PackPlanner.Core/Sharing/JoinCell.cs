namespace PackPlanner.Core.Sharing;

/// <summary>A cell, or a group, that is to be joined in parallel with others.</summary>
/// <param name="Label">What is written on it.</param>
/// <param name="RestV">Resting volts; null when not measured, and then nothing is said about it.</param>
/// <param name="ResistanceMilliohm">Resistance, milliohm; null when unknown.</param>
/// <param name="CapacityAh">Ampere-hours; null when unknown.</param>
/// <param name="NotToBeCharged">True where a caution of 1 to 5 or 14 stands, or it rests below its cut-off.</param>
public sealed record JoinCell(string Label, double? RestV, double? ResistanceMilliohm, double? CapacityAh, bool NotToBeCharged);
