namespace PackPlanner.Core.Grouping;

/// <summary>One cell that goes somewhere else than in the existing grouping.</summary>
/// <param name="Cell">Its label.</param>
/// <param name="FromGroup">Number from 1; null when it comes from the spares.</param>
/// <param name="ToGroup">Number from 1; null when it is taken out.</param>
public sealed record CellMove(string Cell, int? FromGroup, int? ToGroup);
