using PackPlanner.Core.Sharing;
using PackPlanner.Formats.Json;

namespace PackPlanner.Formats.Words;

/// <summary>The answer of <c>share</c> as JSON, as lines and as a table.</summary>
public static class ShareWords
{
    /// <summary>Fills the answer.</summary>
    /// <param name="groups">The networks, in order.</param>
    /// <param name="first">Their shares at the first instant.</param>
    /// <param name="run">The discharge; null where it could not be followed.</param>
    /// <param name="loadA">Amperes, discharge positive.</param>
    /// <returns>The answer without cautions.</returns>
    public static ShareAnswer Answer(
        IReadOnlyList<ParallelCells> groups, IReadOnlyList<GroupShare> first, SharedDischargeRun? run, double loadA) => new(
            [.. groups.Select((group, g) => Group(group, first[g], loadA))],
            run is null ? null : [.. run.Through.Select(moment => new ShareMomentJson(moment.AtAh, [.. groups.Select((group, g) => Group(group, moment.Groups[g], loadA))]))],
            run?.EndedByGroup,
            run is null ? null : [.. groups.Select((group, g) => Swing(group, g, run))],
            loadA);

    /// <summary>Lines for people.</summary>
    /// <param name="answer">The answer.</param>
    /// <returns>The lines.</returns>
    public static IReadOnlyList<string> Lines(ShareAnswer answer)
    {
        List<string> lines = [];
        foreach (ShareGroupJson group in answer.Groups)
        {
            string worst = group.Worst.TimesEqual is { } times
                ? $"{group.Worst.Cell} {Carries(times, answer.LoadA)} {Figures.Fixed(Math.Abs(times), 2)} times an equal share"
                : $"{group.Worst.Cell} carries most";
            lines.Add($"Group {group.Group} at {Figures.Digits(answer.LoadA, 4)} A: {Figures.Fixed(group.TerminalV, 4)} V, {worst}; {Figures.Digits(group.CirculatingA, 3)} A circulate without a load.");
            lines.Add("  cell               A   share %");
            lines.AddRange(group.Cells.Select(cell => $"  {cell.Cell,-12} {Figures.Digits(cell.CurrentA, 4),8} {Figures.Fixed(cell.SharePercent, 1),8}{(cell.Cell == group.Worst.Cell ? "  most" : "")}"));
        }

        foreach (ShareSwingJson swing in answer.Swings ?? [])
        {
            string crossings = swing.Crossings.Count == 0 ? "nobody else takes the lead"
                : string.Join(", ", swing.Crossings.Take(6).Select(crossing => $"{crossing.Cell} leads from {Figures.Digits(crossing.AtAh, 3)} Ah"));
            lines.Add($"Group {swing.Group} on the way down: {Most(swing, answer.LoadA)} at {Figures.Digits(swing.AtAh, 3)} Ah; {crossings}.");
        }

        if (answer.Through is { } through)
            lines.Add($"Group {answer.EndedByGroup} meets its cut-off after {Figures.Digits(through[^1].AtAh, 4)} Ah.");
        return lines;
    }

    /// <summary>One row for each cell at the first instant.</summary>
    /// <param name="answer">The answer.</param>
    /// <returns>The table.</returns>
    public static MainTable Table(ShareAnswer answer) => new(
        ["group", "cell", "currentA", "sharePercent", "terminalV"],
        [.. answer.Groups.SelectMany(group => group.Cells.Select(cell => (IReadOnlyList<object?>)[group.Group, cell.Cell, cell.CurrentA, cell.SharePercent, group.TerminalV]))]);

    private static string Most(ShareSwingJson swing, double loadA) => swing.TimesEqual is < 0 and var times
        ? $"{swing.Cell} {Carries(times, loadA)} up to {Figures.Fixed(-times, 2)} times an equal share"
        : $"up to {Figures.Fixed(swing.TimesEqual, 2)} times for {swing.Cell}";

    // Against the load: a full cell that charges an empty one drives it the other way.
    private static string Carries(double? timesEqual, double loadA) => timesEqual is not < 0 ? "carries" : loadA > 0 ? "is charged with" : "is discharged with";

    private static ShareGroupJson Group(ParallelCells group, GroupShare share, double loadA) => new(
        group.Number,
        share.TerminalV,
        [.. group.Cells.Select((cell, i) => new ShareCellJson(cell.Label, share.CurrentA[i], loadA == 0 ? null : share.CurrentA[i] / loadA * 100))],
        new ShareWorstJson(group.Cells[share.WorstCell].Label, share.TimesEqual),
        share.CirculatingA);

    private static ShareSwingJson Swing(ParallelCells group, int index, SharedDischargeRun run)
    {
        SharedMoment largest = run.Through.MaxBy(moment => Math.Abs(moment.Groups[index].TimesEqual ?? 0))!;
        List<ShareCrossingJson> crossings = [];
        for (int m = 1; m < run.Through.Count; m++)
        {
            int now = run.Through[m].Groups[index].WorstCell;
            if (now != run.Through[m - 1].Groups[index].WorstCell)
                crossings.Add(new ShareCrossingJson(run.Through[m].AtAh, group.Cells[now].Label));
        }

        GroupShare share = largest.Groups[index];
        return new ShareSwingJson(group.Number, group.Cells[share.WorstCell].Label, share.TimesEqual, largest.AtAh, crossings);
    }
}
