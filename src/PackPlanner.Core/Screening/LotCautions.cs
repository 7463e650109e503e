using System.Globalization;
using PackPlanner.Core.Cautions;

namespace PackPlanner.Core.Screening;

/// <summary>The cautions that a judged lot raises.</summary>
public static class LotCautions
{
    private const int MostLabels = 12;

    internal static IReadOnlyList<Caution> Of(ScreenedLot lot)
    {
        List<Caution> cautions = [];
        foreach (ScreenedCell cell in lot.Cells)
            foreach (VerdictReason reason in cell.Reasons.Where(reason => reason.Caution is not null and not "caution-06"))
                cautions.Add(Of(cell, reason));
        if (lot.Chemistries.Count > 1 || lot.Cells.Any(cell => cell.Reasons.Any(reason => reason.Code == ReasonCodes.OtherChemistry)))
            cautions.Add(new Caution("caution-06", SignalWord.Danger, "the lot",
                $"{string.Join(" and ", lot.Chemistries.Concat(lot.Chemistry is { } own ? [own.Name] : []).Distinct())} in one lot; they are never one pack"));
        AddNotChecked(cautions, lot, ReadingName.Resistance, "caution-08", "no resistance");
        AddNotChecked(cautions, lot, ReadingName.RestVoltage, "caution-01", "no resting volts");
        AddNotChecked(cautions, lot, ReadingName.SelfDischarge, "caution-14", "loss of charge at rest cannot be told");
        AddNotChecked(cautions, lot, ReadingName.Condition, "caution-05", "condition not noted, or in words that were not understood");
        if (lot.Cells.All(cell => cell.SelfDischarge is null))
            cautions.Add(new Caution("caution-14", SignalWord.Notice, "the lot", "not checked: no two dated resting volts of a cell, so nobody knows which ones lose charge"));
        if (lot.Cells.All(cell => cell.Rows.All(row => row.Condition is null)))
            cautions.Add(new Caution("caution-05", SignalWord.Notice, "the lot", lot.Cells.Any(cell => cell.Conditions.Count > 0)
                ? "not checked where no remark stands: the table has no column for the condition (swollen, dented, leaking, smell, rust, torn wrap)"
                : "not checked: the table notes no condition (swollen, dented, leaking, smell, rust, torn wrap)"));
        if (lot.Chemistry is null && lot.Cells.Any(cell => cell.RestV is not null))
            cautions.Add(new Caution("caution-03", SignalWord.Notice, "the lot",
                lot.GraphiteByVolts
                    ? "chemistry unknown: the charge limit was checked against the highest of all chemistries only; the lot rests too high for LTO, so 2.0 V is taken as the lowest"
                    : "chemistry unknown: resting volts were checked only against what holds for every chemistry"));
        string[] otherwise = [.. lot.Cells.Where(cell => cell.Reasons.Any(reason => reason.Code == ReasonCodes.TestedOtherwise)).Select(cell => cell.Label)];
        if (otherwise.Length > 0)
            cautions.Add(new Caution("caution-30", SignalWord.Notice, Labels(otherwise),
                "tested at another current, cut-off or temperature than most of the lot; the capacities do not compare one to one"));
        if (lot.Count(Verdict.Reject) is var rejected and > 0)
            cautions.Add(new Caution("caution-29", SignalWord.Warning, "the reject list", $"{rejected} rejected {(rejected == 1 ? "cell" : "cells")} to store and dispose of"));
        return Caution.InOrder(cautions);
    }

    /// <summary>The cautions of a lot of which only cells of one chemistry are used: the others are told, and are a danger to nobody.</summary>
    /// <param name="lot">The judged lot.</param>
    /// <returns>In no order.</returns>
    public static IEnumerable<Caution> OfOneChemistry(ScreenedLot lot)
    {
        ScreenedCell[] others = [.. lot.Cells.Where(cell => cell.Reasons.Any(reason => reason.Code == ReasonCodes.OtherChemistry))];
        if (others.Length == 0)
            return lot.Cautions;
        string which = string.Join(", ", others.GroupBy(cell => cell.Chemistry ?? "unknown").OrderBy(group => group.Key, StringComparer.Ordinal).Select(group => $"{group.Count()} {group.Key}"));
        return lot.Cautions.Where(caution => caution.Code != "caution-06")
            .Append(new Caution("caution-06", SignalWord.Notice, "the lot", $"cells of another chemistry were left out ({which}); only {lot.Chemistry?.Name} are used"));
    }

    private static Caution Of(ScreenedCell cell, VerdictReason reason)
    {
        bool warm = cell.Conditions.Contains("warm");
        (SignalWord signal, string saw) = reason.Code switch
        {
            ReasonCodes.NegativeVoltage => (SignalWord.Danger, $"{Figure(reason.Value)} V"),
            ReasonCodes.DeepDischarge => (SignalWord.Warning, $"rests at {Figure(reason.Value)} V; not to be charged again below {Figure(reason.Limit)} V"),
            ReasonCodes.BelowCutOff => (SignalWord.Caution, $"rests at {Figure(reason.Value)} V, at or under its cut-off of {Figure(reason.Limit)} V"),
            ReasonCodes.AboveChargeLimit => (SignalWord.Warning, $"rests at {Figure(reason.Value)} V; {Figure(reason.Limit)} V is 0.05 V above its charge limit"),
            ReasonCodes.DeepDischargeHistory => (SignalWord.Warning, $"an earlier reading is {Figure(reason.Value)} V, under {Figure(reason.Limit)} V; it reads {Figure(cell.RestV)} V now"),
            ReasonCodes.Damaged => (SignalWord.Warning, $"noted: {reason.Noted}"),
            _ => (warm ? SignalWord.Danger : SignalWord.Caution, $"loses {Figure(reason.Value)} {reason.Unit}; {Figure(reason.Limit)} is {(reason.LimitFrom == LimitOrigin.LotMedian ? "its lot's median" : "the limit")}"),
        };
        return new Caution(reason.Caution!, signal, Caution.OfCell(cell.Label), saw);
    }

    private static void AddNotChecked(List<Caution> cautions, ScreenedLot lot, ReadingName what, string code, string why)
    {
        string[] labels =
        [
            .. lot.Cells.Where(cell => cell.Reasons.Any(reason => reason.What == what && reason.Code is ReasonCodes.NotChecked or ReasonCodes.RequiredReadingMissing && reason.What == what))
                .Select(cell => cell.Label),
        ];
        if (labels.Length > 0)
            cautions.Add(new Caution(code, SignalWord.Notice, Labels(labels), $"not checked: {why}"));
    }

    private static string Labels(string[] labels)
    {
        string[] sorted = [.. labels.Order(StringComparer.Ordinal)];
        string shown = string.Join(", ", sorted.Take(MostLabels));
        return sorted.Length > MostLabels ? $"{sorted.Length} cells: {shown} …" : $"{sorted.Length} {(sorted.Length == 1 ? "cell" : "cells")}: {shown}";
    }

    private static string Figure(double? value) => value is { } known ? known.ToString("0.###", CultureInfo.InvariantCulture) : "-";
}
