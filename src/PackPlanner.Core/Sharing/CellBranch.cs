namespace PackPlanner.Core.Sharing;

/// <summary>One cell as the network sees it: an ideal source behind a resistance.</summary>
/// <param name="Label">What is written on the cell.</param>
/// <param name="OpenCircuitV">Resting volts.</param>
/// <param name="ResistanceMilliohm">DC resistance, milliohm, above zero.</param>
/// <param name="CapacityAh">Ampere-hours; null when not measured, and then nothing can be said beyond the first instant.</param>
public sealed record CellBranch(string Label, double OpenCircuitV, double ResistanceMilliohm, double? CapacityAh = null);
