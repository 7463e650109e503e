using PackPlanner.Core.Cells;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.Screening;
using PackPlanner.Formats.Words;
using PackPlanner.Screens.Drawing;
using PackPlanner.Screens.JobScreen;

namespace PackPlanner.Screens.CellsScreen;

/// <summary>Where a figure of a cell comes from.</summary>
internal static class CellWhereFrom
{
    internal static WhereFrom Of(ScreenedCell cell, ScreenedLot lot, Job job, string column, Look look)
    {
        List<(string, string)> lines = [];
        for (int i = 0; i < cell.Rows.Count; i++)
            lines.Add(("read", Read(cell.Rows[i], job, i + 1, column, look)));
        if (column is "mΩ")
            lines.AddRange([("kind", Kind(cell)), ("spread", ResistanceSpread(cell, look))]);
        else if (!IsOfVolts(column))
            lines.AddRange([("spread", Spread(cell, lot, look)), .. Share(cell, look)]);
        if (cell.SelfDischarge is { } loss && column is not ("mΩ" or "resting V"))
            lines.Add(("at rest", look.Prose(LeakWords.Of(loss))));
        bool alone = column is "mΩ" || IsOfVolts(column);
        // What speaks of another reading has no say in this figure; the verdict below weighs all.
        foreach (VerdictReason reason in cell.Reasons.Where(reason => !alone || ReasonWords.What(reason.What) == Reading(column)))
        {
            if (reason.Limit is not null && reason.LimitFrom != LimitOrigin.LotMedian)
                lines.Add(("limit", $"{look.Figure(reason.Limit, reason.Unit == "%" ? 0 : 3)} {reason.Unit}: {ReasonWords.From(reason.LimitFrom)}; e changes limits"));
            lines.Add(("rule", Rule(reason, cell, look)));
        }

        lines.Add(("so", alone ? $"{CellColumns.Word(cell.Verdict)}{(lines.Exists(line => line.Item1 == "rule") || cell.Verdict == Verdict.Use ? "" : ", for other readings")}" : So(cell, look)));
        string value = column switch
        {
            "mΩ" => $"{look.Figure(cell.ResistanceMilliohm, 1)} mΩ",
            "resting V" => $"{look.Figure(cell.RestV, 3)} V",
            "fresh V" => $"{look.Figure(CellColumns.FreshV(cell), 3)} V, fresh,",
            "mV/day" => $"{look.Figure(cell.SelfDischarge?.MillivoltPerDay, 2)} mV a day",
            _ => $"{look.Figure(cell.CapacityAh, 3)} Ah",
        };
        return new WhereFrom($"{value} of {cell.Label}", lines);
    }

    private static bool IsOfVolts(string column) => column is "resting V" or "fresh V" or "mV/day";

    private static string Read(CellRow row, Job job, int test, string column, Look look)
    {
        string later = row.LaterRestV is null ? "" : $", later {look.Figure(row.LaterRestV, 3)} V{Edited(job, new CellKey(row.Label, test, CellField.LaterRestV), look, "; the table has ", "")}";
        (CellField field, string figure) = column switch
        {
            "mΩ" => (CellField.ResistanceMilliohm, $"{look.Figure(row.ResistanceMilliohm, 2)} mΩ"),
            _ when IsOfVolts(column) => (CellField.RestV, $"{look.Figure(row.RestV, 3)} V"),
            _ => (CellField.CapacityAh, $"{look.Figure(row.CapacityAh, 4)} Ah"),
        };
        string where = row.File is { } file ? $"{file}{(row.Line is { } line ? $" line {line}" : "")}" : "typed by hand";
        return figure + Edited(job, new CellKey(row.Label, test, field), look, "; read ", " in") + (job.Edits.ContainsKey(new CellKey(row.Label, test, field)) ? " " : ", ")
            + where + (row.Slot is { } slot ? $", slot {slot}" : "") + (row.Date is { } day ? $", {day:d MMM yyyy}" : "") + (IsOfVolts(column) ? later : "");
    }

    // Who changed the figure, and what stands in the table all the same.
    private static string Edited(Job job, CellKey key, Look look, string read, string after) =>
        job.Edits.TryGetValue(key, out CellEdit? edit) ? $", {GivenWords.Origin(edit.From)}{read}{RawWords(job.Raw(key), look)}{after}" : "";

    private static string RawWords(JobValue? raw, Look look) => raw switch
    {
        JobValue.Number number => look.AsTyped(number.Value, "0.####"),
        JobValue.Word word => word.Value,
        _ => "nothing",
    };

