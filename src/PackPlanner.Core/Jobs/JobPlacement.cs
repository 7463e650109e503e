using System.Collections.Immutable;

namespace PackPlanner.Core.Jobs;

/// <summary>What the user changed about where groups stand.</summary>
public sealed record JobPlacement
{
    /// <summary>Nothing changed.</summary>
    public static JobPlacement AsFitted { get; } = new();

    /// <summary>Which option of the list of choices was taken, counted from 1; null when none yet.</summary>
    public int? Choice { get; init; }

    /// <summary>Groups that were turned over, so that plus and minus change sides.</summary>
    public ImmutableSortedSet<int> Turned { get; init; } = [];

    /// <summary>True when pack minus is at the other end.</summary>
    public bool EndsSwapped { get; init; }

    /// <summary>Which matched group stands at which place of the series, each counted from 1; a place that is not here holds its own number.</summary>
    public ImmutableSortedDictionary<int, int> Exchanged { get; init; } = ImmutableSortedDictionary<int, int>.Empty;
}
