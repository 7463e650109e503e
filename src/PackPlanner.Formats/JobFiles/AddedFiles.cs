using PackPlanner.Core.Jobs;

namespace PackPlanner.Formats.JobFiles;

/// <summary>A job after files were added.</summary>
/// <param name="History">The job.</param>
/// <param name="Account">What became of the rows of all tables and logs among them.</param>
/// <param name="Did">What was added, a sentence for each file.</param>
/// <param name="Understood">What was understood and assumed while reading.</param>
public sealed record AddedFiles(JobHistory History, RowAccount Account, IReadOnlyList<string> Did, IReadOnlyList<string> Understood);
