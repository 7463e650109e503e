using PackPlanner.Core.Screening;

namespace PackPlanner.Core.Jobs;

/// <summary>Holds groups that were read or arranged by hand against the cells and the shape of the job.</summary>
internal static class JobArrangement
{
    private const int MostNamed = 6;

    /// <summary>Why an arrangement cannot be followed as it stands.</summary>
    /// <param name="arranged">The groups.</param>
    /// <param name="lot">The job's cells, judged.</param>
    /// <param name="series">Groups in series.</param>
    /// <param name="parallel">Cells in parallel in each.</param>
    /// <returns>The problem; null when every cell may be used and the shape is the job's.</returns>
    /// <remarks>No place is filled and no cell dropped in silence: who builds by the sheets would take a cell that is set apart, or miss one.</remarks>
    internal static Problem? Wrong(JobGrouping arranged, ScreenedLot lot, int series, int parallel)
    {
        string where = $"groups from {arranged.From.From}";
        string[] not = [.. NotUsable(arranged, lot)];
        if (not.Length > 0)
            return new Problem(where, $"not to be used: {Listed(not)}", "In 3 Groups, fewest moves puts spares in their places, and free all lets the search decide; or add a mended file of groups.");
        if (arranged.Groups.SelectMany(group => group).GroupBy(label => label, StringComparer.Ordinal).FirstOrDefault(same => same.Count() > 1)?.Key is { } twice)
            return new Problem(where, $"{twice} stands in them twice", "Add a mended file of groups, or let the search decide: free all in 3 Groups.");
        string remedy = "Set series and parallel as the groups are, add other groups, or let the search decide: free all in 3 Groups.";
        if (arranged.Groups.Count != series)
            return new Problem(where, $"there are {arranged.Groups.Count} of them, and the job says {series} in series", remedy);
        for (int i = 0; i < arranged.Groups.Count; i++)
        {
            if (arranged.Groups[i].Count != parallel)
                return new Problem(where, $"group {i + 1} has {arranged.Groups[i].Count} cells, and the job says {parallel} in parallel", remedy);
        }

        return null;
    }

    /// <summary>Cells of an arrangement that may not be grouped, each with why; several after one another.</summary>
    internal static string Listed(IReadOnlyList<string> cells) =>
        string.Join("; ", cells.Take(MostNamed)) + (cells.Count > MostNamed ? $"; and {cells.Count - MostNamed} more" : "");

    /// <summary>Cells of an arrangement that may not be grouped, each with why.</summary>
    internal static IEnumerable<string> NotUsable(JobGrouping arranged, ScreenedLot lot)
    {
        Dictionary<string, ScreenedCell> cells = lot.Cells.ToDictionary(cell => cell.Label, StringComparer.Ordinal);
        foreach (string label in arranged.Groups.SelectMany(group => group))
        {
            if (!cells.TryGetValue(label, out ScreenedCell? cell))
                yield return $"{label} is not among the cells";
            else if (!GroupableCells.May(cell))
                yield return $"{label} {Why(cell)}";
        }
    }

    private static string Why(ScreenedCell cell)
    {
        VerdictReason? reason = cell.Reasons.FirstOrDefault(reason => reason.Caution is not null && reason.Bears != Verdict.Use) ?? cell.Reasons.FirstOrDefault(reason => reason.Bears != Verdict.Use);
        string because = reason is null ? "" : reason.Caution is { } caution ? $" ({reason.Code}, {caution})" : $" ({reason.Code})";
        return cell.Verdict == Verdict.Reject ? $"is rejected{because}"
            : cell.Verdict == Verdict.Hold || cell.HeldForSafety ? $"is on hold{because}"
            : "has no capacity";
    }
}
