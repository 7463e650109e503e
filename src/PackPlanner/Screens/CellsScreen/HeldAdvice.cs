using PackPlanner.Core.Screening;

namespace PackPlanner.Screens.CellsScreen;

/// <summary>What helps the cells that are held: another test where a test can settle it, and no test where it cannot.</summary>
internal static class HeldAdvice
{
    // The first that holds a cell decides what is said of it, so what no reading mends stands first.
    private static readonly (string[] Codes, Func<string, string, string> Says)[] ByReason =
    [
        ([ReasonCodes.ByHand], (_, _) => ""),
        ([ReasonCodes.DeepDischarge, ReasonCodes.BelowCutOff, ReasonCodes.NegativeVoltage, ReasonCodes.AboveChargeLimit], (who, _) => $"Charge none of {who}: ! says why; "),
        ([ReasonCodes.LosesCharge], (who, they) => $"Leave out {who}: {they} charge; "),
        ([ReasonCodes.OtherChemistry], (who, _) => $"Take out {who}: not this chemistry; "),
        ([ReasonCodes.RequiredReadingMissing], (who, _) => $"Take the readings missing of {who}; or "),
        ([ReasonCodes.NoCapacity, ReasonCodes.AbortedTest], (who, _) => $"Test {who} to the cut-off; or "),
        ([ReasonCodes.TestedOtherwise], (who, _) => $"Test {who} as the others were; or "),
        ([ReasonCodes.ResistanceNearLimit], (who, _) => $"Clean the ends of {who}, measure anew; or "),
        ([ReasonCodes.CapacityNearLimit, ReasonCodes.RepeatsDisagree], (who, _) => $"Repeat {who} in another slot; or "),
        ([ReasonCodes.UnlikeItsLot], (who, _) => $"Measure {who} once more; or "),
    ];

    // What a test can settle comes before what is only left out, and the quickest way to more cells before the others.
    private static readonly string[] FirstSaid = [ReasonCodes.CapacityNearLimit, ReasonCodes.NoCapacity, ReasonCodes.ResistanceNearLimit, ReasonCodes.UnlikeItsLot, ReasonCodes.RequiredReadingMissing, ReasonCodes.TestedOtherwise];

    /// <summary>One piece of advice, before what else can be done; empty when no cell is held for a reason that wants any.</summary>
    internal static string Of(ScreenedLot lot)
    {
        ScreenedCell[] held = [.. lot.Cells.Where(cell => cell.Verdict == Verdict.Hold)];
        if (held.Length == 0)
            return "";
        int[] counts = [.. ByReason.Select(row => held.Count(cell => RowOf(cell) == Array.IndexOf(ByReason, row)))];
        int first = FirstSaid.Select(code => Array.FindIndex(ByReason, row => row.Codes.Contains(code))).Concat(Enumerable.Range(0, ByReason.Length))
            .FirstOrDefault(row => counts[row] > 0, -1);
        if (first < 0)
            return "";
        string who = counts[first] == held.Length ? $"the {held.Length} held" : $"{counts[first]} of the {held.Length} held";
        return ByReason[first].Says(who, counts[first] == 1 ? "it loses" : "they lose");
    }

    private static int RowOf(ScreenedCell cell) =>
        Array.FindIndex(ByReason, row => cell.Reasons.Any(reason => row.Codes.Contains(reason.Code) && (reason.Bears == Verdict.Hold || reason.Code == ReasonCodes.ByHand)));
}
