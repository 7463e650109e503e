namespace PackPlanner.Core.Fitting;

/// <summary>One of the boxes into which a pack is divided.</summary>
/// <param name="Box">From 1.</param>
/// <param name="FromGroup">Its first group.</param>
/// <param name="ToGroup">Its last group.</param>
/// <param name="Cells">Cells in it.</param>
/// <param name="CellMassKg">Mass of its cells; null when not known.</param>
/// <param name="NominalV">Volts across it at nominal; null when not known.</param>
/// <param name="FullV">Volts across it when full; null when not known.</param>
public sealed record PackBox(int Box, int FromGroup, int ToGroup, int Cells, double? CellMassKg, double? NominalV, double? FullV);
