namespace PackPlanner.Core.Grouping;

/// <summary>What is to be matched, and how.</summary>
public sealed record GroupingRequest
{
    /// <summary>Steps for the search of the strict aims; about two to four nanoseconds each on a machine of 2024.</summary>
    public const long DefaultSearchSteps = 1_200_000_000;

    /// <summary>Steps for levelling resistances.</summary>
    public const long DefaultLevellingSteps = 800_000_000;

    /// <summary>Cells that may be used; labels unique, in any order.</summary>
    public required IReadOnlyList<GroupingCell> Cells { get; init; }

    /// <summary>Groups in series, 1 or more.</summary>
    public required int Series { get; init; }

    /// <summary>Cells in parallel in each group, 1 or more.</summary>
    public required int Parallel { get; init; }

    /// <summary>
    /// Relative standard deviation of one capacity test as the user states it; null when not stated, which means no band.
    /// </summary>
    public double? RepeatabilityFraction { get; init; }

    /// <summary>
    /// The same as found from repeats in the lot, where the user states none: it feeds the noise figure, never the band.
    /// </summary>
    public double? FoundRepeatabilityFraction { get; init; }

    /// <summary>
    /// Step in which the tester writes capacities, ampere-hours; a search ends once it is within one such step of its bounds.
    /// Null: the step of the figures themselves.
    /// </summary>
    public double? TesterStepAh { get; init; }

    /// <summary>Cells that must stay in a group, numbered from 1.</summary>
    public IReadOnlyDictionary<string, int> Locks { get; init; } = new Dictionary<string, int>();

    /// <summary>What comes first.</summary>
    public GroupingPreference Prefer { get; init; }

    /// <summary>An existing grouping, labels by group from 1; null when there is none.</summary>
    public IReadOnlyList<IReadOnlyList<string>>? Existing { get; init; }

    /// <summary>Move as few cells of the existing grouping as the gain needs.</summary>
    public bool FewestMoves { get; init; }

    /// <summary>
    /// Repeatability that the noise sentence goes by, stated, found or assumed: what <see cref="FewestMoves"/> may give away where a cell was lost.
    /// </summary>
    public double NoiseFraction { get; init; }

    /// <summary>With <see cref="FewestMoves"/>: what noise alone would show is given away also where no cell was lost.</summary>
    public bool LossWithinNoise { get; init; }

    /// <summary>With <see cref="FewestMoves"/>: labels of spares that come in only where no others serve.</summary>
    public IReadOnlySet<string> Shunned { get; init; } = new HashSet<string>();

    /// <summary>As many groups of one batch as the cells allow come before the smallest group.</summary>
    public bool KeepBatches { get; init; }

    /// <summary>Take the existing grouping as it stands and only fill its empty places.</summary>
    public bool AsItIs { get; init; }

    /// <summary>Seed of the searches.</summary>
    public int Seed { get; init; } = 1;

    /// <summary>Steps for the strict aims.</summary>
    public long SearchSteps { get; init; } = DefaultSearchSteps;

    /// <summary>Steps for levelling resistances.</summary>
    public long LevellingSteps { get; init; } = DefaultLevellingSteps;
}
