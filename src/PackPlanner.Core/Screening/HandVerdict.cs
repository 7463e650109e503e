namespace PackPlanner.Core.Screening;

/// <summary>A verdict that the user gave himself.</summary>
/// <param name="Verdict">His verdict.</param>
/// <param name="Because">His reason, in his words.</param>
public sealed record HandVerdict(Verdict Verdict, string Because);
