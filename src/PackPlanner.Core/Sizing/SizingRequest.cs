namespace PackPlanner.Core.Sizing;

/// <summary>Everything that sizing is asked.</summary>
/// <param name="Cells">Cell models to choose from, at least one.</param>
/// <param name="Series">Groups in series; null: open.</param>
/// <param name="Parallel">Cells in parallel; null: as many as the need asks for.</param>
/// <param name="OverheadFraction">Box, links and monitor as a share of the cells' mass; null: unknown.</param>
/// <param name="Need">What the vehicle is to do.</param>
/// <param name="Electrics">What the pack is joined to.</param>
/// <param name="PackMassLimitKg">Heaviest pack, kilograms; null: no limit.</param>
/// <param name="TopSpeedWantedKmh">Top speed to be reached, kilometres per hour; null: none asked.</param>
public sealed record SizingRequest(
    IReadOnlyList<SizingCell> Cells,
    int? Series,
    int? Parallel,
    double? OverheadFraction,
    VehicleNeed Need,
    Electrics Electrics,
    double? PackMassLimitKg,
    double? TopSpeedWantedKmh);
