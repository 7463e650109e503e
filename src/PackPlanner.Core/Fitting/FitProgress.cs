namespace PackPlanner.Core.Fitting;

/// <summary>How a search stands.</summary>
/// <param name="Stage">What is being done, in a few words.</param>
/// <param name="Best">Places found so far.</param>
/// <param name="Bound">Proven limit; null when there is none of use.</param>
/// <param name="Fraction">Share of the work done, 0..1.</param>
public sealed record FitProgress(string Stage, int Best, int? Bound, double Fraction);
