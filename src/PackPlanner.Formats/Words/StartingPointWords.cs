using PackPlanner.Core.Packs;
using PackPlanner.Core.UsableEnergy;
using PackPlanner.Formats.Json;

namespace PackPlanner.Formats.Words;

/// <summary>Fuse, cable and pre-charge to start from, each with where it comes from.</summary>
public static class StartingPointWords
{
    /// <summary>Said wherever the figures stand.</summary>
    public const string NeverFinal = "To start a choice from, never final: makers' data, local codes and a qualified person decide.";

    /// <summary>The figures as JSON.</summary>
    /// <param name="figures">The string.</param>
    /// <returns>The figures and what they rest on.</returns>
    public static StartingPointsJson Json(StringFigures figures)
    {
        StartingPoints start = figures.Start;
        return new StartingPointsJson(
            start.ContinuousA, start.FuseLeastA, start.FuseStandardA, start.BreakingCapacityA, start.MustClearA,
            start.CableMm2, start.CableByFuseMm2, start.CableByDropMm2, start.CableDropV,
            start.PreCharge?.ResistorOhm, start.PreCharge?.PeakA, start.PreCharge?.ResistorJ, Basis(figures));
    }

    /// <summary>Each figure with its rule and inputs, or with what must be said first.</summary>
    /// <param name="figures">The string.</param>
    /// <returns>One entry for each figure.</returns>
    public static IReadOnlyList<BasisJson> Basis(StringFigures figures)
    {
        StartingPoints start = figures.Start;
        return
        [
            new("fuseStandardA", "fuse", start.FuseStandardA, "A", Fuse(start) + Peak(figures)),
            new("breakingCapacityA", "fuse must break", start.BreakingCapacityA, "A", Break(figures)),
            new("mustClearA", "fuse must still clear at", start.MustClearA, "A", Clear(figures)),
            new("cableMm2", "cable", start.CableMm2, "mm2", Cable(start, figures.Request)),
            new("preChargeOhm", "pre-charge resistor", start.PreCharge?.ResistorOhm, "ohm", PreCharge(start)),
        ];
    }

    /// <summary>A line for each figure.</summary>
    /// <param name="basis">The figures.</param>
    /// <returns>The lines, the reservation first.</returns>
    public static IEnumerable<string> Lines(IReadOnlyList<BasisJson> basis) =>
        basis.Select(row => $"  {row.Name,-26}{(row.Value is null ? "-" : $"{Short(row.Value)} {row.Unit}"),-10} {row.From}").Prepend(NeverFinal);

    private static string Fuse(StartingPoints start) => start switch
    {
        { ContinuousA: null } => "no load is said: --load 22A, or steadyA in a job",
        { FuseStandardA: null } => $"{Short(FuseRule.OverContinuous)} x {Short(start.ContinuousA)} A is above the largest standard rating",
        _ => $"{Short(FuseRule.OverContinuous)} x {Short(start.ContinuousA)} A continuous is {Short(start.FuseLeastA)} A; the next standard rating; its DC volts at least those of the full pack",
    };

    // A fuse bears more than its rating for a while, and how long only its own curve tells.
    private static string Peak(StringFigures figures) => figures.Request.PeakA is { } peakA && figures.Start.FuseStandardA is { } ratingA && peakA > ratingA
        ? $"; the peak of {Short(peakA)} A{(figures.Request.PeakS is { } seconds ? $" for {Short(seconds)} s" : "")} is {Figures.Fixed(peakA / ratingA, 1)} times this rating: hold it against the fuse's time-current curve"
        : "";

    private static string Break(StringFigures figures) => figures.Start.BreakingCapacityA is null
        ? Missing(figures, figures.Shorted.LikelyProspective, "the short circuit")
        : figures.Protection.OnlyFirstInstant || figures.Request.Groups.All(group => group.FirstInstantMilliohm > 0)
            ? "short circuit at its first instant, by the 1 kHz resistances"
            : "short circuit at its first instant: twice the DC figure, because not every 1 kHz resistance is known";

    private static string Clear(StringFigures figures) => figures.Start.MustClearA is null
        ? figures.Protection.OnlyFirstInstant ? "no DC resistances, so the low figure is not known" : Missing(figures, figures.Shorted.LikelyLow, "the low figure")
        : $"short circuit by DC resistance{(figures.Request.BesideCellsMilliohm > 0 ? " with what is known of links, joints and leads" : "; links and leads are not known and left out")}{Cold(figures.Request)}";

    private static string Cold(EnergyRequest request) => StartingPoints.ColdFactor(request) is > 1 and var factor
        ? $"; at {Short(request.TemperatureDegC)} °C, where cells have {Short(factor)} times their resistance"
        : "";

    private static string Missing(StringFigures figures, SupposedCurrent? likely, string what) => likely is { } current
        ? $"{MissingResistances.Supposed(figures.Request.Groups)}: {current.Words}"
        : $"{MissingResistances.Words(figures.Request.Groups)}, so {what} is not known";

    private static string Cable(StartingPoints start, EnergyRequest request)
    {
        if (start.ContinuousA is null)
            return "no load is said: --load 22A, or steadyA in a job";
        string byFuse = start.CableByFuseMm2 is { } area
            ? $"flexible; {Short(area)} mm2 for the fuse's {Short(start.FuseStandardA)} A (short, in free air)"
            : "no cable of the tables carries the fuse's rating";
        if (start.CableM is not { } metres)
            return $"{byFuse}; the drop needs the length: --cable-length 1.5m, or cableM in a job";
        return start.CableByDropMm2 is { } byDropMm2
            ? $"{byFuse}, {Short(byDropMm2)} mm2 to lose at most 1 % over {Short(metres)} m one way; it loses {Short(start.CableDropV)} V, {Counted(start, request)}"
            : $"{byFuse}; over {Short(metres)} m even the largest cable of the table loses more than 1 %";
    }

    // The cable is a proposal: what is reckoned is what was said of the leads.
    private static string Counted(StartingPoints start, EnergyRequest request) => request.LeadsMilliohm is { } leads
        ? $"while usable counts leads of {Short(leads)} mohm"
        : $"which usable does not count: --leads {Short(start.CableMilliohm)}mohm, or leadsMilliohm in a job, counts it";

    private static string PreCharge(StartingPoints start) => start.PreCharge is { } charge
        ? $"at most, for 99 % of {Figures.Fixed(charge.PackV, 1)} V within 0.5 s into {Short(charge.CapacitanceF * 1000)} mF; {Short(charge.PeakA)} A and {Short(charge.PeakW)} W at first, {Short(charge.ResistorJ)} J each time; the contactor then closes on {Short(charge.MissingV(StartingPoints.WithinS))} V"
        : "the controller's capacitors are not said: --capacitance 1.5mF, or capacitanceMillifarad in a job";

    // Three digits, without noughts at the end: a fuse is one of 30 A, not of 30.0 A.
    private static string Short(double? value) => Figures.Digits(value, 3) is var digits && digits.Contains('.') ? digits.TrimEnd('0').TrimEnd('.') : digits;
}
