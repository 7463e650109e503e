namespace PackPlanner.Core.Sizing;

/// <summary>The limit that binds a choice, and what would change without it.</summary>
/// <param name="Limit">parallel-for-energy, parallel-for-peak-current, parallel-for-continuous-current, given, places.</param>
/// <param name="Text">The same in words, with figures.</param>
/// <param name="WithoutParallel">P without this limit; null when nothing else says how many.</param>
/// <param name="WithoutPackMassKg">Mass at that P, kilograms.</param>
/// <param name="WithoutRangeKm">Range at that P, kilometres.</param>
public sealed record BindingLimit(
    string Limit, string Text, int? WithoutParallel, double? WithoutPackMassKg, double? WithoutRangeKm);
