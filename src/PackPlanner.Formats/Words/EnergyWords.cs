using PackPlanner.Core.UsableEnergy;
using PackPlanner.Formats.Json;

namespace PackPlanner.Formats.Words;

/// <summary>The answer of <c>energy</c> as JSON, as lines and as a table.</summary>
public static class EnergyWords
{
    /// <summary>Fills the answer.</summary>
    /// <param name="figures">What came out.</param>
    /// <param name="whPerKm">Use for each kilometre; null when unknown.</param>
    /// <returns>The answer without what was understood.</returns>
    public static EnergyAnswer Answer(StringFigures figures, double? whPerKm)
    {
        (EnergyRequest request, EnergyBudget budget, StringShortCircuit shorted) = (figures.Request, figures.Budget, figures.Shorted);
        int series = request.Groups.Count;
        double fullV = series * request.ChargedToV, emptyV = series * request.EndsAtV;
        return new EnergyAnswer
        {
            NominalWh = budget.NominalWh,
            Series = series,
            NominalV = request.LabelV,
            RatedAh = request.LabelAh,
            // A loss that is not known is no part of the sum; what was understood says which one and why.
            Losses = Steps(budget.Losses.Where(loss => loss.Wh is not null)),
            UsableWh = budget.UsableWh,
            UsableAh = budget.UsableAh,
            SpreadWh = budget.Spread.HalfWidthWh,
            UsableWhRange = new RangeJson(budget.Spread.LowWh, budget.Spread.HighWh),
            UsableAhAtRest = budget.UsableAhAtRest,
            UsableWhAtRest = budget.UsableWhAtRest,
            WhPerKm = whPerKm,
            RangeKm = whPerKm is > 0 ? budget.UsableWh / whPerKm : null,
            EndsAt = new EndsAtJson(
                budget.EndsAtGroup,
                budget.EndedByController ? "controller-low-voltage" : "cell-cut-off",
                budget.EndPackV,
                budget.Hours > 0 ? budget.Hours : null,
                budget.Spread.EndAlike,
                budget.EndsAtOnce),
            Voltages = new VoltagesJson(fullV, series * request.LabelV, emptyV, request.ControllerMaxV - fullV, emptyV - request.PackEmptyV),
            HeatW = Heat(budget.Heat),
            PulsePower = [.. budget.PulsePowers.Select(power => new PulsePowerJson(power.LeftFraction * 100, power.GivesA, power.GivesW, power.TakesA, power.TakesW))],
            ShortCircuitA = shorted.LowA,
            ProspectiveShortCircuitA = shorted.ProspectiveA,
            AfterBalance = new AfterJson(budget.AfterBalance.UsableAh, budget.AfterBalance.UsableWh, budget.AfterBalance.NextBottleneck),
            AfterReplacement = [.. budget.AfterReplacement.Select(after => new AfterReplacementJson(after.Groups, after.UsableAh, after.UsableWh, after.NextBottleneck))],
            Sensitivity = Steps(budget.Sensitivity),
            Charger = ChargerSettings.Of(request, figures.Protection) is { } set ? new ChargerJson(set.PackV, set.CurrentA, set.TaperA, set.Hours, set.HighestA) : null,
            StartingPoints = StartingPointWords.Json(figures),
            Draws = null,
            Cautions = CautionJson.From(figures.Raised),
            NotChecked = [.. figures.Open.Select(each => new NotCheckedJson(each.Code, each.Why))],
        };
    }

    /// <summary>Why volts that the chemistry does not have are refused.</summary>
    /// <param name="request">What was asked.</param>
    /// <param name="where">What named them.</param>
    /// <param name="remedy">What to give instead.</param>
    /// <returns>The refusal.</returns>
    public static Refusal LimitsOutside(EnergyRequest request, string where, string remedy) => Refusal.Input(
        "limits-outside", where,
        $"{request.ChargedToV} V full and {request.EndsAtV} V empty do not fit {request.Chemistry.Name}, which works from {request.Chemistry.CutoffV} to {request.Chemistry.FullV} V", remedy);

