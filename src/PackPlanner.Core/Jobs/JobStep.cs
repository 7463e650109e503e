namespace PackPlanner.Core.Jobs;

/// <summary>A change that was made: its name, and the job on both sides of it.</summary>
/// <param name="Name">As in <see cref="JobChange"/>.</param>
/// <param name="Before">The job before.</param>
/// <param name="After">The job after.</param>
public sealed record JobStep(string Name, Job Before, Job After);
