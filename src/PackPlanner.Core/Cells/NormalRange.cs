namespace PackPlanner.Core.Cells;

/// <summary>How far a normal error reaches.</summary>
public static class NormalRange
{
    /// <summary>Standard deviations to either side that hold a normal error nine times in ten: the ± of every screen, the low and high of every answer.</summary>
    /// <remarks>Source: [FromMemory]. The quantile 0.95 of the standard normal distribution; a test holds it against MathNet's.</remarks>
    public const double NinetyPercent = 1.6448536269514722;
}
