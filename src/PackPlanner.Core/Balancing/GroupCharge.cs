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
}
