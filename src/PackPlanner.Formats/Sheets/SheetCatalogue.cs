namespace PackPlanner.Formats.Sheets;

/// <summary>The sheets that can be printed.</summary>
public static class SheetCatalogue
{
    /// <summary>All, in the order of the work.</summary>
    public static IReadOnlyList<Sheet> All { get; } =
    [
        Of("labels", "labels, 24 to a page", NeedsCells, LabelSheet.Pages),
        Of("pick", "which cells to take out of which tray", NeedsGroups, PickSheet.Pages, "caution-05", "caution-07", "caution-08", "caution-14"),
        Of("place", "placement from above, and mirrored from below", NeedsLayout, PlaceSheet.Pages, "caution-09", "caution-21", "caution-22", "caution-25", "caution-26", "caution-27", "caution-34"),
        Of("links", "series links in order, with a check before each", Needs("how far the cells of a group may be apart comes from theirs"), LinkSheet.Pages, "caution-07", "caution-08", "caution-09", "caution-21", "caution-22"),
        Of("taps", "sense taps with the volts to expect", Needs("the volts to expect come from theirs"), TapSheet.Pages, "caution-09", "caution-19", "caution-21"),
        Of("rejects", "cells held and rejected, with reasons", NeedsCells, RejectSheet.Pages, "caution-01", "caution-02", "caution-03", "caution-04", "caution-05", "caution-14"),
        Of("buy", "what to buy", NeedsPack, BuySheet.Pages, "caution-09", "caution-21", "caution-22", "caution-24", "caution-25", "caution-27"),
        Of("first-charge", "charger settings and the first charge", Needs("the amperes come from their Ah"), FirstChargeSheet.Pages, "caution-03", "caution-09", "caution-10", "caution-11", "caution-12", "caution-19", "caution-23"),
        Of("base-line", "what the pack was like new, to compare next year", NeedsGroups, BaseLineSheet.Pages),
        Of("repair", "what a log found, and the reading that settles it", NeedsDiagnosis, RepairSheet.Pages, "caution-03", "caution-09", "caution-11", "caution-12", "caution-13", "caution-14", "caution-15", "caution-21", "caution-22", "caution-23"),
    ];

    // After its own pages, those cautions of the job that concern whoever works by the sheet.
    private static Sheet Of(string name, string title, Func<SheetInput, string?> whyNot, Func<SheetInput, IReadOnlyList<SheetPage>> pages, params string[] cautions) =>
        new(name, title, whyNot, input =>
        {
            IReadOnlyList<SheetPage> own = Noted(input, pages(input));
            return [.. own, .. SheetCautions.Further(input, own, cautions)];
        });

    // Whoever works by the paper alone must see there what of the job it does not follow.
    private static IReadOnlyList<SheetPage> Noted(SheetInput input, IReadOnlyList<SheetPage> pages) => input.Notes.Count == 0 || pages.Count == 0
        ? pages
        : [pages[0] with { Intro = pages[0].Intro + string.Concat(input.Notes.Select(note => $"<p><b>{Html.Text(note)}</b></p>\n")) }, .. pages.Skip(1)];

    private static string? NeedsCells(SheetInput input) => input.Lot is null ? "the job has no cells" : null;

    private static string? NeedsGroups(SheetInput input) => input.Groups.Count == 0 ? input.WhyNoGroups : null;

    // A space that holds a pack says how many cells and links, not what the cells are like.
    private static string? NeedsPack(SheetInput input) => input is { Lot: null, Layout: not null } ? null : NeedsGroups(input);

    // What the sheet takes from measured cells is said where there are none.
    private static Func<SheetInput, string?> Needs(string ofCells) => input =>
        NeedsGroups(input) is { } why ? input is { Lot: null, Layout: not null } ? $"{why}: {ofCells}" : why : null;

    private static string? NeedsDiagnosis(SheetInput input) => input.Diagnosis is not null ? null
        : input.Job.Logs.IsEmpty ? "the job has no log"
        : input.Job.Givens is { Chemistry: null } or { RatedAh: null } ? "the chemistry and the rated Ah are not both known"
        : "the log is not judged; 7 Log or diagnose says why";

    private static string? NeedsLayout(SheetInput input) => input.Layout is null ? input.WhyNoPlaces ?? "the job has no cavity" : null;
}
