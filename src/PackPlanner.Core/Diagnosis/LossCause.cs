namespace PackPlanner.Core.Diagnosis;

/// <summary>One cause of lost range.</summary>
/// <param name="Name">pack, cold or vehicle.</param>
/// <param name="WhShare">Share of the earlier range that it took; negative where it gave; null when it cannot be told.</param>
/// <param name="Grounds">Where that comes from, or what is missing.</param>
public sealed record LossCause(string Name, double? WhShare, string Grounds);
