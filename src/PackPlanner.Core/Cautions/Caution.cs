using System.Text.RegularExpressions;

namespace PackPlanner.Core.Cautions;

/// <summary>One caution raised: a code of the catalogue, how grave it is here, where, and what was seen.</summary>
/// <param name="Code">caution-01 … caution-34, as in <see cref="CautionCatalogue"/>.</param>
/// <param name="Signal">The word for this case; one code can be graver at a higher figure.</param>
/// <param name="Where">Cell, group, file and line, or the figure's name.</param>
/// <param name="Saw">The value that raised it and the limit it passed, with units.</param>
/// <param name="DoNow">What to do here, where more is known than in the catalogue; null for the catalogue's words.</param>
public sealed partial record Caution(string Code, SignalWord Signal, string Where, string Saw, string? DoNow = null)
{
    /// <summary>How <see cref="Saw"/> begins where a check could not be made.</summary>
    public const string NotChecked = "not checked";

    /// <summary>What to do: what is known here, else that the missing reading is wanted, else the catalogue's words.</summary>
    public string Do => DoNow ?? (Saw.StartsWith(NotChecked, StringComparison.Ordinal)
        ? "This was not checked, which is not a pass: take the missing reading and ask again."
        : Entry.DoNow);

    /// <summary>How <see cref="Where"/> names one cell.</summary>
    /// <param name="label">Its label.</param>
    public static string OfCell(string label) => $"cell {label}";

    /// <summary>The catalogue's entry for this code.</summary>
    public CautionEntry Entry => CautionCatalogue.Of(Code);

    /// <summary>Cautions in the order in which they are shown: gravest first, then by code and place.</summary>
    /// <param name="cautions">In any order.</param>
    /// <returns>The same cautions once each, in order.</returns>
    public static IReadOnlyList<Caution> InOrder(IEnumerable<Caution> cautions) =>
    [
        .. cautions.Distinct()
            .OrderBy(c => c.Signal)
            .ThenBy(c => c.Code, StringComparer.Ordinal)
            .ThenBy(c => Padded(c.Where), StringComparer.Ordinal)
            .ThenBy(c => c.Where, StringComparer.Ordinal),
    ];

    /// <summary>The cautions of one job in order. What several of its parts ask of the whole pack (its cell fuses, its protection) is told once.</summary>
    /// <param name="cautions">In any order.</param>
    /// <returns>Gravest first.</returns>
    public static IReadOnlyList<Caution> OfOneJob(IEnumerable<Caution> cautions) =>
    [
        .. InOrder(cautions).DistinctBy(caution => caution.Code is "caution-22" or "caution-23" ? (caution.Code, "", "") : (caution.Code, caution.Where, caution.Saw)),
    ];

    // Group 2 before group 10.
    private static string Padded(string where) => Digits().Replace(where, number => number.Value.PadLeft(9, '0'));

    [GeneratedRegex("[0-9]+")]
    private static partial Regex Digits();
}
