namespace PackPlanner.Core.Cautions;

/// <summary>Every caution this program knows, in the order of its codes.</summary>
/// <remarks>
/// The words are starting points for people, not law: local codes and licensed practice come first. A caution can be
/// marked as read but never switched off. None of them calls anything safe.
/// </remarks>
public static class CautionCatalogue
{
    /// <summary>All entries, by code.</summary>
    public static IReadOnlyList<CautionEntry> All { get; } = [.. CellCautionWords.All, .. PackCautionWords.All];

    /// <summary>The entry of one code.</summary>
    /// <param name="code">caution-01 … caution-34.</param>
    /// <returns>The entry.</returns>
    /// <exception cref="ArgumentException">The code is not in the catalogue.</exception>
    public static CautionEntry Of(string code) =>
        All.FirstOrDefault(entry => entry.Code == code)
        ?? throw new ArgumentException($"No caution has the code {code}.", nameof(code));
}
