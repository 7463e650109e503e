namespace PackPlanner.Core.Diagnosis;

/// <summary>A figure with the range that is meant to hold the truth nine times in ten.</summary>
/// <param name="Value">Best value.</param>
/// <param name="Low">Lower end.</param>
/// <param name="High">Upper end.</param>
public readonly record struct Ranged(double Value, double Low, double High)
{
    private const double NinetyPercent = 1.645;

    /// <summary>One standard deviation, from half the width of the range.</summary>
    public double Sigma => (High - Low) / 2 / NinetyPercent;

    /// <summary>A 90 % range from one standard deviation of a normal error.</summary>
    internal static Ranged Normal(double value, double sd) => new(value, value - (NinetyPercent * sd), value + (NinetyPercent * sd));

    /// <summary>A 90 % range of something that cannot be below zero, from a relative standard deviation.</summary>
    internal static Ranged Relative(double value, double sd) => new(value, value * Math.Exp(-NinetyPercent * sd), value * Math.Exp(NinetyPercent * sd));
}
