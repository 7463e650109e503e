namespace PackPlanner.Core.Packs;

/// <summary>What a link, a bar or a wire is made of.</summary>
public enum Metal
{
    /// <summary>Annealed copper.</summary>
    Copper,

    /// <summary>Nickel strip.</summary>
    Nickel,

    /// <summary>Steel under a thin plating of nickel: what cheap strip is made of.</summary>
    Steel,
}
