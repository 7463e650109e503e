using System.Text.Json.Nodes;
using PackPlanner.Core.Jobs;
using PackPlanner.Formats.Json;

namespace PackPlanner.Formats.JobFiles;

/// <summary>One field of a job's state in the file.</summary>
/// <param name="Name">The field.</param>
/// <param name="Shared">The property of <see cref="Job"/>; two jobs that share it do not differ here.</param>
/// <param name="Write">Its JSON; null leaves it out.</param>
/// <param name="Read">Takes it from the state into a job; an absent field gives the empty property.</param>
internal sealed record JobPart(
    string Name, Func<Job, object?> Shared, Func<Job, JsonNode?> Write, Func<Job, JsonInput, JobSources, Job> Read);
