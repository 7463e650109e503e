using PackPlanner.Core.Cells;
using PackPlanner.Formats.Files;
using PackPlanner.Formats.Json;
using PackPlanner.Formats.Tables;

namespace PackPlanner.Formats.Groups;

/// <summary>Reads which cell is in which group: a table with the columns cell and group, or a matched answer as JSON.</summary>
public static class GroupingFile
{
    /// <summary>Reads the file.</summary>
    /// <param name="file">Path.</param>
    /// <param name="options">How tables are read.</param>
    /// <returns>Label and group from 1, in the file's order, each label once, and what was assumed; or why it cannot be read.</returns>
    public static Outcome<GroupingRead> Read(string file, ReadOptions options)
    {
        if (!InputBytes.Read(file, options.StandardInput).Is(out byte[]? bytes, out Refusal? why))
            return why;
        bool json = bytes.AsSpan().TrimStart(" \t\r\n\uFEFF"u8) is [(byte)'{', ..];
        Outcome<GroupingRead> read = json ? FromJson(file, bytes) : FromTable(file, options);
        if (!read.Is(out GroupingRead? found, out why))
            return why;
        foreach (IGrouping<string, (string Cell, int Group)> same in found.Pairs.GroupBy(pair => pair.Cell))
        {
            int[] groups = [.. same.Select(pair => pair.Group).Distinct()];
            if (groups.Length > 1)
                return Refusal.Input("cell-in-two-groups", $"{file}, cell {same.Key}",
                    $"it stands in groups {string.Join(" and ", groups)}", "Keep one row of this cell.");
        }

        return found with { Pairs = [.. found.Pairs.Distinct()] };
    }

    private static Outcome<GroupingRead> FromJson(string file, byte[] bytes)
    {
        if (!JsonInput.Open(file == "-" ? "-" : file, () => new MemoryStream(bytes)).Is(out JsonInput? document, out Refusal? why))
            return why;
        List<(string Cell, int Group)> pairs = [];
        IReadOnlyList<JsonInput> groups = document.Parts("groups");
        for (int g = 0; g < groups.Count; g++)
        {
            int number = groups[g].Whole("group", 1) ?? g + 1;
            pairs.AddRange((groups[g].Texts("cells") ?? []).Select(cell => (cell, number)));
        }

        if (document.Wrong is { } wrong)
            return wrong;
        return pairs.Count > 0 ? new GroupingRead(pairs, []) : Nothing(file);
    }

    private static Outcome<GroupingRead> FromTable(string file, ReadOptions options)
    {
        if (!CellTables.Read([file], options with { NamesGroups = true }).Is(out CellTableReading? reading, out Refusal? why))
            return why.Code == "not-understood" ? why with { Problem = why.Problem with { Remedy = Wanted } } : why;
        List<(string, int)> pairs = [];
        foreach (CellRow row in reading.Rows)
            if (row.Group is { } group)
                pairs.Add((row.Label, group));
        return pairs.Count > 0 ? new GroupingRead(pairs, reading.Understood) : Nothing(file);
    }

    private const string Wanted = "Give a table with the columns cell and group, or the JSON answer of match.";

    private static Refusal Nothing(string file) =>
        Refusal.Input("no-groups", file, "no row names a cell and its group", Wanted);
}
