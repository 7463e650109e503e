namespace PackPlanner.Core.Fitting;

/// <summary>Free distances that must stay round the cells, millimetres, none below zero.</summary>
/// <param name="WallMm">Curved side of a cylinder, sides and base of a box, to wall or keep-out.</param>
/// <param name="EndMm">Each end of a cylinder to wall or keep-out: strip, sense leads, insulation.</param>
/// <param name="PlateMm">Large face of a box to wall or keep-out; the larger of this and <paramref name="WallMm"/> counts.</param>
/// <param name="TerminalMm">Terminal face of a box to wall or keep-out.</param>
/// <param name="CellGapMm">Can to can; sides and base of a box to the next cell.</param>
/// <param name="SpacerMm">Large face to large face.</param>
/// <param name="LayerGapMm">Cylinders end to end.</param>
public sealed record Clearances(
    double WallMm = 0,
    double EndMm = 0,
    double PlateMm = 0,
    double TerminalMm = 0,
    double CellGapMm = 0,
    double SpacerMm = 0,
    double LayerGapMm = 0);
