using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Screening;

/// <summary>Reasons that concern people before they concern the pack: cautions 1 to 5.</summary>
internal static class SafetyReasons
{
    // Volts above the charge limit from which a cell is rejected; from Chemistry.OverFullV on it is held. Common practice, no source.
    private const double FarOverFullV = 0.15;

    // No LTO cell rests above this: 2.8 V full and a margin. A lot that rests higher has another anode.
    private const double HighestLtoV = 2.9;

    /// <summary>The voltage limits that a cell is held against.</summary>
    /// <param name="DoNotRechargeV">Rests below this: never charged again.</param>
    /// <param name="SurelyDeepV">Below this even without knowing the anode.</param>
    /// <param name="CutoffV">Lowest voltage; null when unknown.</param>
    /// <param name="CutoffFrom">Whose.</param>
    /// <param name="FullV">Charge limit; null when unknown.</param>
    /// <param name="FullFrom">Whose.</param>
    internal sealed record Limits(
        double DoNotRechargeV, double SurelyDeepV, double? CutoffV, LimitOrigin CutoffFrom, double? FullV, LimitOrigin FullFrom);

    /// <summary>Limits by the data sheet first, then the chemistry, then what the anode alone tells.</summary>
    /// <param name="chemistry">Null when unknown.</param>
    /// <param name="request">May state full and empty volts.</param>
    /// <param name="graphiteByVolts">True where the lot's resting volts rule out LTO.</param>
    internal static Limits LimitsOf(Chemistry? chemistry, ScreeningRequest request, bool graphiteByVolts)
    {
        LimitOrigin cutoffFrom = request.EmptyV is null ? LimitOrigin.Chemistry : LimitOrigin.User;
        LimitOrigin fullFrom = request.FullV is null ? LimitOrigin.Chemistry : LimitOrigin.User;
        if (chemistry is not null)
            return new Limits(
                chemistry.DoNotRechargeV, chemistry.DoNotRechargeV, request.EmptyV ?? chemistry.CutoffV, cutoffFrom,
                request.FullV ?? chemistry.FullV, fullFrom);
        Chemistry[] graphite = [.. Chemistries.All.Where(known => known.HasGraphiteAnode)];
        double deep = graphite.Max(known => known.DoNotRechargeV);
        double lto = Chemistries.All.Min(known => known.DoNotRechargeV);
        return new Limits(
            deep, graphiteByVolts ? deep : lto,
            request.EmptyV ?? (graphiteByVolts ? graphite.Min(known => known.CutoffV) : null), cutoffFrom,
            request.FullV ?? Chemistries.All.Max(known => known.FullV), fullFrom);
    }

    /// <summary>Whether a lot rests too high for LTO.</summary>
    internal static bool RestsTooHighForLto(IEnumerable<double> restV) =>
        Robust.MedianOrNull(restV) > HighestLtoV;

    /// <summary>Reasons from resting volts and condition.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="limits">Its limits.</param>
    /// <param name="spreadV">One standard deviation of a reading, volts.</param>
    internal static IEnumerable<VerdictReason> Of(CellDraft cell, Limits limits, double spreadV)
    {
        if (cell.Damage.Count > 0)
            yield return new VerdictReason(
                ReasonCodes.Damaged, ReadingName.Condition, null, null, LimitOrigin.CommonPractice, Verdict.Reject,
                "caution-05", string.Join(", ", cell.Damage));
        if (cell.RestV is not { } volts)
            yield break;
        double band = 2 * spreadV;
        VerdictReason? now = Low(volts, limits, band);
        if (now is { } low)
            yield return low;
        if (now?.Bears != Verdict.Reject && cell.AllRestV.Where(v => v < limits.SurelyDeepV && v < volts - band).ToArray() is { Length: > 0 } earlier)
            yield return At(ReasonCodes.DeepDischargeHistory, earlier.Min(), limits.SurelyDeepV, LimitOrigin.Chemistry, Verdict.Reject, "caution-04");
        if (limits.FullV is { } full && volts > full + Chemistry.OverFullV - band)
            yield return At(
                ReasonCodes.AboveChargeLimit, volts, full + Chemistry.OverFullV, limits.FullFrom,
                volts > full + FarOverFullV ? Verdict.Reject : Verdict.Hold, "caution-03");
    }

    private static VerdictReason? Low(double volts, Limits limits, double band)
    {
        if (volts < 0)
            return At(ReasonCodes.NegativeVoltage, volts, 0, null, Verdict.Reject, "caution-02");
        if (volts < limits.SurelyDeepV - band)
            return At(ReasonCodes.DeepDischarge, volts, limits.SurelyDeepV, LimitOrigin.Chemistry, Verdict.Reject, "caution-01");
        if (volts < limits.DoNotRechargeV + band)
            return At(ReasonCodes.DeepDischarge, volts, limits.DoNotRechargeV, LimitOrigin.Chemistry, Verdict.Hold, "caution-01");
        return limits.CutoffV is { } cutoff && volts < cutoff + band
            ? At(ReasonCodes.BelowCutOff, volts, cutoff, limits.CutoffFrom, Verdict.Hold, "caution-01")
            : null;
    }

    private static VerdictReason At(string code, double volts, double limit, LimitOrigin? from, Verdict bears, string caution) =>
        new(code, ReadingName.RestVoltage, volts, limit, from, bears, caution, Unit: "V");
}
