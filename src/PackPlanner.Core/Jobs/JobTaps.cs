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

    /// <summary>Which cells stand below each tap, in short: equal for the same cells in the same groups.</summary>
    /// <param name="inSeries">The groups from pack minus on.</param>
    /// <returns>Eight hexadecimal figures for each tap, shape [S + 1]; empty where there are no groups.</returns>
    public static string[] GroupsBelow(IReadOnlyList<JobGroup> inSeries)
    {
        if (inSeries.Count == 0)
            return [];
        uint sum = 2166136261;
        string[] below = new string[inSeries.Count + 1];
        for (int tap = 0; tap < below.Length; tap++)
        {
            below[tap] = sum.ToString("x8", CultureInfo.InvariantCulture);
            foreach (char letter in tap == inSeries.Count ? "" : string.Join('\n', inSeries[tap].Cells.Select(cell => cell.Label).Order(StringComparer.Ordinal)) + "\f")
                sum = (sum ^ letter) * 16777619;
        }

        return below;
    }

    /// <summary>The readings that are of the groups as they stand; one of other cells tells nothing about these.</summary>
    /// <param name="job">The job.</param>
    /// <param name="inSeries">Its groups from pack minus on; empty where there are none.</param>
    /// <returns>Volts by tap.</returns>
    public static Dictionary<int, double> Readings(Job job, IReadOnlyList<JobGroup> inSeries)
    {
        string[] below = job.TapReadings.IsEmpty ? [] : GroupsBelow(inSeries);
        return job.TapReadings
            .Where(reading => reading.Value.GroupsBelow is not { } then || reading.Key < 0 || reading.Key >= below.Length || then == below[reading.Key])
            .ToDictionary(reading => reading.Key, reading => reading.Value.Volts);
    }

    /// <summary>Caution 19 for each reading that is not as it must be, that no tap can have, or that is of other cells.</summary>
    /// <param name="job">The job.</param>
    /// <param name="inSeries">Its groups from pack minus on; empty where there are none.</param>
    /// <returns>In the order of the taps.</returns>
    public static IReadOnlyList<Caution> Cautions(Job job, IReadOnlyList<JobGroup> inSeries) => CautionsAgainst(job, inSeries, Expected(job.Givens, inSeries));

    /// <summary>The same against volts that are known.</summary>
    /// <param name="job">The job.</param>
    /// <param name="inSeries">Its groups from pack minus on; empty where there are none.</param>
    /// <param name="expected">Volts expected at each tap, as <see cref="TapCheck.Expected"/> gives them.</param>
    /// <returns>In the order of the taps.</returns>
    public static IReadOnlyList<Caution> CautionsAgainst(Job job, IReadOnlyList<JobGroup> inSeries, VoltSpan[] expected)
    {
        Dictionary<int, double> readings = Readings(job, inSeries);
        return
        [
            .. job.TapReadings
                .Select(reading => (Tap: reading.Key, reading.Value.Volts, Why: readings.ContainsKey(reading.Key) ? Why(reading.Key, expected, readings) : "other cells stood below it then"))
                .Where(reading => reading.Why is not null)
                .Select(reading => new Caution("caution-19", SignalWord.Warning, $"tap B{reading.Tap}",
                    string.Create(CultureInfo.InvariantCulture, $"{reading.Volts:0.00} V read, {reading.Why}: {(readings.ContainsKey(reading.Tap) ? "stop, do not plug in" : "measure it again")}"))),
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
