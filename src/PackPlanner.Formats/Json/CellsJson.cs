using PackPlanner.Core.Bench;
using PackPlanner.Core.Screening;
using PackPlanner.Formats.Words;

namespace PackPlanner.Formats.Json;

/// <summary>A judged lot as scripts read it.</summary>
public static class CellsJson
{
    /// <summary>The answer, without the account of rows.</summary>
    /// <param name="lot">The lot.</param>
    /// <param name="still">What still has to be tested; null when S and P are not given.</param>
    /// <param name="places">Series times parallel.</param>
    /// <returns>The answer.</returns>
    public static CellsAnswer From(ScreenedLot lot, StillToTest? still, int places) => new()
    {
        Cells = [.. lot.Cells.Select(Cell)],
        Counts = new VerdictCountsJson(lot.Count(Verdict.Use), lot.Count(Verdict.Hold), lot.Count(Verdict.Reject)),
        Lot = new LotMediansJson(lot.MedianCapacityAh, lot.MedianResistanceMilliohm),
        Repeatability = lot.Repeatability.Fraction,
        RepeatabilityFrom = VerdictWords.Name(lot.Repeatability.From),
        RepeatabilityDegreesOfFreedom = lot.Repeatability.DegreesOfFreedom,
        RepeatabilityOfRepeats = lot.Repeatability.PooledFraction,
        Slots = [.. lot.Slots.Select(slot => new SlotJson(slot.Slot, 100 * slot.Fraction, 100 * slot.SpreadFraction, slot.Tests))],
        Models =
        [
            .. lot.Models.Select(model => new ModelLotJson(
                model.Model, model.Count, model.RatedAh, model.MedianCapacityAh, model.MedianResistanceMilliohm,
                model.LeastAh, VerdictWords.Name(model.LeastFrom), 100 * model.LeastFraction)),
        ],
        Chemistry = lot.Chemistry?.Name,
        StillToTest = still is null ? null : new StillToTestJson(
            still.Missing, still.Low, still.Likely, still.High, still.Hours, still.Rounds, places, still.Passed, still.Tried),
        SetApart = [SetApart(lot, Verdict.Hold), SetApart(lot, Verdict.Reject)],
        Cautions = CautionJson.From(lot.Cautions),
    };

    private static CellVerdictJson Cell(ScreenedCell cell)
    {
        SelfDischarge? loss = cell.SelfDischarge;
        return new CellVerdictJson
        {
            Cell = cell.Label,
            Verdict = VerdictWords.Name(cell.Verdict),
            Reasons =
            [
                .. cell.Reasons.Select(reason => new VerdictReasonJson(
                    reason.Code, reason.Value, reason.Limit, VerdictWords.Name(reason.LimitFrom), VerdictWords.Name(reason.What),
                    reason.Unit, VerdictWords.Name(reason.Bears), reason.Caution, VerdictWords.Says(reason))),
            ],
            CapacityAh = cell.CapacityAh,
            CapacitySpreadAh = cell.CapacitySpreadAh,
            CapacityCorrectedAh = cell.CorrectedCapacityAh,
            HealthPercent = 100 * cell.HealthFraction,
            CapacityTests = cell.CapacityTests,
            AbortedAh = cell.AbortedAh,
            CapacityTest = new CapacityTestJson(cell.TestCurrentA, cell.TestCutoffV),
            ResistanceMilliohm = cell.ResistanceMilliohm,
            ResistanceSpreadMilliohm = cell.ResistanceSpreadMilliohm,
            ResistanceKind = VerdictWords.Name(cell.ResistanceKind),
            ResistanceAfterS = cell.ResistanceAfterS,
            AcResistanceMilliohm = cell.AcResistanceMilliohm,
            RestV = cell.RestV,
            SelfDischargeMillivoltPerDay = JsonFigures.Known(loss?.MillivoltPerDay),
            SelfDischargePercentPerMonth = JsonFigures.Known(loss?.PercentPerMonth),
            SelfDischargeMilliamp = loss?.PercentPerMonth is { } percent && cell.CapacityAh is { } ah ? SelfDischarge.LeakMilliamp(percent, ah) : null,
            SelfDischargeAnswer = VerdictWords.Name(loss?.Answer),
            SelfDischargeDaysNeeded = JsonFigures.Known(loss?.DaysNeeded),
            Slot = cell.Slot,
            Model = cell.Model,
            Chemistry = cell.Chemistry,
            Batch = cell.Batch,
            Tray = cell.Tray,
            Conditions = cell.Conditions,
            HeldForSafety = cell.HeldForSafety,
            Tests = [.. cell.Rows.Select(row => new CellTestJson(row.File, row.Line, row.CapacityAh, row.Slot, row.ResistanceMilliohm, row.RestV))],
        };
    }

    private static SetApartJson SetApart(ScreenedLot lot, Verdict verdict)
    {
        ScreenedCell[] cells = [.. lot.Cells.Where(cell => cell.Verdict == verdict)];
        double ah = cells.Sum(cell => cell.CapacityAh ?? 0);
        return new SetApartJson(
            VerdictWords.Name(verdict), cells.Length, [.. cells.Select(cell => cell.Label)], ah, ah * lot.Chemistry?.NominalV);
    }
}
