namespace PackPlanner.Core.Sharing;

/// <summary>A cell, or a group, that is to be joined in parallel with others.</summary>
/// <param name="Label">What is written on it.</param>
/// <param name="RestV">Resting volts; null when not measured, and then nothing is said about it.</param>
/// <param name="ResistanceMilliohm">Resistance, milliohm; null when unknown.</param>
/// <param name="CapacityAh">Ampere-hours; null when unknown.</param>
/// <param name="NotToBeCharged">True where a caution of 1 to 5 or 14 stands, or it rests below its cut-off.</param>
public sealed record JoinCell(string Label, double? RestV, double? ResistanceMilliohm, double? CapacityAh, bool NotToBeCharged)
{
    /// <summary>Cells already in parallel, as the one that they make.</summary>
    /// <param name="label">What to call it.</param>
    /// <param name="cells">The cells, at least one.</param>
    /// <returns>Their mean volts, because in parallel they rest alike; unknown where that of a cell is.</returns>
    public static JoinCell Together(string label, IReadOnlyList<JoinCell> cells)
    {
        double? All(Func<JoinCell, double?> of, Func<double, double> whole) => cells.All(cell => of(cell) is not null) ? whole(cells.Sum(of)!.Value) : null;
        return new JoinCell(
            label, All(cell => cell.RestV, sum => sum / cells.Count), All(cell => 1 / cell.ResistanceMilliohm, sum => 1 / sum),
            All(cell => cell.CapacityAh, sum => sum), cells.Any(cell => cell.NotToBeCharged));
    }
}
