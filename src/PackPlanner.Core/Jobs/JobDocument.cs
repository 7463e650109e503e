namespace PackPlanner.Core.Jobs;

/// <summary>A JSON document of ours that a job holds as it was read, fields unknown to this version included.</summary>
/// <param name="Source">Where it came from; its checksum is that of the file.</param>
/// <param name="Text">The document.</param>
public sealed record JobDocument(JobSource Source, string Text);
