namespace PackPlanner.Core.Jobs;

/// <summary>A value changed by hand. What was read stays in its table and is shown beside.</summary>
/// <param name="Value">The new value; null makes it unknown.</param>
/// <param name="From">Who changed it and when.</param>
public sealed record CellEdit(JobValue? Value, Origin From);
