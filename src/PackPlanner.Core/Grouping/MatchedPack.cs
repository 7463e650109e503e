namespace PackPlanner.Core.Grouping;

/// <summary>The groups, what they deliver, and how far from the best possible they are.</summary>
public sealed record MatchedPack
{
    /// <summary>S groups of exactly P cells.</summary>
    public required IReadOnlyList<MatchedGroup> Groups { get; init; }

    /// <summary>Cells that may be used but are not, largest first.</summary>
    public required IReadOnlyList<GroupingCell> LeftOut { get; init; }

    /// <summary>Capacity of the smallest group: what the string delivers, ampere-hours.</summary>
    public required double SmallestAh { get; init; }

    /// <summary>Largest less smallest group, ampere-hours.</summary>
    public required double SpreadAh { get; init; }

    /// <summary>No grouping of these cells has a smallest group above this, ampere-hours.</summary>
    public required double SmallestBoundAh { get; init; }

    /// <summary>The smallest group of the strict answer, before any band was used.</summary>
    public required double StrictSmallestAh { get; init; }

    /// <summary>The spread of the strict answer.</summary>
    public required double StrictSpreadAh { get; init; }

    /// <summary>True when no grouping has a larger smallest group, and none with that one has less spread than the strict answer.</summary>
    public required bool ProvenOptimal { get; init; }

    /// <summary>True when the smallest group of the strict answer is proven to be the largest possible.</summary>
    public required bool SmallestProven { get; init; }

    /// <summary>The step in which capacities were read, ampere-hours.</summary>
    public required double StepAh { get; init; }

    /// <summary>Spread that measurement noise alone would show between perfectly equal groups; null when no repeatability was stated.</summary>
    public double? NoiseSpreadAh { get; init; }

    /// <summary>The largest share of the first current in any group; null when a resistance is unknown.</summary>
    public CurrentShare? LargestShare { get; init; }

    /// <summary>What one more cell like the middle of the used ones would add to the smallest group, about; ampere-hours.</summary>
    public required double OneMoreCellAh { get; init; }

    /// <summary>Cells that go elsewhere than in the existing grouping; null when none was given.</summary>
    public IReadOnlyList<CellMove>? Moves { get; init; }

    /// <summary>How few cells must move, proven, for a smallest group like this one; null when that was not asked or the existing groups were not full.</summary>
    public int? FewestMoves { get; init; }

    /// <summary>How far batches were kept together; null when that was not asked.</summary>
    public BatchKeeping? Batches { get; init; }

    /// <summary>True when the user's cancel ended a search.</summary>
    public bool Stopped { get; init; }
}
