namespace PackPlanner.Core.Balancing;

/// <summary>How full one group is, as far as it is known.</summary>
/// <param name="Number">Number of the group, from 1.</param>
/// <param name="CapacityAh">Ampere-hours, above zero; null when unknown.</param>
/// <param name="Fraction">State of charge against the others, 0..1; null where it cannot be told.</param>
/// <param name="FractionSpread">One standard deviation of <paramref name="Fraction"/>; null when unknown.</param>
/// <param name="LacksAh">Ampere-hours short of the fullest group, where that was given itself; else null.</param>
/// <param name="NotToBeCharged">True where a caution of 1 to 5 or 14 stands, or it rests below its cut-off.</param>
public sealed record GroupCharge(
    int Number, double? CapacityAh, double? Fraction, double? FractionSpread = null, double? LacksAh = null, bool NotToBeCharged = false)
{
    /// <summary>One standard deviation of <see cref="CapacityAh"/>, ampere-hours; null: taken as exact.</summary>
    public double? CapacitySigmaAh { get; init; }

    /// <summary>Cells in parallel, each told by itself, as the one group that they make.</summary>
    /// <param name="number">Number of the group, from 1.</param>
    /// <param name="cells">The cells, at least one.</param>
    /// <returns>Their charge together; unknown where that of a cell is, and held where one of them is.</returns>
    public static GroupCharge Together(int number, IReadOnlyList<GroupCharge> cells)
    {
        if (cells.Count == 1)
            return cells[0] with { Number = number };
        double? Sum(Func<GroupCharge, double?> of) => cells.All(cell => of(cell) is not null) ? cells.Sum(of) : null;
        double? capacityAh = Sum(cell => cell.CapacityAh);
        return new GroupCharge(
            number, capacityAh, Sum(cell => cell.Fraction * cell.CapacityAh) / capacityAh,
            Sum(cell => cell.FractionSpread * cell.CapacityAh * cell.FractionSpread * cell.CapacityAh) is { } square ? Math.Sqrt(square) / capacityAh : null,
            Sum(cell => cell.LacksAh), cells.Any(cell => cell.NotToBeCharged));
    }
}
