namespace PackPlanner.Core.Diagnosis;

/// <summary>What a misfit costs: its square while it is small, in proportion to it where it is large, so that a few strange readings do not rule.</summary>
/// <remarks>The bound of 2.5 deviations is common practice, no source; it leaves normal errors nearly all in the square.</remarks>
internal static class HuberLoss
{
    private const double Bound = 2.5;

    /// <summary>The cost, dimensionless.</summary>
    /// <param name="t">Size of the misfit in deviations, not negative.</param>
    internal static double Of(double t) => t <= Bound ? t * t : Bound * ((2 * t) - Bound);

    /// <summary>The weight, 0 to 1, with which a square of this size has the same slope.</summary>
    /// <param name="t">Size of the misfit in deviations, not negative.</param>
    internal static double Weight(double t) => t <= Bound ? 1 : Bound / t;
}
