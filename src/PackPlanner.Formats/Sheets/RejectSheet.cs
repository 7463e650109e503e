using PackPlanner.Core.Screening;
using PackPlanner.Formats.Words;

namespace PackPlanner.Formats.Sheets;

/// <summary>Cells that are not used, with the reason for each, for the box that they go into.</summary>
internal static class RejectSheet
{
    private const int RowsOnAPage = 15;

    internal static IReadOnlyList<SheetPage> Pages(SheetInput input)
    {
        ScreenedCell[] cells =
        [
            .. input.Lot!.Cells.Where(cell => cell.Verdict != Verdict.Use)
                .OrderByDescending(cell => cell.Verdict).ThenByDescending(cell => cell.HeldForSafety).ThenBy(cell => cell.Label, StringComparer.Ordinal),
        ];
        if (cells.Length == 0)
            return [new SheetPage("Held and rejected cells", "<p>None.</p>\n", [])];
        string sum = $"<p>{input.Lot.Count(Verdict.Reject)} rejected, {input.Lot.Count(Verdict.Hold)} held.</p>\n";
        return
        [
            .. cells.Chunk(RowsOnAPage).Select(some => new SheetPage(
                "Held and rejected cells",
                sum + Html.Table(
                    ["cell", "tray", "verdict", "why"],
                    some.Select(cell => (IReadOnlyList<string>)
                    [
                        $"<b class=\"num\">{Html.Text(cell.Label)}</b>", Html.Text(cell.Tray ?? "-"), $"<b>{VerdictWords.Name(cell.Verdict)}</b>", Html.Text(Why(cell)),
                    ])),
                ["caution-29"])),
            .. SheetPictures.Page(input, "The lot at a glance", [], "lot"),
        ];
    }

    private static string Why(ScreenedCell cell) => string.Join("; ", cell.Reasons
        .Where(reason => reason.Bears != Verdict.Use).Select(VerdictWords.Says).Distinct().Take(3));
}
