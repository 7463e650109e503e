using System.Globalization;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Screening;
using PackPlanner.Formats.Json;

namespace PackPlanner.Formats.Words;

/// <summary>A judged lot for people.</summary>
public static class CellsWords
{
    /// <summary>The answer in one sentence, the table, and what is still to do; what it rests on stands in <c>understood</c>.</summary>
    /// <param name="lot">The lot.</param>
    /// <param name="answer">The same as scripts read it.</param>
    /// <returns>Lines.</returns>
    public static IReadOnlyList<string> Lines(ScreenedLot lot, CellsAnswer answer)
    {
        int width = Math.Clamp(lot.Cells.Max(cell => cell.Label.Length), 5, 32);
        List<string> lines =
        [
            Sum(answer),
            "",
            $"  {"label".PadRight(width)}  verdict      Ah  ± Ah   of rated     mΩ  resting V  why",
        ];
        foreach (ScreenedCell cell in lot.Cells)
            lines.Add($"  {cell.Label.PadRight(width)}  {VerdictWords.Name(cell.Verdict),-7}"
                + $" {Text(cell.CapacityAh, "0.000"),7} {Text(NormalRange.NinetyPercent * cell.CapacitySpreadAh, "0.00"),5}"
                + $" {(cell.HealthFraction is { } health ? Text(100 * health, "0.0") + " %" : "-"),10}"
                + $" {Text(cell.ResistanceMilliohm, "0.0#"),6} {Text(cell.RestV, "0.000"),10}"
                + $"  {string.Join("; ", [.. cell.Reasons.Select(VerdictWords.Says), .. Unread(cell)])}");
        if (answer.StillToTest is { } still)
            lines.Add(Still(still));
        foreach (SetApartJson apart in answer.SetApart.Where(apart => apart.Cells > 0))
            lines.Add($"  {apart.Verdict,-7} {apart.Cells} cell{(apart.Cells == 1 ? "" : "s")}, {Text(apart.CapacityAh, "0.0")} Ah{(apart.EnergyWh is { } wh ? $", about {Text(wh, "0")} Wh" : "")}, to be kept apart");
        return lines;
    }

    // A word that stood in the place of a figure says more than that the figure is missing.
    private static IEnumerable<string> Unread(ScreenedCell cell) => !cell.Reasons.Any(reason => reason.Code == ReasonCodes.NotChecked) ? []
        : cell.Rows.Select(row => row.Remark).OfType<string>().Where(remark => !cell.Reasons.Any(reason => reason.Noted == remark)).Distinct(StringComparer.Ordinal)
            .Select(remark => $"the table says \"{OneLine.Of(remark)}\"");

