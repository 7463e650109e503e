namespace PackPlanner.Core.Cells;

/// <summary>The chemistries that are known here. Tests run over all of them unasked.</summary>
public static class Chemistries
{
    /// <summary>Lithium iron phosphate.</summary>
    public static Chemistry LithiumIronPhosphate => Lfp.Figures;

    /// <summary>Lithium nickel manganese cobalt oxide.</summary>
    public static Chemistry NickelManganeseCobalt => Nmc.Figures;

    /// <summary>All chemistries in the order in which they are shown.</summary>
    public static IReadOnlyList<Chemistry> All { get; } =
        [Lfp.Figures, Nmc.Figures, Nca.Figures, Lco.Figures, Lmo.Figures, Lto.Figures];

    /// <summary>Finds a chemistry by its trade name, in any case.</summary>
    /// <param name="name">LFP, nmc, …; outer spaces and a trailing family number (NMC811) are allowed, and NCM and LiFePO4, as the trade also writes.</param>
    /// <returns>The chemistry, or null when the name is not known.</returns>
    public static Chemistry? Find(string? name)
    {
        string asked = (name ?? "").Trim().ToUpperInvariant();
        if (asked.StartsWith("NCM", StringComparison.Ordinal))
            asked = $"NMC{asked[3..]}";
        return All.FirstOrDefault(c => c.Name == asked)
            ?? All.FirstOrDefault(c => asked.StartsWith(c.Name, StringComparison.Ordinal) && asked[c.Name.Length..].All(char.IsAsciiDigit))
            ?? (asked is "LIFEPO4" ? Lfp.Figures : null);
    }
}
