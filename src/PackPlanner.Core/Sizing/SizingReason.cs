namespace PackPlanner.Core.Sizing;

/// <summary>Why no S serves a cell model.</summary>
/// <param name="Code">Stable short name.</param>
/// <param name="Text">The two limits in words, and the nearest S.</param>
public sealed record SizingReason(string Code, string Text);
