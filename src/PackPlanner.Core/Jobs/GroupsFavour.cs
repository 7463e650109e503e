namespace PackPlanner.Core.Jobs;

/// <summary>What the groups of a job favour.</summary>
public enum GroupsFavour
{
    /// <summary>The largest smallest group, then the least spread.</summary>
    EqualAh,

    /// <summary>Like resistances within each group, so that its cells share the first current evenly.</summary>
    EvenCurrents,

    /// <summary>As few cells as can be leave the groups that were read or arranged by hand.</summary>
    FewestMoves,
}
