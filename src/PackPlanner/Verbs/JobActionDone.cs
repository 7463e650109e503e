using PackPlanner.Formats;
using PackPlanner.Formats.JobFiles;

namespace PackPlanner.Verbs;

/// <summary>What one action of the verb job did.</summary>
/// <param name="Job">The job, not saved yet.</param>
/// <param name="Did">A sentence for each thing done.</param>
/// <param name="Account">What became of rows that were read; null when none were.</param>
/// <param name="Understood">What was understood and assumed while reading.</param>
/// <param name="Files">Files that were written.</param>
internal sealed record JobActionDone(
    OpenJob Job,
    IReadOnlyList<string> Did,
    RowAccount? Account = null,
    IReadOnlyList<string>? Understood = null,
    IReadOnlyList<string>? Files = null);
