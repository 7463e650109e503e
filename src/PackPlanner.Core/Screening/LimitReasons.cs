using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Screening;

/// <summary>Reasons from the limits of capacity and resistance and from the statistics of the lot.</summary>
internal static class LimitReasons
{
    /// <summary>Resistance above this many times the median of its model is too high. Source: [CommonPractice].</summary>
    internal const double UsualTimesMedian = 1.5;

    /// <summary>Fewer resistances than this have no usual value.</summary>
    internal const int FewestForMedian = 5;

    // Four-wire readings repeat to 1-2 %; where nobody says how it was measured, more is allowed. Source: [CommonPractice].
    private const double KnownMethodFraction = 0.02;
    private const double UnknownMethodFraction = 0.05;

    // Rounding of a unit conversion must never change a verdict.
    private const double Rounding = 1e-9;

    /// <summary>The reason from a least capacity, if any.</summary>
    internal static VerdictReason? Capacity(double? capacityAh, double spreadAh, ModelLot model)
    {
        if (capacityAh is not { } ah || model.LeastAh is not { } least || ah >= least * (1 - Rounding))
            return null;
        bool near = least - ah <= 2 * spreadAh * (1 + Rounding);
        return new VerdictReason(
            near ? ReasonCodes.CapacityNearLimit : ReasonCodes.LowCapacity, ReadingName.Capacity, ah, least, model.LeastFrom,
            near ? Verdict.Hold : Verdict.Reject, Unit: "Ah");
    }

    /// <summary>The reason from a highest resistance, if any.</summary>
    internal static VerdictReason? Resistance(double? milliohm, double spread, double? highest, LimitOrigin from)
    {
        if (milliohm is not { } read || highest is not { } most || read <= most * (1 + Rounding))
            return null;
        bool near = read - most <= 2 * spread * (1 + Rounding);
        return new VerdictReason(
            near ? ReasonCodes.ResistanceNearLimit : ReasonCodes.HighResistance, ReadingName.Resistance, read, most, from,
            near ? Verdict.Hold : Verdict.Reject, Unit: "mohm");
    }

    /// <summary>One standard deviation of a resistance, milliohm.</summary>
    internal static double ResistanceSpread(CellDraft cell) =>
        (cell.ResistanceMilliohm ?? 0)
        * (cell.ResistanceKind == ResistanceKind.Unknown ? UnknownMethodFraction : KnownMethodFraction)
        / Math.Sqrt(Math.Max(1, cell.ResistanceReadings));

    /// <summary>Marks the cells of one model that are unlike the others in one reading.</summary>
    /// <param name="cells">Cells of one model.</param>
    /// <param name="what">Which reading.</param>
    /// <param name="read">The reading of a cell; null where it has none.</param>
    /// <param name="spread">One standard deviation of it.</param>
    /// <param name="unit">Its unit.</param>
    /// <param name="onlyLow">True where a reading above its lot is no finding.</param>
    /// <returns>A reason for each cell that is unlike its lot.</returns>
    internal static IEnumerable<(CellDraft Cell, VerdictReason Reason)> Unlike(
        IEnumerable<CellDraft> cells, ReadingName what, Func<CellDraft, double?> read, Func<CellDraft, double> spread, string unit,
        bool onlyLow = false)
    {
        CellDraft[] known = [.. cells.Where(cell => read(cell) is not null)];
        double[] values = [.. known.Select(cell => read(cell)!.Value)];
        bool[] unlike = Outliers.Of(values, [.. known.Select(spread)]);
        if (!unlike.Contains(true))
            yield break;
        double median = Robust.Median(values);
        for (int i = 0; i < known.Length; i++)
            if (unlike[i] && !(onlyLow && values[i] > median))
                yield return (known[i], new VerdictReason(
                    ReasonCodes.UnlikeItsLot, what, values[i], median, LimitOrigin.LotMedian, Verdict.Hold, Unit: unit));
    }
}
