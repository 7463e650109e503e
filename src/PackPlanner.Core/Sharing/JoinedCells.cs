namespace PackPlanner.Core.Sharing;

/// <summary>Cells already in parallel, seen from outside as one source behind one resistance.</summary>
/// <remarks>Source: [Kirchhoff]. V = sum (E / R) / sum (1 / R), R = 1 / sum (1 / R).</remarks>
internal readonly record struct JoinedCells(double OpenV, double Ohm, double CapacityAh, double LeastLimitA)
{
    /// <summary>Joins cells.</summary>
    /// <param name="cells">Resting volts, ohms, ampere-hours and the current that each may carry; null limits do not bind.</param>
    internal static JoinedCells Of(IReadOnlyCollection<(double OpenV, double Ohm, double? CapacityAh, double? LimitA)> cells)
    {
        double conductance = cells.Sum(cell => 1 / cell.Ohm);
        double openV = cells.Sum(cell => cell.OpenV / cell.Ohm) / conductance;
        // Each carries its part by conductance, so the first to reach its limit sets the limit of all.
        double least = cells.Min(cell => (cell.LimitA ?? double.PositiveInfinity) * cell.Ohm * conductance);
        return new JoinedCells(openV, 1 / conductance, cells.Sum(cell => cell.CapacityAh ?? double.NaN), least);
    }
}
