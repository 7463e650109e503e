namespace PackPlanner.Core.Grouping;

/// <summary>How much of the difference between groups is only the tester's.</summary>
public static class GroupNoise
{
    /// <summary>The spread, largest less smallest, that repeating the capacity tests would show between groups that are equal in truth.</summary>
    /// <param name="repeatabilityFraction">One standard deviation of one test, as a fraction.</param>
    /// <param name="meanCellAh">Mean capacity of the cells, ampere-hours.</param>
    /// <param name="series">Groups.</param>
    /// <param name="parallel">Cells of each.</param>
    /// <returns>Ampere-hours; the expected range of that many independent normal sums.</returns>
    public static double SpreadAh(double repeatabilityFraction, double meanCellAh, int series, int parallel) =>
        MeasurementNoise.ExpectedRange(series, MeasurementNoise.OfGroup(repeatabilityFraction, meanCellAh, parallel));
}
