namespace PackPlanner.Core.Jobs;

/// <summary>Which cell stands in which group.</summary>
/// <param name="Groups">Labels of each group, in series order from pack minus.</param>
/// <param name="From">The search, a file, or the user.</param>
/// <param name="Source">The file it was read from; null when it came from none.</param>
public sealed record JobGrouping(IReadOnlyList<IReadOnlyList<string>> Groups, Origin From, JobSource? Source = null);
