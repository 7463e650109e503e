namespace PackPlanner.Core.Fitting;

/// <summary>A point where a sense lead is joined.</summary>
/// <param name="Tap">0 is pack minus; tap k is the plus of group k.</param>
/// <param name="OnGroup">The group whose plate it sits on.</param>
/// <param name="Pole">"minus" for tap 0, else "plus".</param>
/// <param name="NominalV">Expected volts from pack minus with cells at nominal; null when the cell's is not known.</param>
/// <param name="FullV">Expected volts from pack minus with full cells; null when the cell's is not known.</param>
/// <param name="At">Middle of the cells on that plate.</param>
public sealed record SenseTap(int Tap, int OnGroup, string Pole, double? NominalV, double? FullV, PointMm At);
