using PackPlanner.Core.Packs;
using PackPlanner.Core.UsableEnergy;
using PackPlanner.Formats.Json;

namespace PackPlanner.Formats.Words;

/// <summary>The answer of <c>energy</c> as JSON, as lines and as a table.</summary>
public static class EnergyWords
{
    /// <summary>Fills the answer.</summary>
    /// <param name="request">What was asked.</param>
    /// <param name="budget">What came out.</param>
    /// <param name="shorted">Short-circuit currents.</param>
    /// <param name="whPerKm">Use for each kilometre; null when unknown.</param>
    /// <param name="chargerA">Current of the charger; null when none is named.</param>
    /// <returns>The answer without cautions.</returns>
    public static EnergyAnswer Answer(
        EnergyRequest request, EnergyBudget budget, StringShortCircuit shorted, double? whPerKm, double? chargerA)
    {
        int series = request.Groups.Count;
        double fullV = series * request.ChargedToV;
        double emptyV = series * request.EndsAtV;
        return new EnergyAnswer
        {
            NominalWh = budget.NominalWh,
            Series = series,
            NominalV = request.LabelV,
            RatedAh = request.LabelAh,
            Losses = Steps(budget.Losses),
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
                budget.Hours > 0 ? budget.Hours : null),
            Voltages = new VoltagesJson(fullV, series * request.LabelV, emptyV, request.ControllerMaxV - fullV, emptyV - request.PackEmptyV),
            HeatW = new HeatJson(budget.Heat.CellsW, budget.Heat.LinksW, budget.Heat.PerCellW, budget.Heat.PerLinkW),
            ShortCircuitA = shorted.LowA,
            ProspectiveShortCircuitA = shorted.ProspectiveA,
            AfterBalance = new AfterJson(budget.AfterBalance.UsableAh, budget.AfterBalance.UsableWh, budget.AfterBalance.NextBottleneck),
            AfterReplacement = [.. budget.AfterReplacement.Select(after => new AfterReplacementJson(after.Groups, after.UsableAh, after.UsableWh, after.NextBottleneck))],
            Sensitivity = Steps(budget.Sensitivity),
            Charger = chargerA is { } ampere ? Charger(request, fullV, ampere) : null,
            StartingPoints = null,
            Draws = null,
            NotChecked = [],
        };
    }

    /// <summary>Fuse, cable and pre-charge to start from.</summary>
    /// <param name="request">What was asked.</param>
    /// <param name="budget">What came out.</param>
    /// <param name="shorted">Short-circuit currents.</param>
    /// <param name="cableM">One way from pack to controller, metres; null when not given.</param>
    /// <param name="capacitanceF">Capacitors of the controller, farads; null when not given.</param>
    /// <returns>The figures; null without a load.</returns>
    public static StartingPointsJson? StartingPoints(
        EnergyRequest request, EnergyBudget budget, StringShortCircuit shorted, double? cableM, double? capacitanceF)
    {
        const double mostDrop = 0.01;
        const double wanted = 0.99;
        const double withinS = 0.5;
        if (budget.EffectiveA <= 0)
            return null;
        PreCharge? charge = capacitanceF is { } farads
            ? new PreCharge(request.Groups.Count * request.ChargedToV, PreCharge.LargestResistorOhm(farads, wanted, withinS), farads)
            : null;
        return new StartingPointsJson(
            FuseRule.OverContinuous * budget.EffectiveA,
            FuseRule.NextStandardA(budget.EffectiveA),
            shorted.ProspectiveA,
            cableM is { } metres ? CableTable.SmallestForDrop(budget.EffectiveA, metres, mostDrop * request.Groups.Count * request.LabelV) : null,
            charge?.ResistorOhm,
            charge?.PeakA,
            charge?.ResistorJ);
    }

    /// <summary>Lines for people.</summary>
    /// <param name="answer">The answer.</param>
    /// <returns>The lines.</returns>
    public static IReadOnlyList<string> Lines(EnergyAnswer answer)
    {
        List<string> lines = [];
        string range = answer.RangeKm is { } km ? $", {Figures.Digits(km, 3)} km at {Figures.Digits(answer.WhPerKm, 3)} Wh/km" : "";
        lines.Add($"Usable: {Figures.Digits(answer.UsableWh, 4)} Wh +/- {Figures.Digits(answer.SpreadWh, 2)}, {Figures.Digits(answer.UsableAh, 4)} Ah{range}; at rest {Figures.Digits(answer.UsableAhAtRest, 4)} Ah, {Figures.Digits(answer.UsableWhAtRest, 4)} Wh.");
        lines.Add($"  {"on the label",-42}{Figures.Fixed(answer.NominalWh, 0),8} Wh  ({answer.Series} x {Figures.Fixed(answer.NominalV, 2)} V x {Figures.Digits(answer.RatedAh, 4)} Ah)");
        lines.AddRange(answer.Losses.Select(loss => $"  {loss.Name,-42}{Signed(loss.Wh),8} Wh{(loss.Wh is null ? "  not known" : "")}"));
        lines.Add($"  {"usable",-42}{Figures.Fixed(answer.UsableWh, 0),8} Wh");
        lines.Add(answer.EndsAt.Reason == "cell-cut-off"
            ? $"Group {answer.EndsAt.Group} ends it at its cut-off; the pack then gives {Figures.Fixed(answer.EndsAt.PackV, 1)} V."
            : $"The controller's low-voltage limit ends it at {Figures.Fixed(answer.EndsAt.PackV, 1)} V; group {answer.EndsAt.Group} is then the lowest.");
        lines.Add($"Volts: {Figures.Fixed(answer.Voltages.Full, 1)} full, {Figures.Fixed(answer.Voltages.Nominal, 1)} nominal, {Figures.Fixed(answer.Voltages.Empty, 1)} empty; margin to the controller {Figures.Fixed(answer.Voltages.MarginHigh, 1)} above, {Figures.Fixed(answer.Voltages.MarginLow, 1)} below.");
        lines.Add($"Heat: cells {Figures.Digits(answer.HeatW.Cells, 3)} W, links {Figures.Digits(answer.HeatW.Links, 3)} W; one cell {Figures.Digits(answer.HeatW.PerCell, 2)} W, one link {Figures.Digits(answer.HeatW.PerLink, 2)} W.");
        lines.Add($"A short circuit: at least {Figures.Digits(answer.ShortCircuitA, 3)} A by DC resistance (does the fuse clear?), up to {Figures.Digits(answer.ProspectiveShortCircuitA, 3)} A at the first instant (what must it break?).");
        lines.Add($"After balancing: {Figures.Digits(answer.AfterBalance.UsableAh, 4)} Ah, {Figures.Digits(answer.AfterBalance.UsableWh, 4)} Wh; then {Next(answer.AfterBalance.NextBottleneck)} ends it.");
        lines.AddRange(answer.AfterReplacement.Select(after =>
            $"Groups {string.Join(", ", after.Groups)} replaced and balanced: {Figures.Digits(after.UsableAh, 4)} Ah, {Figures.Digits(after.UsableWh, 4)} Wh; then {Next(after.NextBottleneck)} ends it."));
        if (answer.Sensitivity.Count > 0)
            lines.Add("What matters most: " + string.Join("; ", answer.Sensitivity.Select(change => $"{change.Name} {Signed(change.Wh)} Wh")) + ".");
        if (answer.Charger is { } charger)
            lines.Add($"Charger: {Figures.Fixed(charger.SetV, 2)} V, {Figures.Digits(charger.CurrentA, 3)} A, ends below {Figures.Digits(charger.EndA, 2)} A, about {Figures.Digits(charger.Hours, 2)} h; the cells' data sheet comes first.");
        if (answer.StartingPoints is { } start)
        {
            string cable = start.CableMm2 is { } areaMm2 ? $", flexible cable from {Figures.Digits(areaMm2, 2)} mm2" : "";
            string charge = start.PreChargeOhm is { } ohm ? $", pre-charge through at most {Figures.Digits(ohm, 3)} ohm ({Figures.Digits(start.PreChargePeakA, 2)} A at first, {Figures.Digits(start.PreChargeJ, 2)} J each time)" : "";
            lines.Add($"To start a choice from, never final: fuse {Figures.Digits(start.FuseStandardA, 3)} A (at least {Figures.Digits(start.FuseLeastA, 3)} A){cable}{charge}. Makers' data, local codes and a qualified person decide.");
        }

        lines.AddRange(answer.NotChecked.Select(open => $"Not checked: {open.Code}, {open.Why}."));
        return lines;
    }

    /// <summary>The list from nominal to usable.</summary>
    /// <param name="answer">The answer.</param>
    /// <returns>The table.</returns>
    public static MainTable Table(EnergyAnswer answer) => new(
        ["step", "wh"],
        [["on the label", answer.NominalWh], .. answer.Losses.Select(loss => (IReadOnlyList<object?>)[loss.Name, loss.Wh]), ["usable", answer.UsableWh]]);

    private static LossJson[] Steps(IReadOnlyList<LossStep> steps) => [.. steps.Select(step => new LossJson(step.Name, step.Wh))];

    // The tail at constant volts takes about half an hour more. Common practice, no source.
    private static ChargerJson Charger(EnergyRequest request, double fullV, double chargerA)
    {
        double leastAh = request.Groups.Min(group => group.CapacityAh);
        double? highestA = request.TemperatureDegC is { } degC ? ChargeRates.PerHour(request.Chemistry, degC) * leastAh : null;
        return new ChargerJson(fullV, chargerA, ChargeRates.TaperPerHour(request.Chemistry) * leastAh, leastAh / chargerA + 0.5, highestA);
    }

    private static string Next(int? group) => group is { } number ? $"group {number}" : "the controller's limit";

    private static string Signed(double? wh) => wh is { } known && Math.Round(known) > 0 ? "+" + Figures.Fixed(known, 0) : Figures.Fixed(wh, 0);
}
