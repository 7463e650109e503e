namespace PackPlanner.Screens.CavityScreen;

/// <summary>The sorts of things that a case is made of.</summary>
internal enum CasePartKind
{
    /// <summary>A part of the inside.</summary>
    Space,

    /// <summary>A place that must stay free.</summary>
    KeepOut,

    /// <summary>A way in.</summary>
    Opening,

    /// <summary>Something weighed beside the cells.</summary>
    Weighed,

    /// <summary>The cell.</summary>
    Cell,

    /// <summary>The clearances.</summary>
    Clearances,
}
