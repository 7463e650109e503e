using System.Collections.Immutable;

namespace PackPlanner.Core.Jobs;

/// <summary>What the user changed about where groups stand.</summary>
public sealed record JobPlacement
{
    /// <summary>Nothing changed.</summary>
    public static JobPlacement AsFitted { get; } = new();

    /// <summary>Groups that were turned over, so that plus and minus change sides.</summary>
    public ImmutableSortedSet<int> Turned { get; init; } = [];

    /// <summary>True when pack minus is at the other end.</summary>
    public bool EndsSwapped { get; init; }

    /// <summary>Which matched group stands at which place of the series, each counted from 1; a place that is not here holds its own number.</summary>
    public ImmutableSortedDictionary<int, int> Exchanged { get; init; } = ImmutableSortedDictionary<int, int>.Empty;

    /// <summary>What of this can be done with so many groups: an exchange with a group or place that is not there is none, nor is turning such a group.</summary>
    /// <param name="series">Groups in series.</param>
    /// <returns>The placement; the same one where all of it applies.</returns>
    public JobPlacement Within(int series)
    {
        ImmutableSortedDictionary<int, int> exchanged = Exchanged.RemoveRange(Exchanged.Keys.Where(place => !ReturnsTo(place, series)));
        ImmutableSortedSet<int> turned = Turned.Except(Turned.Where(group => group < 1 || group > series));
        return exchanged.Count == Exchanged.Count && turned.Count == Turned.Count ? this : this with { Exchanged = exchanged, Turned = turned };
    }

    /// <summary>What <see cref="Within"/> leaves out, for people.</summary>
    /// <param name="series">Groups in series.</param>
    /// <returns>A sentence; null where all applies.</returns>
    public string? LeftOutWithin(int series)
    {
        JobPlacement within = Within(series);
        int[] exchanges = [.. Exchanged.Keys.Except(within.Exchanged.Keys)];
        int[] turned = [.. Turned.Except(within.Turned)];
        string[] parts =
        [
            .. exchanges.Length > 0 ? [$"the exchange of groups at {string.Join(", ", exchanges)}"] : Array.Empty<string>(),
            .. turned.Length > 0 ? [$"turning over group {string.Join(", ", turned)}"] : Array.Empty<string>(),
        ];
        return parts.Length == 0 ? null : $"Of what was changed about where groups stand, {string.Join(" and ", parts)} no longer applies: there are {series} groups.";
    }

    // Groups go round: what stands at a place, then what stands at that group's own place, until the first comes back.
    private bool ReturnsTo(int start, int series)
    {
        int at = start;
        for (int steps = 0; steps < Exchanged.Count; steps++)
        {
            if (at < 1 || at > series || !Exchanged.TryGetValue(at, out at))
                return false;
            if (at == start)
                return true;
        }

        return false;
    }
}
