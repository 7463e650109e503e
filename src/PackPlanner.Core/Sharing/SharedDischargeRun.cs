namespace PackPlanner.Core.Sharing;

/// <summary>A discharge of cells in parallel.</summary>
/// <param name="Through">Moments at rising ampere-hours, the first at the start and the last where it ended.</param>
/// <param name="EndedByGroup">Number of the group that met its cut-off first.</param>
public sealed record SharedDischargeRun(IReadOnlyList<SharedMoment> Through, int EndedByGroup);
