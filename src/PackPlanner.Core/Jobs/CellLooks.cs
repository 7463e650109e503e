using PackPlanner.Core.Cells;
using PackPlanner.Core.Screening;

namespace PackPlanner.Core.Jobs;

/// <summary>What was seen of a cell, over all its rows, as ticks of the kinds of damage that are known.</summary>
public static class CellLooks
{
    /// <summary>The kinds that a job notes of a cell.</summary>
    /// <param name="job">The job.</param>
    /// <param name="label">The cell.</param>
    /// <returns>Kinds of <see cref="ConditionWords.Kinds"/>, in alphabetical order.</returns>
    public static IReadOnlyList<string> Noted(Job job, string label) => [.. Kinds(RowsOf(job, label))];

    /// <summary>Ticks a kind, or takes the tick away.</summary>
    /// <param name="job">The job as it stands.</param>
    /// <param name="label">The cell.</param>
    /// <param name="kind">The kind; null for none of them.</param>
    /// <param name="by">Who says so.</param>
    /// <returns>The change; where nothing has to be changed, one that changes nothing.</returns>
    // A kind that is added stands behind the words that were there; one taken away leaves the other kinds, in whichever row they stood.
    public static JobChange Tick(Job job, string label, string? kind, Origin by)
    {
        CellRow[] rows = [.. RowsOf(job, label)];
        List<(int Test, string Words)> written = [];
        if (kind is not null && !Kinds(rows).Contains(kind) && rows.Length > 0)
            written.Add((1, Blank(rows[0].Condition) ? kind : $"{rows[0].Condition}; {kind}"));
        else
            for (int i = 0; i < rows.Length; i++)
                if (i == 0 || Kinds([rows[i]]) is { Count: > 0 } named && (kind is null || named.Contains(kind)))
                    written.Add((i + 1, kind is null ? "none" : Without(rows[i], kind)));
        return new JobChange($"looks of {label}", now => now with
        {
            Edits = now.Edits.SetItems(written.Select(one => KeyValuePair.Create(
                new CellKey(label, one.Test, CellField.Condition), new CellEdit(new JobValue.Word(one.Words), by)))),
        });
    }

    private static string Without(CellRow row, string kind)
    {
        string[] left = [.. Kinds([row]).Where(known => known != kind)];
        return left.Length > 0 ? string.Join("; ", left) : Blank(row.Condition) || Kinds([row]).Count > 0 ? "none" : row.Condition!;
    }

    private static bool Blank(string? words) => string.IsNullOrWhiteSpace(words) || words == "-" || words.Equals("none", StringComparison.OrdinalIgnoreCase);

    private static IEnumerable<CellRow> RowsOf(Job job, string label) => job.Rows.Where(row => row.Label == label);

    private static SortedSet<string> Kinds(IEnumerable<CellRow> rows) =>
        new(rows.SelectMany(row => ConditionWords.Read(row.Condition).Damage), StringComparer.Ordinal);
}
