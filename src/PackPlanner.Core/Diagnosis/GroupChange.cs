namespace PackPlanner.Core.Diagnosis;

/// <summary>Change of one group between two logs.</summary>
/// <param name="Group">From 1.</param>
/// <param name="CapacityAh">Capacity; null where a log holds none.</param>
/// <param name="ResistanceMilliohm">Resistance at the later log's temperature; null where a log holds none.</param>
public sealed record GroupChange(int Group, ChangedFigure? CapacityAh, ChangedFigure? ResistanceMilliohm);
