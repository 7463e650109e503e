namespace PackPlanner.Core.Grouping;

/// <summary>What the matcher can say. Closed: these cases are all there are.</summary>
public abstract record GroupingOutcome
{
    private GroupingOutcome()
    {
    }

    /// <summary>Groups were made.</summary>
    /// <param name="Pack">The groups.</param>
    public sealed record Matched(MatchedPack Pack) : GroupingOutcome;

    /// <summary>There are fewer usable cells than places.</summary>
    /// <param name="Usable">Cells that may be used.</param>
    /// <param name="Needed">S x P.</param>
    /// <param name="Shapes">Shapes that the cells suffice for, the nearest first: S kept, then P kept.</param>
    public sealed record TooFewCells(int Usable, int Needed, IReadOnlyList<(int Series, int Parallel)> Shapes) : GroupingOutcome;

    /// <summary>The locks or the existing grouping contradict the cells or the shape.</summary>
    /// <param name="Problem">Where, why and what to do.</param>
    public sealed record Contradicts(Problem Problem) : GroupingOutcome
    {
        /// <summary>The groups as they were arranged, with cells that may not stay in them: to look at and to mend, never to build by; null where they do not add up.</summary>
        public MatchedPack? AsArranged { get; init; }

        /// <summary>Which cells of <see cref="AsArranged"/> may not stay, each with why, in words; empty without.</summary>
        public string WhyToReplace { get; init; } = "";

        /// <summary>Labels of the cells in <see cref="AsArranged"/> that must be replaced.</summary>
        public IReadOnlySet<string> ToReplace { get; init; } = new HashSet<string>();
    }
}
