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
            return [SheetPage.Of("Held and rejected cells", "", "<p>None.</p>\n")];
        return
        [
            .. SheetPage.Rows(
                "Held and rejected cells",
                $"<p>{input.Lot.Count(Verdict.Reject)} rejected, {input.Lot.Count(Verdict.Hold)} held{Energy(input, cells)}.</p>\n",
                ["cell", "tray", "verdict", "why"],
                [
                    .. cells.Select(cell => (IReadOnlyList<string>)
                    [
                        $"<b class=\"num\">{Html.Text(cell.Label)}</b>", Html.Text(cell.Tray ?? "-"), $"<b>{VerdictWords.Name(cell.Verdict)}</b>", Html.Text(Why(cell)),
                    ]),
                ],
                RowsOnAPage,
                "caution-29"),
            .. SheetPictures.Page(input, "The lot at a glance", [], "lot"),
        ];
    }

    // What the box could still hold, for whoever takes it: those of known capacity, as if full.
    private static string Energy(SheetInput input, ScreenedCell[] cells)
    {
        double ah = cells.Sum(cell => cell.CapacityAh ?? 0);
        return input.Job.Givens.Chemistry is { } chemistry && ah > 0
            ? $"; together up to {Figures.Digits(ah * (input.Job.Givens.NumberOf("nominalV") ?? chemistry.NominalV), 2)} Wh when full"
            : "";
    }

    // A capacity under its limit and unlike the lot is one figure with two grounds.
    private static string Why(ScreenedCell cell) => string.Join("; ", cell.Reasons
        .Where(reason => reason.Bears != Verdict.Use)
        .GroupBy(reason => (reason.What, reason.Value))
        .Select(same => VerdictWords.Says([.. same])).Distinct().Take(3));
}