    /// <summary>Lines for people.</summary>
    /// <param name="answer">The answer.</param>
    /// <returns>The lines.</returns>
    public static IReadOnlyList<string> Lines(EnergyAnswer answer)
    {
        List<string> lines = [];
        string range = answer.RangeKm is { } km ? $", {Figures.Digits(km, 3)} km at {Figures.Digits(answer.WhPerKm, 3)} Wh/km" : "";
        lines.Add($"Usable: {Figures.Digits(answer.UsableWh, 4)} Wh {Spread(answer)}, {Figures.Digits(answer.UsableAh, 4)} Ah{range}; at rest, before load, cold, controller and reserve, {Figures.Digits(answer.UsableAhAtRest, 4)} Ah, {Figures.Digits(answer.UsableWhAtRest, 4)} Wh.");
        lines.Add($"  {"on the label",-42}{Figures.Fixed(answer.NominalWh, 0),8} Wh  ({answer.Series} x {Figures.Fixed(answer.NominalV, 2)} V x {Figures.Digits(answer.RatedAh, 4)} Ah)");
        lines.AddRange(answer.Losses.Select(loss => $"  {loss.Name,-42}{Signed(loss.Wh),8} Wh"));
        lines.Add($"  {"usable",-42}{Figures.Fixed(answer.UsableWh, 0),8} Wh");
        lines.Add(answer.EndsAt.AtOnce ? AtOnce(answer.EndsAt.Group, answer.EndsAt.Reason == "controller-low-voltage") : Ends(answer.EndsAt));
        lines.Add($"Volts: {Figures.Fixed(answer.Voltages.Full, 1)} full, {Figures.Fixed(answer.Voltages.Nominal, 1)} nominal, {Figures.Fixed(answer.Voltages.Empty, 1)} empty; margin to the controller {Figures.Fixed(answer.Voltages.MarginHigh, 1)} above, {Figures.Fixed(answer.Voltages.MarginLow, 1)} below.");
        lines.AddRange(HeatLines(answer.HeatW));
        if (answer.PulsePower.Count > 0)
            lines.Add("Largest power by volts alone (ratings may be less): " + string.Join("; ", answer.PulsePower.Select(power =>
                $"with {Figures.Fixed(power.LeftPercent, 0)} % left gives {Figures.Digits(power.GivesW / 1000, 2)} kW, takes back {Figures.Digits(power.TakesW / 1000, 2)} kW")) + ".");
        lines.Add($"A short circuit: at least {Figures.Digits(answer.ShortCircuitA, 3)} A by DC resistance (does the fuse clear?), up to {Figures.Digits(answer.ProspectiveShortCircuitA, 3)} A at the first instant (what must it break?).");
        lines.Add($"After balancing: {Figures.Digits(answer.AfterBalance.UsableAh, 4)} Ah, {Figures.Digits(answer.AfterBalance.UsableWh, 4)} Wh; then {Next(answer.AfterBalance.NextBottleneck)} ends it.");
        lines.AddRange(answer.AfterReplacement.Select(after =>
            $"Groups {string.Join(", ", after.Groups)} replaced and balanced: {Figures.Digits(after.UsableAh, 4)} Ah, {Figures.Digits(after.UsableWh, 4)} Wh; then {Next(after.NextBottleneck)} ends it."));
        if (answer.Sensitivity.Count > 0)
            lines.Add("What matters most: " + string.Join("; ", answer.Sensitivity.Select(change => $"{change.Name} {Signed(change.Wh)} Wh")) + ".");
        if (answer.Charger is { } charger)
            lines.Add($"Charger: {Figures.Fixed(charger.SetV, 2)} V, {Figures.Digits(charger.CurrentA, 3)} A, ends below {Figures.Digits(charger.EndA, 2)} A, about {Figures.Digits(charger.Hours, 2)} h; the cells' data sheet comes first.");
        lines.AddRange(StartingPointWords.Lines(answer.StartingPoints.Basis));
        lines.AddRange(answer.NotChecked.Select(open => $"Not checked: {open.Code}, {open.Why}."));
        return lines;
    }

    /// <summary>The list from nominal to usable.</summary>
    /// <param name="answer">The answer.</param>
    /// <returns>The table.</returns>
    public static MainTable Table(EnergyAnswer answer) => new(
        ["step", "wh"],
        [["on the label", answer.NominalWh], .. answer.Losses.Select(loss => (IReadOnlyList<object?>)[loss.Name, loss.Wh]), ["usable", answer.UsableWh]]);

