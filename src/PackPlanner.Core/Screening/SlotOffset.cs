namespace PackPlanner.Core.Screening;

/// <summary>How much one tester slot reads high or low against the others.</summary>
/// <param name="Slot">The slot, as the table writes it.</param>
/// <param name="Fraction">Offset as a fraction, positive when it reads high, against the median slot; null when no repeats tie it to the others.</param>
/// <param name="SpreadFraction">One standard deviation of that offset; null when the offset is.</param>
/// <param name="Tests">Capacity tests made in it.</param>
public sealed record SlotOffset(string Slot, double? Fraction, double? SpreadFraction, int Tests);
