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
    public static IReadOnlyList<Caution> Cautions(Job job, IReadOnlyList<JobGroup> inSeries) => CautionsAgainst(job, Expected(job.Givens, inSeries));

    /// <summary>The same against volts that are known.</summary>
    /// <param name="job">The job.</param>
    /// <param name="expected">Volts expected at each tap, as <see cref="TapCheck.Expected"/> gives them.</param>
    /// <returns>In the order of the taps.</returns>
    public static IReadOnlyList<Caution> CautionsAgainst(Job job, VoltSpan[] expected)
    {
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

    /// <summary>What is wrong with one reading, with the volts that were expected.</summary>
    /// <param name="tap">0 is pack minus.</param>
    /// <param name="expected">As <see cref="TapCheck.Expected"/> gives them.</param>
    /// <param name="readings">What the meter showed, by tap.</param>
    /// <returns>Null where nothing is wrong, or nothing can be told.</returns>
    public static string? Why(int tap, VoltSpan[] expected, IReadOnlyDictionary<int, double> readings)
    {
        if (expected.Length < 2)
            return null;
        if (tap < 0 || tap >= expected.Length)
            return string.Create(CultureInfo.InvariantCulture, $"the last tap of {expected.Length - 1} groups is B{expected.Length - 1}");
        return TapCheck.Fault(tap, expected, readings) switch
        {
            TapFault.FromMinus => $"{Volts(expected[tap].LowV, expected[tap].HighV)} expected from pack minus",
            TapFault.Step => string.Create(CultureInfo.InvariantCulture, $"{readings[tap] - readings[tap - 1]:0.00} V above B{tap - 1}, ")
                + $"{Volts(expected[tap].LowV - expected[tap - 1].LowV, expected[tap].HighV - expected[tap - 1].HighV)} expected",
            _ => null,
        };
    }

    private static string Volts(double low, double high) => high - low < 0.005
        ? string.Create(CultureInfo.InvariantCulture, $"{low:0.00} V")
        : string.Create(CultureInfo.InvariantCulture, $"{low:0.0} to {high:0.0} V");
}