    /// <summary>What is said of a load that the pack cannot carry for an instant.</summary>
    /// <param name="group">Number of the lowest group.</param>
    /// <param name="byController">True where the controller's limit comes first.</param>
    public static string AtOnce(int group, bool byController) =>
        (byController ? $"The load ends it at once: the pack falls below the controller's limit, group {group} lowest."
            : $"The load ends it at once: group {group} falls below its cut-off in the first instant.")
        + " The pack cannot carry it; a smaller load gets at the charge.";

    // Of many like groups one is surely weaker than it reads: then the figure of the readings lies above what is likely.
    private static string Spread(EnergyAnswer answer) => answer.UsableWh >= answer.UsableWhRange.Low && answer.UsableWh <= answer.UsableWhRange.High
        ? $"+/- {Figures.Digits(answer.SpreadWh, 2)}"
        : $"as read, likely {Figures.Digits(answer.UsableWhRange.Low, 4)} to {Figures.Digits(answer.UsableWhRange.High, 4)}";

    private static string Ends(EndsAtJson ends) => (ends.Reason == "cell-cut-off", ends.Alike > 1) switch
    {
        (true, false) => $"Group {ends.Group} ends it at its cut-off; the pack then gives {Figures.Fixed(ends.PackV, 1)} V.",
        (true, true) => $"A group ends it at its cut-off, group {ends.Group} by the readings, but {ends.Alike} are equal within their noise; the pack then gives {Figures.Fixed(ends.PackV, 1)} V.",
        (false, false) => $"The controller's low-voltage limit ends it at {Figures.Fixed(ends.PackV, 1)} V; group {ends.Group} is then the lowest.",
        (false, true) => $"The controller's low-voltage limit ends it at {Figures.Fixed(ends.PackV, 1)} V.",
    };

    private static HeatJson Heat(HeatParts heat) => new(
        heat.Riding?.CellsW, heat.Riding?.LinksW, heat.Riding?.PerCellW, heat.Riding?.PerLinkW, heat.Riding?.PerJointW, Rise(heat.Riding),
        heat.Peak is { } peak
            ? new PeakHeatJson(peak.LoadA, peak.Seconds, peak.CellsW, peak.LinksW, peak.PerCellW, peak.PerLinkW, peak.PerJointW, Rise(peak))
            : null);

    private static RangeJson? Rise(HeatAt? at) => at?.RiseK is { } rise ? new RangeJson(rise.Low, rise.High) : null;

    private static IEnumerable<string> HeatLines(HeatJson heat)
    {
        yield return Parts("Heat", heat.Cells, heat.Links, heat.PerCell, heat.PerLink, heat.PerJoint) + Rises(heat.CellRiseKPerMinute, "each minute");
        if (heat.Peak is { } peak)
            yield return Parts($"At the peak of {Figures.Digits(peak.LoadA, 3)} A", peak.Cells, peak.Links, peak.PerCell, peak.PerLink, peak.PerJoint)
                + Rises(peak.CellRiseK, $"in {Figures.Digits(peak.Seconds, 3)} s");
    }

    private static string Parts(string when, double? cells, double? links, double? cell, double? link, double? joint) =>
        $"{when}: cells {Figures.Digits(cells, 3)} W, links {Figures.Digits(links, 3)} W; one cell {Figures.Digits(cell, 2)} W, one link {Figures.Digits(link, 2)} W, one joint {Figures.Digits(joint, 2)} W.";

    private static string Rises(RangeJson? rise, string inTime) => rise is null
        ? ""
        : $" If no heat left it, a cell would warm by {Figures.Digits(rise.Low, 2)} to {Figures.Digits(rise.High, 2)} K {inTime}.";

    private static LossJson[] Steps(IEnumerable<LossStep> steps) => [.. steps.Select(step => new LossJson(step.Name, step.Wh))];

    private static string Next(int? group) => group is { } number ? $"group {number}" : "the controller's limit";

    private static string Signed(double? wh) => wh is { } known && Math.Round(known) > 0 ? "+" + Figures.Fixed(known, 0) : Figures.Fixed(wh, 0);
}
