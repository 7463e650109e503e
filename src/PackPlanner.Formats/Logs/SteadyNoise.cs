using PackPlanner.Core.Cells;

namespace PackPlanner.Formats.Logs;

/// <summary>How far neighbouring readings of volts stand apart while the current stays.</summary>
internal static class SteadyNoise
{
    private const int MostLooks = 20_000;

    /// <summary>The middle distance, volts; without a row whose current stays, more than any step.</summary>
    /// <param name="currentA">Amperes.</param>
    /// <param name="volts">Of a cell, or the mean of the groups.</param>
    /// <param name="most">The largest current.</param>
    /// <param name="leastV">No reading is taken for better than this.</param>
    internal static double Of(double[] currentA, double[] volts, double most, double leastV)
    {
        int every = Math.Max(1, currentA.Length / MostLooks);
        List<double> apart = [];
        for (int i = 1; i < currentA.Length; i += every)
            if (Math.Abs(currentA[i] - currentA[i - 1]) < 0.01 * most && double.IsFinite(volts[i] - volts[i - 1]))
                apart.Add(Math.Abs(volts[i] - volts[i - 1]));
        return apart.Count == 0 ? double.MaxValue : Math.Max(Robust.UpperMedian(apart), leastV);
    }
}
