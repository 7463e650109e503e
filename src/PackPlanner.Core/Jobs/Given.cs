namespace PackPlanner.Core.Jobs;

/// <summary>Something the user knows about his pack and vehicle, and where he has it from.</summary>
/// <param name="Value">In the unit of its <see cref="GivenEntry"/>.</param>
/// <param name="From">Where it comes from.</param>
public sealed record Given(JobValue Value, Origin From);