    /// <summary>What the verdicts rest on, a sentence each.</summary>
    /// <param name="lot">The lot.</param>
    /// <returns>Sentences.</returns>
    public static IReadOnlyList<string> Basis(ScreenedLot lot)
    {
        List<string> lines = [.. lot.Models.Select(model => RatedDoubt.Of(model.RatedAh, model.MedianCapacityAh, "the middle capacity of the lot is")).OfType<string>()];
        foreach (ModelLot model in lot.Models)
            lines.Add((lot.Models.Count > 1 ? $"{model.Model ?? Text(model.RatedAh, "0.###") + " Ah cells"}: " : "") + Limit(model));
        lines.Add(lot.HighestMilliohm is { } most
            ? $"Resistance limit {Text(most, "0.##")} mΩ, yours."
            : "Resistance limit: 1.5 times the median of like readings of the same model (common practice; --max-milliohm sets yours).");
        lines.Add(Spread(lot.Repeatability));
        foreach (SlotOffset slot in lot.Slots.Where(slot => slot.Fraction is not null))
            lines.Add($"Slot {slot.Slot} reads {Text(100 * slot.Fraction, "+0.0#;-0.0#;0.0")} % against the median slot, ± {Text(164.5 * slot.SpreadFraction, "0.0#")} % (90 %); capacities stand as read unless --correct-slots.");
        return lines;
    }

    /// <summary>Where the figures of one cell come from: inputs, spread, limit, rule and verdict.</summary>
    /// <param name="lot">The lot.</param>
    /// <param name="cell">One of its cells.</param>
    /// <returns>Lines.</returns>
    public static IReadOnlyList<string> Why(ScreenedLot lot, ScreenedCell cell)
    {
        List<string> lines = [$"where the verdict on {cell.Label} comes from"];
        foreach (CellRow row in cell.Rows)
            lines.Add($"  read     {(row.File is { } file ? $"{file} line {row.Line}" : "typed by hand")}: {ReadingsOf(row)}");
        if (cell.SelfDischarge is { } loss)
            lines.Add($"  at rest  {LeakWords.Of(loss)}");
        if (cell.CapacityAh is { } ah)
            lines.Add($"  spread   {Text(cell.CapacitySpreadAh, "0.000")} Ah: {Text(100 * lot.Repeatability.Fraction, "0.0#")} %{(cell.CapacityTests > 1 ? $" over the root of {cell.CapacityTests} tests" : "")} of {Text(ah, "0.000")} Ah, one standard deviation; {VerdictWords.Name(lot.Repeatability.From)}");
        ModelLot model = lot.Models.FirstOrDefault(found => string.Equals(found.Model, cell.Model, StringComparison.OrdinalIgnoreCase) && found.RatedAh == cell.RatedAh) ?? lot.Models[0];
        lines.Add($"  limit    {Limit(model)}");
        lines.Add("  rule     under a limit by no more than twice the spread: hold; by more: reject; docs/methods/screening.md");
        foreach (VerdictReason reason in cell.Reasons)
            lines.Add($"  reason   {VerdictWords.Says(reason)} ({reason.Code}, {VerdictWords.Name(reason.LimitFrom) ?? "no limit"})");
        lines.Add($"  so       {VerdictWords.Name(cell.Verdict)}");
        return lines;
    }

    private static string ReadingsOf(CellRow row) =>
        $"{Text(row.CapacityAh, "0.####")} Ah, {Text(row.ResistanceMilliohm, "0.###")} mΩ, {Text(row.RestV, "0.####")} V{Day(row.Date)}"
        + (row.LaterRestV is { } later ? $", later {Text(later, "0.####")} V{Day(row.LaterDate)}" : "")
        + (row.Slot is { } slot ? $", slot {slot}" : "")
        + (row.Remark is { } remark ? $", \"{OneLine.Of(remark)}\"" : "");

    private static string Day(DateTime? date) => date is { } day ? day.ToString(" (yyyy-MM-dd)", CultureInfo.InvariantCulture) : "";

    /// <summary>One row a cell.</summary>
    /// <param name="lot">The lot.</param>
    /// <returns>The table.</returns>
    public static MainTable Table(ScreenedLot lot) => new(
        ["cell", "verdict", "capacityAh", "capacitySpreadAh", "healthPercent", "resistanceMilliohm", "resistanceKind", "restV", "selfDischargeMillivoltPerDay", "selfDischargePercentPerMonth", "slot", "model", "chemistry", "tray", "reasons"],
        [.. lot.Cells.Select(cell => new object?[]
        {
            cell.Label, VerdictWords.Name(cell.Verdict), cell.CapacityAh, cell.CapacitySpreadAh, 100 * cell.HealthFraction,
            cell.ResistanceMilliohm, VerdictWords.Name(cell.ResistanceKind), cell.RestV, cell.SelfDischarge?.MillivoltPerDay,
            cell.SelfDischarge?.PercentPerMonth, cell.Slot, cell.Model, cell.Chemistry, cell.Tray,
            string.Join("; ", cell.Reasons.Select(VerdictWords.Says)),
        })]);

    private static string Sum(CellsAnswer answer)
    {
        VerdictCountsJson counts = answer.Counts;
        string need = answer.StillToTest is { } still ? $" You need {still.Places}." : "";
        return $"{counts.Use} use, {counts.Hold} hold, {counts.Reject} reject of {answer.Cells.Count}.{need}";
    }

    private static string Limit(ModelLot model) => model.LeastAh is not { } least
        ? "no capacity limit: no rated capacity, and too few cells for a median"
        : model.LeastFrom == LimitOrigin.LotMedian
            ? $"capacity limit {Text(least, "0.000")} Ah: {Percent(model)} of the lot's median {Text(model.MedianCapacityAh, "0.000")} Ah"
                + (model.RatedLimitSetAside ? $" (half of the lot is under 80 % of its rated {Text(model.RatedAh, "0.###")} Ah, so the rated figure tells nothing apart; --min-percent sets yours)" : " (no rated capacity is known; --rated-ah gives one)")
            : $"capacity limit {Text(least, "0.000")} Ah: {Percent(model)} of the rated {Text(model.RatedAh, "0.###")} Ah{(model.LeastFrom == LimitOrigin.DataSheet ? " (80 % is our choice; --min-percent sets yours)" : ", as you asked")}";

    private static string Spread(Repeatability repeatability) => repeatability.From switch
    {
        RepeatabilityOrigin.Given => $"One capacity test repeats to {Text(100 * repeatability.Fraction, "0.0#")} % (one standard deviation), as you state.",
        RepeatabilityOrigin.Repeats => $"One capacity test repeats to {Text(100 * repeatability.Fraction, "0.00")} % (one standard deviation), pooled from this lot's repeats ({repeatability.DegreesOfFreedom} degrees of freedom).",
        _ => $"One capacity test is taken to repeat to 1.5 % (one standard deviation): an assumption; --repeatability states yours."
            + (repeatability.PooledFraction is { } pooled ? $" The few repeats here give {Text(100 * pooled, "0.00")} %, too few to go by ({repeatability.DegreesOfFreedom} degrees of freedom, {Repeatability.FewestDegreesOfFreedom} are needed)." : ""),
    };

    private static string Still(StillToTestJson still) => still.Missing == 0
        ? $"No place of {still.Places} is short."
        : still.Likely is { } likely
            ? $"Short of {still.Missing} for {still.Places} places; {still.Passed} of {still.Tried} passed, so about {likely} more to test (nine times in ten {still.Low} to {Text(still.High, "0")})"
                + (still.Hours is { } hours ? $", {still.Rounds} rounds, {Text(hours, "0.#")} h." : ".")
            : $"Short of {still.Missing} for {still.Places} places; no cell has passed yet, so nobody can say how many more to test.";

    private static string Percent(ModelLot model) => $"{Text(100 * model.LeastFraction, "0.#")} %";

    private static string Text(double? figure, string format) => figure?.ToString(format, CultureInfo.InvariantCulture) ?? "-";
}
