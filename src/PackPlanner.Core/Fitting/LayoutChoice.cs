namespace PackPlanner.Core.Fitting;

/// <summary>What the packing engines found, before grouping.</summary>
/// <param name="Layouts">At least one, perhaps empty of cells; the fullest first.</param>
/// <param name="Bound">No layout holds more; null when no useful bound is known.</param>
/// <param name="BoundMethod">How it was proved.</param>
/// <param name="RegularCount">Places of the best regular nest; null for boxes.</param>
/// <param name="FreeCount">Places of the best free packing; null when not looked for.</param>
internal sealed record LayoutChoice(
    IReadOnlyList<Layout> Layouts, int? Bound, string BoundMethod, int? RegularCount, int? FreeCount);
