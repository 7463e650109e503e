using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Diagnosis;

/// <summary>One rest in a log, and how the groups stood against one another at its end.</summary>
/// <param name="FromS">Seconds of its first row.</param>
/// <param name="LengthS">Seconds from its first row to its last.</param>
/// <param name="MedianV">Volts of the middle group at its end.</param>
/// <param name="ApartV">Volts of each group less that; NaN where none was read; shape [groups].</param>
public sealed record LogRest(double FromS, double LengthS, double MedianV, double[] ApartV)
{
    // After a minute polarisation still moves all groups alike by more than they differ; the last fifth of a rest is taken.
    private const double LeastS = 60, Last = 0.2;

    /// <summary>The rests of a log, in order of time; of many only the longest are kept. Empty without a current.</summary>
    /// <param name="log">The log; with a signed current or an unsigned one.</param>
    /// <param name="ratedAh">Rated capacity of a group: what is no current to speak of depends on it.</param>
    /// <param name="most">How many are kept.</param>
    /// <exception cref="ArgumentOutOfRangeException">The rated capacity or the number is not above zero.</exception>
    public static IReadOnlyList<LogRest> Of(RideLog log, double ratedAh, int most = 40)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(ratedAh);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(most);
        if (log.CurrentA is not { } current || log.Rows < 3)
            return [];
        ChargeCount count = ChargeCount.Of(log.TimeS, current, log.RowsAreAverages, ratedAh);
        List<(int First, int End)> rests = [];
        for (int i = 0; i < log.Rows; i++)
        {
            int first = i;
            while (i < log.Rows && count.Resting[i])
                i++;
            if (i > first && log.TimeS[i - 1] - log.TimeS[first] >= LeastS)
                rests.Add((first, i));
        }
        return
        [
            .. rests.OrderByDescending(rest => log.TimeS[rest.End - 1] - log.TimeS[rest.First]).ThenBy(rest => rest.First).Take(most)
                .OrderBy(rest => rest.First).Select(rest => At(log, rest.First, rest.End)),
        ];
    }

    private static LogRest At(RideLog log, int first, int end)
    {
        double fromS = log.TimeS[first], lengthS = log.TimeS[end - 1] - fromS;
        int late = first;
        while (log.TimeS[late] < fromS + ((1 - Last) * lengthS))
            late++;
        double[] volts = [.. log.GroupV.Select(group => Robust.Median([.. group[late..end].Where(double.IsFinite)]))];
        double middle = Robust.Median([.. volts.Where(double.IsFinite)]);
        return new LogRest(fromS, lengthS, middle, [.. volts.Select(v => v - middle)]);
    }
}
