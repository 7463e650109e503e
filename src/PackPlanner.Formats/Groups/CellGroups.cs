using PackPlanner.Core.Cells;
using PackPlanner.Core.Sharing;

namespace PackPlanner.Formats.Groups;

/// <summary>Rows of a table of cells, put into their parallel groups.</summary>
public static class CellGroups
{
    /// <summary>One row for each cell, in groups: the later row of a cell that was tested twice.</summary>
    /// <param name="rows">Rows of the table.</param>
    /// <param name="understood">Takes a sentence on what was assumed.</param>
    /// <returns>Groups by rising number; one group 1 where the table has no group column.</returns>
    public static IReadOnlyList<(int Group, IReadOnlyList<CellRow> Cells)> Of(IReadOnlyList<CellRow> rows, List<string> understood)
    {
        Dictionary<string, CellRow> latest = new(StringComparer.Ordinal);
        List<string> repeated = [];
        foreach (CellRow row in rows)
        {
            if (latest.TryGetValue(row.Label, out CellRow? before))
                repeated.Add(row.Label);
            latest[row.Label] = before is { Date: { } old } && row.Date is { } later && later < old ? before : row;
        }

        if (repeated.Count > 0)
            understood.Add($"{repeated.Distinct().Count()} cells stand in more than one row ({Some(repeated.Distinct())}); the latest row of each is used.");
        CellRow[] ungrouped = [.. latest.Values.Where(row => row.Group is null)];
        if (ungrouped.Length == latest.Count)
        {
            understood.Add("The table has no group numbers: all its cells are taken as one parallel group.");
            return [(1, ungrouped)];
        }

        if (ungrouped.Length > 0)
            understood.Add($"{ungrouped.Length} cells have no group number ({Some(ungrouped.Select(row => row.Label))}) and are left out.");
        return
        [
            .. latest.Values.Where(row => row.Group is not null)
                .GroupBy(row => row.Group!.Value)
                .OrderBy(group => group.Key)
                .Select(group => (group.Key, (IReadOnlyList<CellRow>)[.. group])),
        ];
    }

    /// <summary>Builds the networks that <c>share</c> solves.</summary>
    /// <param name="rows">Rows of the table.</param>
    /// <param name="linkMilliohm">Each piece of either bar, milliohm.</param>
    /// <param name="positiveAt">Cell, from 1, at the positive take-off.</param>
    /// <param name="negativeAt">Cell, from 1, at the negative take-off; null: the last cell of each group.</param>
    /// <param name="chemistry">Fills resting volts only where no cell has any; null: nothing is filled.</param>
    /// <param name="file">What to name in a refusal.</param>
    /// <returns>The groups and what was assumed, or what is missing.</returns>
    public static Outcome<ShareCase> Networks(
        IReadOnlyList<CellRow> rows, double linkMilliohm, int positiveAt, int? negativeAt, Chemistry? chemistry, string file)
    {
        List<string> understood = [];
        IReadOnlyList<(int Group, IReadOnlyList<CellRow> Cells)> groups = Of(rows, understood);
        CellRow[] cells = [.. groups.SelectMany(group => group.Cells)];
        if (cells.Length == 0)
            return Refusal.Input("no-cells", file, "it holds no cells", "Give a table with a row for each cell.");
        if (Lacking(cells, row => row.ResistanceMilliohm is > 0) is { } noMilliohm)
            return Refusal.Input("no-resistance", file, $"no resistance above 0 for {noMilliohm}",
                "Measure the DC resistance of those cells: without it the current cannot be divided.");
        bool allAlike = cells.All(row => row.RestV is null);
        if (!allAlike && Lacking(cells, row => row.RestV is not null) is { } noVolts)
            return Refusal.Input("no-resting-volts", file, $"no resting volts for {noVolts}", "Measure those cells at rest, all on the same day.");
        if (allAlike && chemistry is null)
            return Refusal.Input("no-resting-volts", file, "no cell has resting volts", "Add them, or give --chemistry: all cells are then taken as full.");
        if (allAlike)
            understood.Add($"No resting volts are given: all cells are taken as full, at {chemistry!.FullV} V.");
        foreach ((int number, IReadOnlyList<CellRow> members) in groups)
        {
            if (positiveAt > members.Count || negativeAt > members.Count)
                return Refusal.Input("take-off-outside", $"--positive-at {positiveAt}, --negative-at {negativeAt ?? members.Count}",
                    $"group {number} has {members.Count} cells", "Name cells by their place in the group, from 1.");
        }

        understood.AddRange(Kinds(cells));
        return new ShareCase(
        [
            .. groups.Select(group => ParallelCells.Alike(
                group.Group,
                [.. group.Cells.Select(row => new CellBranch(row.Label, row.LaterRestV ?? row.RestV ?? chemistry!.FullV, row.ResistanceMilliohm!.Value, row.CapacityAh))],
                linkMilliohm,
                positiveAt,
                negativeAt ?? group.Cells.Count)),
        ], null, null, understood);
    }

    /// <summary>A sentence where the resistances are not known to be DC ones.</summary>
    /// <param name="cells">Rows used.</param>
    /// <returns>No or one sentence.</returns>
    public static IEnumerable<string> Kinds(IReadOnlyCollection<CellRow> cells)
    {
        if (cells.Any(row => row.ResistanceKind == ResistanceKind.Ac1Khz))
            yield return "These are 1 kHz resistances: under a load that lasts, sag and heat are larger, usually 1.3 to 2 times (common practice, no source).";
        else if (cells.Any(row => row.ResistanceMilliohm is not null && row.ResistanceKind == ResistanceKind.Unknown))
            yield return "The table does not say which resistance it holds: taken as DC.";
    }

    private static string? Lacking(CellRow[] cells, Func<CellRow, bool> has)
    {
        string[] lacking = [.. cells.Where(row => !has(row)).Select(row => row.Label)];
        return lacking.Length == 0 ? null : Some(lacking);
    }

    private static string Some(IEnumerable<string> labels)
    {
        string[] all = [.. labels];
        return all.Length <= 5 ? string.Join(", ", all) : $"{string.Join(", ", all.Take(5))} and {all.Length - 5} more";
    }
}
