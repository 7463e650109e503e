using PackPlanner.Core.Screening;

namespace PackPlanner.Core.Jobs;

/// <summary>A verdict that the user set himself. It never lifts what is rejected or held for a safety reason.</summary>
/// <param name="Verdict">Use, hold or reject.</param>
/// <param name="Reason">His reason, in his words; not empty.</param>
/// <param name="From">Who and when.</param>
public sealed record VerdictOverride(Verdict Verdict, string Reason, Origin From);
