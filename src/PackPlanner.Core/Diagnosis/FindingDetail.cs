namespace PackPlanner.Core.Diagnosis;

/// <summary>One finding on one group: what speaks for it, how sure it is, and what would settle it.</summary>
/// <param name="Kind">What is wrong.</param>
/// <param name="Evidence">Measured grounds, for and against, with figures.</param>
/// <param name="Sure">In a word.</param>
/// <param name="SettleBy">The one measurement or log that would settle it.</param>
public sealed record FindingDetail(FindingKind Kind, IReadOnlyList<string> Evidence, Sureness Sure, string SettleBy);

