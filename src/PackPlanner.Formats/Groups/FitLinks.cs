using PackPlanner.Core.Cells;
using PackPlanner.Core.Sharing;
using PackPlanner.Formats.Json;

namespace PackPlanner.Formats.Groups;

/// <summary>The links of an answer of <c>fit</c>: how many cells side by side join two groups, and how the cells of a group stand.</summary>
public sealed class FitLinks
{
    private readonly string file;
    private readonly int[] pairs;
    private readonly Dictionary<int, List<(string Label, double[] At)>> groups;

    private FitLinks(string file, int[] pairs, Dictionary<int, List<(string Label, double[] At)>> groups) =>
        (this.file, this.pairs, this.groups) = (file, pairs, groups);

    /// <summary>Reads an answer.</summary>
    /// <param name="path">The JSON of <c>fit --json</c>.</param>
    /// <returns>Its links; refused when it has none.</returns>
    public static Outcome<FitLinks> Read(string path)
    {
        if (!JsonInput.Open(path).Is(out JsonInput? answer, out Refusal? why))
            return why;
        double[]? pairs = answer.Part("links")?.Numbers("pairs");
        Dictionary<int, List<(string, double[])>> groups = [];
        foreach (JsonInput cell in answer.Parts("cells"))
        {
            if (cell.Raw("group") is not { ValueKind: System.Text.Json.JsonValueKind.Number } || cell.Whole("group", 1) is not { } group)
                continue;
            double[] at = [cell.Number("x") ?? 0, cell.Number("y") ?? 0, cell.Number("z") ?? 0];
            if (!groups.TryGetValue(group, out List<(string, double[])>? members))
                groups[group] = members = [];
            members.Add((cell.Text("label") ?? "", at));
        }

        if (answer.Wrong is { } wrong)
            return wrong;
        return pairs is null || groups.Count == 0 || pairs.Length != groups.Count - 1
            ? Refusal.Input("no-links", path, "it holds no linked groups", "Give the answer of fit --json for a case with pack.series.")
            : new FitLinks(path, [.. pairs.Select(p => (int)p)], groups);
    }

    /// <summary>Rows of a table without groups, in the groups in which their cells are placed; a table with groups stays as it is.</summary>
    /// <param name="rows">Rows of the table.</param>
    /// <returns>The rows; those without a place keep no group.</returns>
    public IReadOnlyList<CellRow> Grouped(IReadOnlyList<CellRow> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        if (rows.Any(row => row.Group is not null))
            return rows;
        Dictionary<string, int> placed = new(StringComparer.Ordinal);
        foreach ((int group, List<(string Label, double[] At)> members) in groups)
        {
            foreach ((string label, _) in members.Where(place => place.Label.Length > 0))
                placed.TryAdd(label, group);
        }

        return [.. rows.Select(row => placed.TryGetValue(row.Label, out int group) ? row with { Group = group } : row)];
    }

    /// <summary>
    /// What one strip is to be multiplied by for the mean link between two groups: strips side by side share the current, so a link of n pairs
    /// has an n-th of one strip; a link by cable counts as one strip.
    /// </summary>
    /// <param name="series">Groups of the pack.</param>
    /// <returns>The factor, 1 for a single group; refused when the answer is of another pack.</returns>
    /// <remarks>Source: [Kirchhoff]. The mean is exact for drop and heat, since all links carry the same current.</remarks>
    public Outcome<LinkFactor> Mean(int series) => series != groups.Count
        ? Refusal.Input("places-of-another-pack", file, $"it places {groups.Count} groups, the pack has {series}", "Give the answer of fit for this pack.")
        : new LinkFactor(pairs.Length == 0 ? 1 : pairs.Average(p => 1.0 / Math.Max(1, p)));

    /// <summary>The cells of each group in the order in which they stand, and the pieces of bar between them as long as they are.</summary>
    /// <param name="shared">Groups whose bars were taken as evenly divided, by the pieces of which the lengths here are multiples.</param>
    /// <param name="positiveAt">Cell along the bar, from 1, at the positive take-off.</param>
    /// <param name="negativeAt">The same for the negative one; null: the last.</param>
    /// <returns>The groups as placed; refused when a cell has no place.</returns>
    public Outcome<ShareCase> Arranged(ShareCase shared, int positiveAt, int? negativeAt)
    {
        ArgumentNullException.ThrowIfNull(shared);
        double nearest = groups.Values.SelectMany(g => Chain(g).Zip(Chain(g).Skip(1), (a, b) => Distance(a.At, b.At))).DefaultIfEmpty(1).Min();
        List<ParallelCells> arranged = [];
        foreach (ParallelCells group in shared.Groups)
        {
            List<(string Label, double[] At)> chain = Chain(groups.GetValueOrDefault(group.Number) ?? []);
            string? stranger = group.Cells.Select(c => c.Label).FirstOrDefault(label => !chain.Any(place => place.Label == label));
            if (stranger is not null || chain.Count != group.Cells.Count)
                return Refusal.Input("cell-without-place", file, $"group {group.Number}: {(stranger is null ? "more places than cells" : $"{stranger} has no place")}",
                    "Let fit place these groups: fit CASE.json --groups GROUPS.json --json.");
            double link = group.PositiveLinkMilliohm.Count > 0 ? group.PositiveLinkMilliohm[0] : 0;
            double[] links = [.. chain.Zip(chain.Skip(1), (a, b) => link * Distance(a.At, b.At) / nearest)];
            arranged.Add(new ParallelCells(
                group.Number, [.. chain.Select(place => group.Cells.First(cell => cell.Label == place.Label))], links, links, positiveAt, negativeAt ?? chain.Count));
        }

        return shared with
        {
            Groups = arranged,
            Understood = [.. shared.Understood, "The cells of a group are taken in the order in which they stand along it; each piece of bar is as long as its cells are apart, --link being the shortest."],
        };
    }

    /// <summary>From the cell furthest from the middle, each time to the nearest one left.</summary>
    private static List<(string Label, double[] At)> Chain(List<(string Label, double[] At)> cells)
    {
        if (cells.Count == 0)
            return [];
        double[] middle = [.. Enumerable.Range(0, 3).Select(a => cells.Average(c => c.At[a]))];
        List<(string Label, double[] At)> left = [.. cells], chain = [cells.MaxBy(c => Distance(c.At, middle))];
        while (left.Remove(chain[^1]) && left.Count > 0)
            chain.Add(left.MinBy(c => Distance(c.At, chain[^1].At)));
        return chain;
    }

    private static double Distance(double[] a, double[] b) =>
        Math.Sqrt(((a[0] - b[0]) * (a[0] - b[0])) + ((a[1] - b[1]) * (a[1] - b[1])) + ((a[2] - b[2]) * (a[2] - b[2])));
}

/// <summary>Mean link over one strip.</summary>
/// <param name="Value">Above 0, at most 1.</param>
public sealed record LinkFactor(double Value);
