namespace PackPlanner.Formats.Sheets;

/// <summary>The sheets that can be printed.</summary>
public static class SheetCatalogue
{
    /// <summary>All, in the order of the work.</summary>
    public static IReadOnlyList<Sheet> All { get; } =
    [
        new("labels", "labels, 24 to a page", NeedsCells, LabelSheet.Pages),
        new("pick", "which cells to take out of which tray", NeedsGroups, PickSheet.Pages),
        new("place", "placement from above, and mirrored from below", NeedsLayout, PlaceSheet.Pages),
        new("links", "series links in order, with a check before each", NeedsGroups, LinkSheet.Pages),
        new("taps", "sense taps with the volts to expect", NeedsGroups, TapSheet.Pages),
        new("rejects", "cells held and rejected, with reasons", NeedsCells, RejectSheet.Pages),
        new("buy", "what to buy", NeedsGroups, BuySheet.Pages),
        new("first-charge", "charger settings and the first charge", NeedsGroups, FirstChargeSheet.Pages),
        new("base-line", "what the pack was like new, to compare next year", NeedsGroups, BaseLineSheet.Pages),
        new("repair", "what a log found, and the reading that settles it", NeedsDiagnosis, RepairSheet.Pages),
    ];

    private static string? NeedsCells(SheetInput input) => input.Lot is null ? "the job has no cells" : null;

    private static string? NeedsGroups(SheetInput input) => input.Groups.Count == 0 ? input.WhyNoGroups : null;

    private static string? NeedsDiagnosis(SheetInput input) => input.Diagnosis is not null ? null
        : input.Job.Logs.IsEmpty ? "the job has no log"
        : "the chemistry and the rated Ah are not both known";

    private static string? NeedsLayout(SheetInput input) => input.Layout is null
        ? input.Case is null ? "the job has no cavity" : "the pack does not fit its cavity"
        : null;
}
