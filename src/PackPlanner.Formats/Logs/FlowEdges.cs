using PackPlanner.Core.Cells;

namespace PackPlanner.Formats.Logs;

/// <summary>Stretches of current between rests, judged by both their edges: a brief charge in a log without signs shows only there.</summary>
internal static class FlowEdges
{
    private const double LeastFlow = 0.03;
    private const int ShortestRows = 4;
    private const double LongestStepS = 30;

    /// <summary>Whether some stretches lift the volts when they begin and lower them when they end, and others do the opposite, by like resistances.</summary>
    /// <param name="timeS">Seconds.</param>
    /// <param name="currentA">Never clearly negative.</param>
    /// <param name="volts">Of a cell, or the mean of the groups.</param>
    /// <param name="most">The largest current.</param>
    internal static bool BothWays(double[] timeS, double[] currentA, double[] volts, double most)
    {
        double least = 5 * SteadyNoise.Of(currentA, volts, most, leastV: 0.0002);
        List<double> falls = [];
        List<double> rises = [];
        int from = -1;
        for (int i = 1; i < currentA.Length; i++)
        {
            bool flows = Math.Abs(currentA[i]) > LeastFlow * most;
            bool flowed = Math.Abs(currentA[i - 1]) > LeastFlow * most;
            if (flows && !flowed)
                from = i;
            if (flows || !flowed || from < 0)
                continue;
            if (i - from >= ShortestRows && timeS[from] - timeS[from - 1] <= LongestStepS && timeS[i] - timeS[i - 1] <= LongestStepS)
            {
                (double on, double off) = (volts[from] - volts[from - 1], volts[i - 1] - volts[i]);
                if (Math.Min(Math.Abs(on), Math.Abs(off)) > least && on * off > 0 && Math.Min(Math.Abs(on), Math.Abs(off)) > 0.3 * Math.Max(Math.Abs(on), Math.Abs(off)))
                    (on > 0 ? rises : falls).Add(Math.Abs(on) / Math.Abs(currentA[from]));
            }

            from = -1;
        }

        if (falls.Count == 0 || rises.Count == 0)
            return false;
        double apart = Robust.UpperMedian(rises) / Robust.UpperMedian(falls);
        return apart is > 0.2 and < 5;
    }
}
