namespace PackPlanner.Core.Jobs;

/// <summary>One thing that a user does to a job: a name that undo can show, and a pure function.</summary>
/// <param name="Name">Short and with its object: reject T091.</param>
/// <param name="Apply">Gives the job after the change; it asks no clock and reads no file.</param>
public sealed record JobChange(string Name, Func<Job, Job> Apply);
