using PackPlanner.Core.Bench;
using PackPlanner.Core.Cautions;
using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Screening;

/// <summary>Holds every cell of one lot against the lot's limits.</summary>
internal sealed class LotReasons
{
    // Capacity moves about 0.5 % a kelvin near room temperature, so 5 K are more than a good tester's repeat. Source: [Nenadic2020].
    private const double AlikeKelvin = 5;
    private const double AlikeFraction = 0.1;
    private const double AlikeCutoffV = 0.05;

    // A cell that rests lower than its lot may have lost charge by itself; one that rests higher has not. Cells are
    // seldom charged more evenly than this. Our choice.
    private const double UnlikeRestV = 0.05;

    private readonly ScreeningRequest request;
    private readonly Dictionary<string, ModelLot> models;
    private readonly Repeatability repeatability;
    private readonly Dictionary<string, double?> slotFraction;
    private readonly bool graphiteByVolts;
    private readonly Chemistry? chemistry;
    private readonly ILookup<string, VerdictReason> ofTheLot;
    private readonly Dictionary<(string Model, ResistanceKind Kind), double> usualMilliohm;
    private readonly double spreadV;
    private readonly bool anySelfDischarge;
    private readonly HashSet<string> comparedForLeaks;
    private readonly bool anyCondition;
    private readonly double? usualCurrentA;
    private readonly double? usualCutoffV;
    private readonly double? usualDegC;

    internal LotReasons(
        IReadOnlyList<CellDraft> cells, ScreeningRequest request, IReadOnlyList<ModelLot> models, Repeatability repeatability,
        IReadOnlyList<SlotOffset> slots, bool graphiteByVolts, Chemistry? chemistry)
    {
        this.request = request;
        this.repeatability = repeatability;
        this.graphiteByVolts = graphiteByVolts;
        this.chemistry = chemistry;
        string[] keys = [.. cells.Select(CapacityLimits.KeyOf).Distinct().Order(StringComparer.Ordinal)];
        this.models = keys.Zip(models).ToDictionary(pair => pair.First, pair => pair.Second);
        slotFraction = slots.ToDictionary(slot => slot.Slot, slot => slot.Fraction);
        spreadV = SelfDischarge.SpreadOfReadingV(ReadingStep.Of([.. cells.SelectMany(cell => cell.AllRestV)]));
        anySelfDischarge = cells.Any(cell => cell.SelfDischarge is not null);
        comparedForLeaks = [.. LeakReasons.Compared(cells).Select(cell => cell.Label)];
        anyCondition = cells.Any(cell => cell.HasCondition);
        usualCurrentA = Usual(cells, row => row.TestCurrentA);
        usualCutoffV = Usual(cells, row => row.TestCutoffV);
        usualDegC = Usual(cells, row => row.TemperatureDegC);
        usualMilliohm = cells.Where(cell => cell.ResistanceMilliohm is not null)
            .GroupBy(cell => (CapacityLimits.KeyOf(cell), cell.ResistanceKind))
            .Where(group => group.Count() >= LimitReasons.FewestForMedian)
            .ToDictionary(group => group.Key, group => Robust.Median([.. group.Select(cell => cell.ResistanceMilliohm!.Value)]));
        ofTheLot = Lot(cells).ToLookup(found => found.Cell.Label, found => found.Reason, StringComparer.Ordinal);
    }

