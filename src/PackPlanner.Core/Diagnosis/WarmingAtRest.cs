namespace PackPlanner.Core.Diagnosis;

/// <summary>
/// Looks for a probe that warms while no current flows: caution 13 at its gravest. The current was below C/50 either way for
/// half an hour, and the probe rose by more than 0.5 K a minute for five minutes against the mean of the others
/// (common practice, no source).
/// </summary>
internal static class WarmingAtRest
{
    private const double RestS = 1800, RiseS = 300, RiseK = 2.5;

    // Coldest and hottest that a probe in a pack is believed; what lies beyond is a filler.
    private const double ColdestDegC = -40, HottestDegC = 150;

    // A filler jumps at once; what warms does not gain this share of its rise within one of the five minutes.
    private const double LargestStepShare = 0.6;

    /// <summary>The row at which a probe has risen so; null when it never does.</summary>
    /// <param name="log">A log with two probes or more.</param>
    /// <param name="currentA">Amperes with the sensor's zero taken off, shape [rows].</param>
    /// <param name="probe">Which probe, from 0.</param>
    /// <param name="onA">Below this either way no current flows, amperes.</param>
    internal static int? First(RideLog log, double[] currentA, int probe, double onA)
    {
        int restFrom = -1, before = 0;
        for (int row = 0; row < log.Rows; row++)
        {
            if (!(Math.Abs(currentA[row]) < onA))
            {
                restFrom = -1;
                continue;
            }

            if (restFrom < 0)
                (restFrom, before) = (row, row);
            while (before < row && log.TimeS[row] - log.TimeS[before + 1] >= RiseS)
                before++;
            if (log.TimeS[row] - log.TimeS[restFrom] >= RestS && IsRise(log, probe, before, row))
                return row;
        }

        return null;
    }

    private static bool IsRise(RideLog log, int probe, int from, int to)
    {
        double seconds = log.TimeS[to] - log.TimeS[from];
        // A gap in the log hides how it rose.
        if (seconds < RiseS || seconds > 1.2 * RiseS)
            return false;
        double rise = Apart(log, probe, to) - Apart(log, probe, from);
        bool warms = log.TemperatureDegC[probe][to] > log.TemperatureDegC[probe][from];
        return warms && rise > RiseK * seconds / RiseS && LargestStep(log, probe, from, to) < LargestStepShare * rise;
    }

    private static double LargestStep(RideLog log, int probe, int from, int to)
    {
        double largest = 0;
        int last = from;
        for (int row = from + 1; row <= to; row++)
        {
            if (row < to && log.TimeS[row] - log.TimeS[last] < RiseS / 5)
                continue;
            largest = Math.Max(largest, Apart(log, probe, row) - Apart(log, probe, last));
            last = row;
        }

        return largest;
    }

    /// <summary>Kelvin above the mean of the other probes; NaN where the probe or all others are lost or filled in.</summary>
    private static double Apart(RideLog log, int probe, int row)
    {
        double sum = 0;
        int n = 0;
        for (int other = 0; other < log.TemperatureDegC.Length; other++)
        {
            double degrees = Believed(log.TemperatureDegC[other][row]);
            if (other != probe && !double.IsNaN(degrees))
                (sum, n) = (sum + degrees, n + 1);
        }

        return n == 0 ? double.NaN : Believed(log.TemperatureDegC[probe][row]) - (sum / n);
    }

    private static double Believed(double degrees) => degrees is > ColdestDegC and < HottestDegC ? degrees : double.NaN;
}
