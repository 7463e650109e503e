namespace PackPlanner.Core.Grouping;

/// <summary>How far batches were kept together, and what that allows at best.</summary>
/// <param name="MixedGroups">Groups that hold cells of more than one batch, or of an unknown one.</param>
/// <param name="FewestMixedGroups">No grouping of these cells has fewer: by counting, so it is proven.</param>
/// <param name="BoundAh">No grouping with so few mixed groups has a smallest group above this, ampere-hours.</param>
public sealed record BatchKeeping(int MixedGroups, int FewestMixedGroups, double BoundAh);
