using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Core.Jobs;

/// <summary>One log of a job.</summary>
/// <param name="Source">Where it came from.</param>
/// <param name="Log">Its columns.</param>
/// <param name="RowsSetAside">Rows of the file that are not here.</param>
public sealed record JobLog(JobSource Source, RideLog Log, int RowsSetAside);
