namespace PackPlanner.Core.Fitting;

/// <summary>A cavity, a cell and what is wanted of the pack.</summary>
/// <param name="Cavity">The parts of the cavity; a cell must lie wholly inside one of them.</param>
/// <param name="KeepOuts">Places where no cell may be: tubes, contactor, seat post.</param>
/// <param name="CellName">The model, as the user calls it.</param>
/// <param name="Cell">The bare body of the cell.</param>
/// <param name="CellMassG">Mass of one cell; null when not known.</param>
/// <param name="Clearances">Free distances round the cells.</param>
/// <param name="Series">Groups in series; null when only the count is asked.</param>
/// <param name="Parallel">Cells in a group; null: as many as fit.</param>
/// <param name="LinkReachMm">How much further apart than the required gap two cells may be and still be linked.</param>
/// <param name="JumpersAllowed">Links between groups that may be made by cable.</param>
/// <param name="CellMassLimitKg">The most that the cells in use may weigh; null: no limit.</param>
/// <param name="Parts">What else has been weighed.</param>
/// <param name="Openings">The ways in.</param>
/// <param name="Boxes">In how many boxes the pack is built; 1 as a rule.</param>
/// <param name="NominalV">Nominal volts of one cell, for the sense taps; null when not known.</param>
/// <param name="FullV">Volts of one full cell; null when not known.</param>
/// <param name="HasVentPath">True when the case says that gas has a way out; null when it says nothing.</param>
/// <param name="IsClamped">True where flat cells are clamped, or have room to swell otherwise than by clearances; false where neither was said to be so; null when nothing is said.</param>
public sealed record FitCase(
    IReadOnlyList<NamedSolid> Cavity,
    IReadOnlyList<NamedSolid> KeepOuts,
    string CellName,
    CellBody Cell,
    double? CellMassG,
    Clearances Clearances,
    int? Series = null,
    int? Parallel = null,
    double LinkReachMm = 0,
    int JumpersAllowed = 0,
    double? CellMassLimitKg = null,
    IReadOnlyList<WeighedPart>? Parts = null,
    IReadOnlyList<Opening>? Openings = null,
    int Boxes = 1,
    double? NominalV = null,
    double? FullV = null,
    bool? HasVentPath = null,
    bool? IsClamped = null);
