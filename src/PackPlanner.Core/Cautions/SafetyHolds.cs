using System.Globalization;
using System.Text.RegularExpressions;

namespace PackPlanner.Core.Cautions;

/// <summary>Cautions after which a cell is neither charged, joined nor grouped, whatever its capacity.</summary>
public static class SafetyHolds
{
    private static readonly string[] Codes = ["caution-01", "caution-02", "caution-03", "caution-04", "caution-05", "caution-14"];

    /// <summary>Whether a caution sets a cell apart for safety.</summary>
    /// <param name="code">The caution's code; null is none.</param>
    /// <returns>True for deep discharge, reversal, overcharge, a deep-discharge history, damage that is seen, and lost charge.</returns>
    public static bool Include(string? code) => Codes.Contains(code);

    /// <summary>Whether the place of a caution is a certain group.</summary>
    /// <param name="where">The place as the caution says it.</param>
    /// <param name="group">Number of the group, from 1.</param>
    /// <returns>True for "group 3" and "cell 3", where a log's cell is a group.</returns>
    public static bool Names(string where, int group) =>
        Regex.IsMatch(where, $@"\b(group|cell) {group.ToString(CultureInfo.InvariantCulture)}\b", RegexOptions.CultureInvariant);
}
