namespace PackPlanner.Core.Grouping;

/// <summary>What a complete search can say.</summary>
internal enum CoverVerdict
{
    /// <summary>An assignment was found.</summary>
    Found,

    /// <summary>The whole tree was seen: there is none.</summary>
    None,

    /// <summary>The budget ran out first; nothing is known.</summary>
    GaveUp,
}
