namespace PackPlanner.Core.Fitting;

/// <summary>How long to look, counted in steps of work, so that the same effort gives the same answer on any machine.</summary>
/// <param name="MillionSteps">Overlap terms that free packing may look at, in millions; 0: regular nests and quick slabs only.</param>
/// <param name="PreferGroups">Larger groups are wanted whatever they cost in places.</param>
public sealed record FitEffort(int MillionSteps, bool PreferGroups = false)
{
    /// <summary>Regular nests and quick slabs; well under a second for a few hundred cells. For sizing and for drawings while typing.</summary>
    public static FitEffort Quick { get; } = new(0);

    /// <summary>Nests, free packing, thorough slabs: about ten seconds on two cores.</summary>
    public static FitEffort Full { get; } = new(700);

    internal bool IsQuick => MillionSteps <= 0;
}