    /// <summary>The verdict on one cell.</summary>
    internal ScreenedCell Judge(CellDraft cell)
    {
        ModelLot model = models[CapacityLimits.KeyOf(cell)];
        double? corrected = Corrected(cell);
        double? judgedAh = request.CorrectSlots ? corrected ?? cell.CapacityAh : cell.CapacityAh;
        VerdictReason[] reasons = InOrder(Reasons(cell, model, judgedAh));
        bool safety = reasons.Any(reason => SafetyHolds.Include(reason.Caution));
        (Verdict worst, reasons) = ByHand(cell.Label, reasons);
        CellRow? first = cell.Tests.Count > 0 ? cell.Tests[0] : cell.Aborted;
        return new ScreenedCell
        {
            Label = cell.Label,
            Verdict = worst,
            Reasons = reasons,
            CapacityAh = cell.CapacityAh,
            CapacitySpreadAh = cell.CapacityAh is null ? null : SpreadAh(cell),
            CorrectedCapacityAh = corrected,
            CapacityTests = cell.Tests.Count,
            AbortedAh = cell.Aborted?.CapacityAh,
            RatedAh = model.RatedAh,
            HealthFraction = cell.CapacityAh / model.RatedAh,
            TestCurrentA = first?.TestCurrentA,
            TestCutoffV = first?.TestCutoffV,
            ResistanceMilliohm = cell.ResistanceMilliohm,
            ResistanceSpreadMilliohm = cell.ResistanceMilliohm is null ? null : LimitReasons.ResistanceSpread(cell),
            ResistanceKind = cell.ResistanceKind,
            ResistanceAfterS = cell.ResistanceAfterS,
            AcResistanceMilliohm = cell.AcResistanceMilliohm,
            RestV = cell.RestV,
            SelfDischarge = cell.SelfDischarge,
            Model = cell.Model,
            Slot = (first ?? cell.Rows[0]).Slot,
            Batch = cell.Rows.Select(row => row.Batch).FirstOrDefault(batch => batch is not null),
            Tray = cell.Rows.Select(row => row.Tray).FirstOrDefault(tray => tray is not null),
            Chemistry = cell.Chemistry?.Name ?? cell.UnknownChemistry,
            Conditions = cell.Damage,
            HeldForSafety = safety,
            Rows = cell.Rows,
        };
    }

    // A verdict by hand stands over all reasons but those of safety.
    private (Verdict Worst, VerdictReason[] Reasons) ByHand(string label, VerdictReason[] reasons)
    {
        if (!request.ByHand.TryGetValue(label, out HandVerdict? hand))
            return (reasons.Length == 0 ? Verdict.Use : reasons.Max(reason => reason.Bears), reasons);
        Verdict forSafety = reasons.Where(reason => reason.Caution is not null).Select(reason => reason.Bears).DefaultIfEmpty(Verdict.Use).Max();
        return (
            hand.Verdict > forSafety ? hand.Verdict : forSafety,
            [new VerdictReason(ReasonCodes.ByHand, ReadingName.Condition, null, null, LimitOrigin.User, hand.Verdict, Noted: hand.Because), .. reasons]);
    }

    // The gravest first; a reason with a caution before one without.
    private static VerdictReason[] InOrder(IEnumerable<VerdictReason> reasons) =>
    [
        .. reasons
            .OrderByDescending(reason => reason.Bears)
            .ThenBy(reason => reason.Caution ?? "~", StringComparer.Ordinal)
            .ThenBy(reason => reason.What)
            .ThenBy(reason => reason.Code, StringComparer.Ordinal),
    ];

    // What somebody wrote tells more than volts at which the test may have ended for another reason.
    private static VerdictReason BrokenOff(CellDraft cell, CellRow aborted) =>
        (BrokenOffWords.Say(aborted.Remark) ? aborted.Remark : BrokenOffWords.Say(aborted.Condition) ? aborted.Condition : null) is { } noted
            ? new(ReasonCodes.AbortedTest, ReadingName.Capacity, null, null, null, Verdict.Hold, Noted: noted)
            : new(ReasonCodes.AbortedTest, ReadingName.Capacity, aborted.TestEndV, cell.AbortedCutoffV,
                aborted.TestCutoffV is null ? LimitOrigin.LotMedian : LimitOrigin.DataSheet, Verdict.Hold, Unit: "V");

