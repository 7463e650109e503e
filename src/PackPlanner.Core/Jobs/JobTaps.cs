using System.Globalization;
using PackPlanner.Core.Cautions;

namespace PackPlanner.Core.Jobs;

/// <summary>What the tap readings of a job say.</summary>
public static class JobTaps
{
    /// <summary>Volts expected at each tap.</summary>
    /// <param name="givens">The givens: empty and full volts stand in for groups without resting volts.</param>
    /// <param name="inSeries">The groups from pack minus on; empty where there are none.</param>
    /// <returns>Shape [S + 1].</returns>
    public static VoltSpan[] Expected(JobGivens givens, IReadOnlyList<JobGroup> inSeries) => TapCheck.Expected(
    [
        .. Enumerable.Range(0, inSeries.Count > 0 ? inSeries.Count : givens.Series ?? 0)
            .Select(i => TapCheck.Group(i < inSeries.Count ? inSeries[i].RestV : null, givens.EmptyV, givens.FullV)),
    ]);

    /// <summary>Caution 19 for each reading that is not as it must be, or that no tap can have.</summary>
    /// <param name="job">The job.</param>
    /// <param name="inSeries">Its groups from pack minus on; empty where there are none.</param>
    /// <returns>In the order of the taps.</returns>
    public static IReadOnlyList<Caution> Cautions(Job job, IReadOnlyList<JobGroup> inSeries)
    {
        VoltSpan[] expected = Expected(job.Givens, inSeries);
        Dictionary<int, double> readings = job.TapReadings.ToDictionary(reading => reading.Key, reading => reading.Value.Volts);
        return
        [
            .. readings.OrderBy(reading => reading.Key)
                .Select(reading => (reading.Key, reading.Value, Why: Why(reading.Key, expected, readings)))
                .Where(reading => reading.Why is not null)
                .Select(reading => new Caution("caution-19", SignalWord.Warning, $"tap B{reading.Key}",
                    string.Create(CultureInfo.InvariantCulture, $"{reading.Value:0.00} V read, {reading.Why}: stop, do not plug in"))),
        ];
    }

    private static string? Why(int tap, VoltSpan[] expected, Dictionary<int, double> readings)
    {
        if (expected.Length < 2)
            return null;
        if (tap < 0 || tap >= expected.Length)
            return string.Create(CultureInfo.InvariantCulture, $"the last tap of {expected.Length - 1} groups is B{expected.Length - 1}");
        if (TapCheck.IsRight(tap, expected, readings) != false)
            return null;
        (double low, double high) = expected[tap];
        return low == high
            ? string.Create(CultureInfo.InvariantCulture, $"{low:0.00} V expected, and each step its group's own volts")
            : string.Create(CultureInfo.InvariantCulture, $"{low:0.0} to {high:0.0} V expected, and each step between empty and full volts");
    }
}
