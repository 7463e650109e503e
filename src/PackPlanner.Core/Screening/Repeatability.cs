namespace PackPlanner.Core.Screening;

/// <summary>How well a capacity test repeats, and how that is known.</summary>
/// <param name="Fraction">One standard deviation as a fraction of the capacity.</param>
/// <param name="From">Stated, pooled from repeats, or assumed.</param>
/// <param name="DegreesOfFreedom">Of the pooled figure; 0 when there are no repeats.</param>
/// <param name="PooledFraction">What the repeats of this lot give, also where they are too few to be used; null without repeats.</param>
public sealed record Repeatability(double Fraction, RepeatabilityOrigin From, int DegreesOfFreedom, double? PooledFraction)
{
    /// <summary>Taken where nobody states it and no repeats show it: 1.5 %. Source: [CommonPractice].</summary>
    public const double AssumedFraction = 0.015;

    /// <summary>Fewer degrees of freedom than this say too little to replace the assumption.</summary>
    public const int FewestDegreesOfFreedom = 3;
}