    private IEnumerable<VerdictReason> Reasons(CellDraft cell, ModelLot model, double? judgedAh)
    {
        SafetyReasons.Limits limits = SafetyReasons.LimitsOf(cell.Chemistry, request, graphiteByVolts);
        foreach (VerdictReason reason in SafetyReasons.Of(cell, limits, spreadV))
            yield return reason;
        foreach (VerdictReason reason in ofTheLot[cell.Label])
            yield return reason;
        if (IsOfOtherChemistry(cell))
            yield return new VerdictReason(
                ReasonCodes.OtherChemistry, ReadingName.Chemistry, null, null, request.Chemistry is null ? LimitOrigin.LotMedian : LimitOrigin.User,
                Verdict.Hold, "caution-06", cell.UnknownChemistry ?? cell.Chemistry?.Name);
        if (cell.CapacityAh is null)
            yield return cell.Aborted is { } aborted
                ? BrokenOff(cell, aborted)
                : new VerdictReason(ReasonCodes.NoCapacity, ReadingName.Capacity, null, null, null, Verdict.Hold, Noted: Said(cell));
        if (cell.RepeatsDifferFraction > CellDraft.MostRepeatsDiffer)
            yield return new VerdictReason(ReasonCodes.RepeatsDisagree, ReadingName.Capacity, 100 * cell.RepeatsDifferFraction,
                100 * CellDraft.MostRepeatsDiffer, LimitOrigin.CommonPractice, Verdict.Hold, Unit: "%");
        else if (!request.OnlySafety && LimitReasons.Capacity(judgedAh, SpreadAh(cell), model) is { } low)
            yield return low;
        if (!request.OnlySafety && HighestMilliohm(cell) is var (highest, from)
            && LimitReasons.Resistance(cell.ResistanceMilliohm, LimitReasons.ResistanceSpread(cell), highest, from) is { } high)
            yield return high;
        foreach (VerdictReason reason in NotChecked(cell, model))
            yield return reason;
    }

    private (double? Highest, LimitOrigin From) HighestMilliohm(CellDraft cell) =>
        request.HighestMilliohm is { } stated ? (stated, LimitOrigin.User)
        : usualMilliohm.TryGetValue((CapacityLimits.KeyOf(cell), cell.ResistanceKind), out double usual)
            ? (LimitReasons.UsualTimesMedian * usual, LimitOrigin.LotMedian)
            : (null, LimitOrigin.LotMedian);

    private IEnumerable<VerdictReason> NotChecked(CellDraft cell, ModelLot model)
    {
        if (cell.ResistanceMilliohm is null && cell.AcResistanceMilliohm is null)
            yield return Missing(ReadingName.Resistance);
        if (cell.RestV is null)
            yield return Missing(ReadingName.RestVoltage);
        bool lossTold = cell.SelfDischarge is { Answer: LeakAnswer.Told } || comparedForLeaks.Contains(cell.Label);
        if (!lossTold && (anySelfDischarge || request.Required.Contains(ReadingName.SelfDischarge)))
            yield return Missing(ReadingName.SelfDischarge, cell.SelfDischarge?.Answer.ToString());
        if (cell.UnreadCondition is { } words)
            yield return Missing(ReadingName.Condition, words);
        else if (!cell.HasCondition && (anyCondition || request.Required.Contains(ReadingName.Condition)))
            yield return Missing(ReadingName.Condition);
        if (cell.CapacityAh is not null && model.LeastAh is null && !request.OnlySafety)
            yield return Missing(ReadingName.Capacity, "no limit");
        if (TestedOtherwise(cell) is { } otherwise)
            yield return otherwise;
    }

    private VerdictReason Missing(ReadingName what, string? noted = null) => request.Required.Contains(what)
        ? new VerdictReason(ReasonCodes.RequiredReadingMissing, what, null, null, LimitOrigin.User, Verdict.Hold, Noted: noted)
        : new VerdictReason(ReasonCodes.NotChecked, what, null, null, null, Verdict.Use, Noted: noted);

    // Each test of a cell is part of its mean, so the one that stands furthest off speaks.
    private static double? Furthest(IEnumerable<double?> figures, double? usual) =>
        usual is { } one ? figures.OfType<double>().Cast<double?>().MaxBy(figure => Math.Abs(figure!.Value - one)) : null;

