namespace PackPlanner.Formats.Logs;

/// <summary>Tells a current without a sign from one that flows in one direction only.</summary>
internal static class UnsignedCurrent
{
    /// <summary>Whether a current that is never negative is charge at times and discharge at others.</summary>
    // Without a sign a rising current lowers the volts in one part of the log and raises them in another, both clearly,
    // and there are long stretches of rising and of falling volts while it flows.
    internal static bool Is(double[] timeS, double[] currentA, double[] volts, double most, double falling, double rising)
    {
        double fellS = 0;
        double roseS = 0;
        int window = Math.Max(5, currentA.Length / 200);
        for (int from = 0; from + window < currentA.Length; from += window)
        {
            int to = from + window;
            double flow = 0;
            bool steady = true;
            for (int i = from; i <= to; i++)
            {
                flow += Math.Abs(currentA[i]);
                steady &= Math.Abs(currentA[i] - currentA[from]) < 0.3 * most;
            }

            flow /= window + 1;
            double change = volts[to] - volts[from];
            if (!(flow > 0.1 * most) || !steady || !double.IsFinite(change))
                continue;
            fellS += change < -0.002 ? timeS[to] - timeS[from] : 0;
            roseS += change > 0.002 ? timeS[to] - timeS[from] : 0;
        }

        double less = Math.Min(falling, rising);
        bool stepsBothWays = less > 0.1 * Math.Max(falling, rising);
        return (stepsBothWays && Math.Min(fellS, roseS) > 0.1 * Math.Max(fellS, roseS)) || WholeStepsBothWays(timeS, currentA, volts, most) || FlowEdges.BothWays(timeS, currentA, volts, most)
            || SignWalk.BothWays(timeS, currentA, volts, most);
    }

    // From rest to rest: one long stretch of current that lifts the volts at once and goes on lifting them, and one that does the
    // opposite. A small charging current beside a large discharge shows only here.
    private static bool WholeStepsBothWays(double[] timeS, double[] currentA, double[] volts, double most)
    {
        const double shortestS = 300;
        const double leastPart = 0.02;
        (bool rose, bool fell) = (false, false);
        int from = -1;
        for (int i = 1; i < currentA.Length; i++)
        {
            bool rest = Math.Abs(currentA[i]) < 0.02 * most;
            if (!rest && from < 0 && Math.Abs(currentA[i - 1]) < 0.02 * most)
                from = i;
            if (!rest || from < 0)
                continue;
            (double at, double jump, double change) = (volts[from], volts[from] - volts[from - 1], volts[i - 1] - volts[from]);
            if (timeS[i - 1] - timeS[from] >= shortestS && timeS[from] - timeS[from - 1] <= 120)
            {
                rose |= jump > 0 && change > leastPart * at;
                fell |= jump < 0 && change < -leastPart * at;
            }

            from = -1;
        }

        return rose && fell;
    }
}
