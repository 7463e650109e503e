namespace PackPlanner.Core.Jobs;

/// <summary>One thing that a job may be told, whether it has been or not.</summary>
/// <param name="Key">Name in files and on the command line, unit included.</param>
/// <param name="What">What it is, for people.</param>
/// <param name="Kind">Which values it takes.</param>
/// <param name="Without">What stays undone or is not checked while it is unknown.</param>
public sealed record GivenEntry(string Key, string What, GivenKind Kind, string Without);