    private VerdictReason? TestedOtherwise(CellDraft cell)
    {
        if (cell.Tests.Count == 0)
            return null;
        double? current = Furthest(cell.Tests.Select(row => row.TestCurrentA), usualCurrentA);
        if (current is not null && Math.Abs(current.Value / usualCurrentA!.Value - 1) > AlikeFraction)
            return new VerdictReason(ReasonCodes.TestedOtherwise, ReadingName.Capacity, current, usualCurrentA, LimitOrigin.LotMedian, Verdict.Use, Unit: "A");
        double? cutoff = Furthest(cell.Tests.Select(row => row.TestCutoffV), usualCutoffV);
        if (cutoff is not null && Math.Abs(cutoff.Value - usualCutoffV!.Value) > AlikeCutoffV)
            return new VerdictReason(ReasonCodes.TestedOtherwise, ReadingName.Capacity, cutoff, usualCutoffV, LimitOrigin.LotMedian, Verdict.Use, Unit: "V");
        double? degC = Furthest(cell.Tests.Select(row => row.TemperatureDegC), usualDegC);
        return degC is not null && Math.Abs(degC.Value - usualDegC!.Value) > AlikeKelvin
            ? new VerdictReason(ReasonCodes.TestedOtherwise, ReadingName.Capacity, degC, usualDegC, LimitOrigin.LotMedian, Verdict.Use, Unit: "degC")
            : null;
    }

    // Findings that need the whole lot at once; lots are told apart by model, losses are not.
    private List<(CellDraft Cell, VerdictReason Reason)> Lot(IReadOnlyList<CellDraft> cells)
    {
        List<(CellDraft Cell, VerdictReason Reason)> found = [.. LeakReasons.Of(cells)];
        if (request.OnlySafety)
            return found;
        foreach (IGrouping<string, CellDraft> model in cells.GroupBy(CapacityLimits.KeyOf))
        {
            found.AddRange(LimitReasons.Unlike(model, ReadingName.Capacity, cell => cell.CapacityAh, SpreadAh, "Ah"));
            foreach (IGrouping<ResistanceKind, CellDraft> kind in model.GroupBy(cell => cell.ResistanceKind))
                found.AddRange(LimitReasons.Unlike(
                    kind, ReadingName.Resistance, cell => cell.ResistanceMilliohm, LimitReasons.ResistanceSpread, "mohm"));
            found.AddRange(LimitReasons.Unlike(
                model, ReadingName.RestVoltage, cell => cell.RestV, _ => Math.Max(spreadV, UnlikeRestV / 2), "V", onlyLow: true));
        }

        return found;
    }

    private double SpreadAh(CellDraft cell) =>
        repeatability.Fraction * (cell.CapacityAh ?? 0) / Math.Sqrt(Math.Max(1, cell.Tests.Count));

    private double? Corrected(CellDraft cell)
    {
        double sum = 0;
        foreach (CellRow row in cell.Tests.OrderBy(row => row.CapacityAh))
        {
            if (row.Slot is null || slotFraction.GetValueOrDefault(row.Slot) is not { } fraction)
                return null;
            sum += row.CapacityAh!.Value / (1 + fraction);
        }

        return cell.Tests.Count == 0 ? null : sum / cell.Tests.Count;
    }

    private bool IsOfOtherChemistry(CellDraft cell) =>
        chemistry is not null && (cell.Chemistry is not null ? cell.Chemistry.Name != chemistry.Name : cell.UnknownChemistry is not null);

    private static string? Said(CellDraft cell) => cell.Rows.Select(row => row.Remark).FirstOrDefault(remark => remark is not null);

    private static double? Usual(IReadOnlyList<CellDraft> cells, Func<CellRow, double?> figure) =>
        Robust.MedianOrNull(cells.SelectMany(cell => cell.Tests).Select(figure).OfType<double>());
}
