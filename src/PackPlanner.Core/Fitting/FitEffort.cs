namespace PackPlanner.Core.Fitting;

/// <summary>How long to look.</summary>
public enum FitEffort
{
    /// <summary>Regular nests only; well under a second for a few hundred cells. For sizing and for drawings while typing.</summary>
    Quick,

    /// <summary>Everything: nests, free packing, exact boxes, wide links.</summary>
    Full,
}