    private static string Kind(ScreenedCell cell) => cell.ResistanceKind switch
    {
        ResistanceKind.Dc => "a pulse: volts over amperes of a step" + (cell.ResistanceAfterS is { } after ? $", read {after:0.###} s after it" : ""),
        ResistanceKind.Ac1Khz => "at 1 kHz, which leaves out the slow part: under load the drop is larger",
        _ => "the table does not say whether DC or 1 kHz; the two differ by a half or more",
    };

    // Where two models lie in one lot, each is measured by its own.
    private static IEnumerable<(string, string)> Share(ScreenedCell cell, Look look) => cell is { HealthFraction: { } share, RatedAh: { } rated }
        ? [("share", $"{look.Percent(share, 1)} of {look.Figure(rated, 2)} Ah rated{(cell.Model is { } model ? $", model {model}" : "")}")]
        : [];

    private static string Reading(string column) => column switch
    {
        "mV/day" => ReasonWords.What(ReadingName.SelfDischarge),
        "fresh V" => ReasonWords.What(ReadingName.RestVoltage),
        _ => column,
    };

    private static string ResistanceSpread(ScreenedCell cell, Look look) => cell is { ResistanceMilliohm: { } ohm, ResistanceSpreadMilliohm: { } spread }
        ? $"{look.Figure(spread, 2)} mΩ: {look.Percent(spread / ohm, 1)}, one standard deviation, as usual for a reading of this kind"
        : "none without a reading";

    private static string Spread(ScreenedCell cell, ScreenedLot lot, Look look)
    {
        string from = lot.Repeatability.From switch
        {
            RepeatabilityOrigin.Given => "as you stated",
            RepeatabilityOrigin.Repeats => $"from repeats in this lot ({lot.Repeatability.DegreesOfFreedom} to spare)",
            _ => "assumed, p sets yours",
        };
        return $"{look.Figure(cell.CapacitySpreadAh, 3)} Ah: {look.Percent(lot.Repeatability.Fraction, 1)} of one test, one standard deviation, over {cell.CapacityTests} test{(cell.CapacityTests == 1 ? "" : "s")}; {from}";
    }

    private static string Rule(VerdictReason reason, ScreenedCell cell, Look look) => reason.Code switch
    {
        ReasonCodes.CapacityNearLimit => $"under a limit but within twice its spread of it: {look.Figure(reason.Limit - reason.Value, 3)} < {look.Figure(2 * cell.CapacitySpreadAh, 3)}",
        ReasonCodes.LowCapacity => $"under a limit by more than twice its spread: {look.Figure(reason.Limit - reason.Value, 3)} > {look.Figure(2 * cell.CapacitySpreadAh, 3)}",
        ReasonCodes.UnlikeItsLot => $"{ReasonWords.Of(reason, look)}: {look.Figure(Math.Abs(reason.Value!.Value - reason.Limit!.Value), 3)} {reason.Unit} from the median {look.Figure(reason.Limit, 3)}, more than 3.5 standard deviations of the lot (told by its middle half) and twice its own spread; docs/methods/screening.md",
        ReasonCodes.LosesCharge when reason.LimitFrom == LimitOrigin.LotMedian => $"{ReasonWords.Of(reason, look)}, its lot's median {look.Figure(reason.Limit, 1)}: more than 3.5 standard deviations of the lot (told by its middle half) and twice its own spread above it; docs/methods/screening.md",
        ReasonCodes.RepeatsDisagree => $"its tests differ by {look.Figure(reason.Value, 1)} %",
        _ => ReasonWords.Of(reason, look),
    };

    private static string So(ScreenedCell cell, Look look) => cell.Verdict switch
    {
        Verdict.Hold when cell.Reasons.Any(reason => reason.Code == ReasonCodes.LosesCharge) => "hold; the resting volts of another week tell more, another test of its Ah does not",
        // A repeat narrows the spread of its Ah, and settles nothing that it is held for otherwise.
        Verdict.Hold when cell.CapacitySpreadAh is { } spread && cell.Reasons.Any(reason => reason.Code is ReasonCodes.CapacityNearLimit or ReasonCodes.RepeatsDisagree || reason is { Code: ReasonCodes.UnlikeItsLot, What: ReadingName.Capacity }) =>
            $"hold; a repeat in another slot brings the spread to {look.Figure(spread * Math.Sqrt(cell.CapacityTests / (cell.CapacityTests + 1.0)), 3)} Ah",
        _ => CellColumns.Word(cell.Verdict),
    };
}
