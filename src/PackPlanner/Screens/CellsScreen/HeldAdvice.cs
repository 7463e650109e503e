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

    private static readonly Dictionary<string, int> RowOfCode = ByReason.SelectMany((row, i) => row.Codes.Select(code => (code, i))).ToDictionary(pair => pair.code, pair => pair.i);

    private static readonly int[] Order = [.. FirstSaid.Select(code => RowOfCode[code]), .. Enumerable.Range(0, ByReason.Length)];

    /// <summary>One piece of advice, before what else can be done; empty when no cell is held for a reason that wants any.</summary>
    internal static string Of(ScreenedLot lot)
    {
        // Asked at each drawing, of ten thousand cells too.
        int held = 0;
        int[] counts = new int[ByReason.Length];
        foreach (ScreenedCell cell in lot.Cells)
        {
            if (cell.Verdict != Verdict.Hold)
                continue;
            held++;
            if (RowOf(cell) is var row && row < counts.Length)
                counts[row]++;
        }

        int first = Array.Find(Order, row => counts[row] > 0);
        if (counts[first] == 0)
            return "";
        string who = counts[first] == held ? $"the {held} held" : $"{counts[first]} of the {held} held";
        return ByReason[first].Says(who, counts[first] == 1 ? "it loses" : "they lose");
    }

    private static int RowOf(ScreenedCell cell)
    {
        int least = ByReason.Length;
        foreach (VerdictReason reason in cell.Reasons)
        {
            if ((reason.Bears == Verdict.Hold || reason.Code == ReasonCodes.ByHand) && RowOfCode.TryGetValue(reason.Code, out int row))
                least = Math.Min(least, row);
        }

        return least;
    }
}
