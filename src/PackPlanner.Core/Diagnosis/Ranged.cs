using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Diagnosis;

/// <summary>A figure with the range that is meant to hold the truth nine times in ten.</summary>
/// <param name="Value">Best value.</param>
/// <param name="Low">Lower end.</param>
/// <param name="High">Upper end.</param>
public readonly record struct Ranged(double Value, double Low, double High)
{
    /// <summary>One standard deviation, from half the width of the range.</summary>
    public double Sigma => (High - Low) / 2 / NormalRange.NinetyPercent;

    /// <summary>A 90 % range from one standard deviation of a normal error.</summary>
    internal static Ranged Normal(double value, double sd) => new(value, value - (NormalRange.NinetyPercent * sd), value + (NormalRange.NinetyPercent * sd));

    /// <summary>A 90 % range of something that cannot be below zero, from a relative standard deviation.</summary>
    internal static Ranged Relative(double value, double sd) => new(value, value * Math.Exp(-NormalRange.NinetyPercent * sd), value * Math.Exp(NormalRange.NinetyPercent * sd));
}
