namespace PackPlanner.Core.Packs;

/// <summary>A starting point for the main fuse, never the final choice.</summary>
/// <remarks>
/// Its DC voltage rating must be at least the pack's highest volts, its breaking capacity above the prospective
/// short-circuit current, and its rating not above what the conductor carries; makers' curves and local rules decide.
/// </remarks>
public static class FuseRule
{
    /// <summary>Rating over continuous current. Source: [LspFuseGuide].</summary>
    public const double OverContinuous = 1.25;

    /// <summary>Standard ratings, amperes. Source: [Nec240.6].</summary>
    public static IReadOnlyList<double> StandardA { get; } =
    [
        1, 3, 6, 10, 15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200, 225, 250, 300, 350, 400, 450, 500, 600,
    ];

    /// <summary>The next standard rating for a continuous current.</summary>
    /// <param name="continuousA">Amperes, above zero.</param>
    /// <returns>Amperes; null above the largest in the list.</returns>
    public static double? NextStandardA(double continuousA)
    {
        // 80 A x 1.25 is exactly 100 A, and equal is enough.
        double leastA = OverContinuous * continuousA * (1 - 1e-12);
        double found = StandardA.FirstOrDefault(rating => rating >= leastA);
        return found > 0 ? found : null;
    }
}
