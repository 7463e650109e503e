using PackPlanner.Core.Cells;
using PackPlanner.Core.Diagnosis;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.UsableEnergy;
using PackPlanner.Formats.Json;
using PackPlanner.Formats.Words;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.EnergyScreen;

/// <summary>One line of the step: a figure, and what it comes from.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Says">Where it comes from, in short.</param>
/// <param name="Figure">The figure with its unit; "-" when it is unknown, empty where there is none.</param>
/// <param name="Rule">The rule behind it, in words.</param>
/// <param name="IsTotal">Stands out: the label, usable, and the heads of the parts below.</param>
internal sealed record EnergyLine(string Name, string Says, string Figure, string Rule, bool IsTotal = false)
{
    /// <summary>What the line is the same by while its words change.</summary>
    internal string Key { get; init; } = Name;

    /// <summary>The figures that the rule was given, so that it can be done again by hand; null where they stand elsewhere.</summary>
    internal string? Reckoned { get; init; }
}

/// <summary>The list from the label to usable, line by line, and below it volts, heat, short circuit and starting points.</summary>
internal static class EnergyLines
{
    private const string Difference = "the difference of two discharges that differ in this one thing, taken in this order, so that the list adds up";
    private const string Series = "groups in series carry one current; the first that is full ends the charge, the first loaded cut-off ends the ride";

    internal static IReadOnlyList<EnergyLine> Of(StringFigures known, EnergyDraws? drawn, LoadedRecovery? log, JobGivens givens, Look look)
    {
        EnergyRequest request = known.Request;
        EnergyBudget budget = known.Budget;
        return
        [
            new("new, as on the label", $"{request.Groups.Count} x {look.Figure(request.LabelV, 2)} V x {look.Figure(request.LabelAh, 2)} Ah", Wh(budget.NominalWh, look), Series, IsTotal: true),
            .. budget.Losses.Select(loss => new EnergyLine(loss.Name, Says(loss, request, budget, look), Change(loss.Wh, look), Difference)),
            new("usable", givens.NumberOf("whPerKm") is > 0 and { } use ? $"{look.Distance(budget.UsableWh / use)} at {look.Use(use)}" : "", Wh(budget.UsableWh, look), Series, IsTotal: true),
            .. log is null ? [] : new[] { new EnergyLine("as 7 Log counts it", $"{look.Figure(log.CurrentA, 0)} A, its own curve and sag", Wh(log.UsableWhNow, look), TwoCounts.Why) },
            .. Drawn(drawn, look),
            new("ends at", EnergyPicture.Ends(known, look), "", Series),
            .. Volts(request, look),
            .. Heat(budget.Heat, request, look),
            .. Shorted(known, look),
            .. Charger(known, look),
        ];
    }

    // What was drawn stands below the figure whose spread it is; a stop keeps the draws that were done.
    private static IEnumerable<EnergyLine> Drawn(EnergyDraws? drawn, Look look)
    {
        if (drawn is not null)
            yield return new(
                $"{look.Figure(drawn.Draws, 0)} draws{(drawn.WasStopped ? ", stopped" : "")}", $"{look.Figure(drawn.LowWh, 0)} to {look.Figure(drawn.HighWh, 0)} Wh, nine in ten", Wh(drawn.MedianWh, look),
                "each draw moves every reading as such readings repeat and rides the pack anew; the figure is the middle draw")
            { Key = "draws" };
    }

    /// <summary>Remedies and what they give.</summary>
    internal static IReadOnlyList<(string Word, string Says)> Remedies(EnergyBudget budget, Look look)
    {
        string Gain(UsableAfter after) => Change(after.UsableWh - budget.UsableWh, look);
        List<(string, string)> gives = [("balance all to full", Gain(budget.AfterBalance))];
        // Groups that are alike need no row each to say that a new one gives nothing.
        if (budget.AfterReplacement.Count > 0 && budget.AfterReplacement.All(after => Math.Abs(after.UsableWh - budget.UsableWh) < 0.5))
            gives.Add(($"{budget.AfterReplacement.Count} weakest groups new", Change(0, look)));
        else
            gives.AddRange(budget.AfterReplacement.Select(after => ($"new group{(after.Groups.Count > 1 ? "s" : "")} {string.Join(", ", after.Groups)}", Gain(after))));
        return gives;
    }

    /// <summary>What matters most: one change each, the largest first.</summary>
    internal static IReadOnlyList<(string Word, string Says)> Changes(EnergyBudget budget, Look look) =>
        [.. budget.Sensitivity.Select(step => (step.Name, Change(step.Wh, look)))];

    /// <param name="known">The figures.</param>
    /// <param name="line">The line under the cursor.</param>
    /// <param name="log">What a log says of the same pack under its own load; null where the groups come from cells.</param>
    /// <param name="look">Signs and units.</param>
    internal static WhereFrom WhereFrom(StringFigures known, EnergyLine line, LoadedRecovery? log, Look look)
    {
        List<(string, string)> words = [];
        if (line.Says.Length > 0)
            words.Add(("from", line.Says));
        words.Add(("rule", line.Rule));
        if (line.Reckoned is { } reckoned)
            words.Add(("reckoned", reckoned));
        if (line.Name == "usable")
            words.Add(("range", $"{look.Figure(known.Budget.Spread.LowWh, 0)} to {look.Figure(known.Budget.Spread.HighWh, 0)} Wh nine times in ten, from how well capacity tests repeat"));
        if (line.Name == "usable" && log is { } ride)
            words.Add(("7 Log", $"{TwoCounts.OfLog(ride, look)}. {TwoCounts.Why}"));
        words.Add(("method", "docs/methods/energy.md, docs/methods/conductors.md"));
        return new WhereFrom(line.Figure.Length == 0 ? line.Name : $"{line.Figure} ({line.Name})", words);
    }

    // What rounds to nothing has no sign.
    private static string Change(double? wh, Look look) => (wh >= 0.5 ? "+" : "") + Wh(wh, look);

    private static string Wh(double? wh, Look look) => wh is null ? "-" : Math.Abs(wh.Value) < 1e7 ? look.Figure(wh, 0) + " Wh" : look.Figure(wh / 1e6, 0) + " MWh";

    private static string Says(LossStep loss, EnergyRequest request, EnergyBudget budget, Look look) => loss.Name switch
    {
        "ageing" => $"groups hold {look.Figure(request.Groups.Average(group => group.CapacityAh), 2)} of {look.Figure(request.LabelAh, 2)} Ah",
        "weakest group" => $"{look.Figure(request.Groups.Min(group => group.CapacityAh), 2)} Ah",
        "temperature" => look.Temperature(request.TemperatureDegC),
        "reserve" => look.Percent(request.ReserveFraction, 0),
        "controller's low-voltage limit" => $"{look.Figure(request.PackEmptyV, 1)} V",
        _ when loss.Wh is null => "not known: a reading is missing",
        _ when loss.Name.Contains("heat", StringComparison.Ordinal) => $"at {look.Figure(budget.EffectiveA, 1)} A{(request.TemperatureDegC is null || loss.Name.Contains("links", StringComparison.Ordinal) ? "" : $", {look.Temperature(ColdCapacity.TestDegC)}")}",
        _ => "",
    };

    private static IEnumerable<EnergyLine> Volts(EnergyRequest request, Look look)
    {
        int series = request.Groups.Count;
        const string Rule = "groups in series times the volts of one group; the controller must bear the full pack and still run on the empty one";
        string high = (request.ControllerMaxV - series * request.ChargedToV) switch
        {
            null => "controller's highest not said",
            < 0 and var over => $"{look.Figure(-over, 1)} V ABOVE what the controller bears",
            var under => $"{look.Figure(under, 1)} V below the controller's highest",
        };
        string low = (series * request.EndsAtV - request.PackEmptyV) switch
        {
            null => "controller's lowest not said",
            < 0 and var sooner => $"controller stops {look.Figure(-sooner, 1)} V sooner",
            var above => $"{look.Figure(above, 1)} V above the controller's lowest",
        };
        yield return new("pack volts, full", high, look.Figure(series * request.ChargedToV, 1) + " V", Rule, IsTotal: true);
        yield return new("pack volts, nominal", "", look.Figure(series * request.LabelV, 1) + " V", Rule);
        yield return new("pack volts, empty", low, look.Figure(series * request.EndsAtV, 1) + " V", Rule);
    }

    private static IEnumerable<EnergyLine> Heat(HeatParts heat, EnergyRequest request, Look look)
    {
        foreach ((HeatAt? at, string when) in new[] { (heat.Riding, "riding"), (heat.Peak, "at the peak") })
        {
            if (at is null)
                continue;
            // A load that nobody means still stands in its column.
            string W(double? watts, int decimals) => watts is null ? "-" : watts < 1e6 ? look.Figure(watts, decimals) + " W" : look.Figure(watts / 1e6, 0) + " MW";
            string rises = at.RiseK is { } rise
                ? $"; a cell would warm {look.Figure(rise.Low, 1)} to {look.Figure(rise.High, 1)} K in {look.Figure(at.Seconds, 0)} s"
                : request.CellMassKg is null ? "" : "; how long it lasts is not said";
            const string Rule = "current squared times DC resistance; the warming counts no cooling at all, so it is the most that can be";
            yield return new($"heat in cells, {when}", $"at {look.Figure(at.LoadA, 1)} A; one cell {W(at.PerCellW, 2)}{rises}", W(at.CellsW, 1), Rule, IsTotal: true) { Reckoned = InCells(at, request, look) };
            yield return new($"heat in links, {when}", $"one link {W(at.PerLinkW, 2)}, one joint {W(at.PerJointW, 3)}", W(at.LinksW, 1), Rule)
            {
                Reckoned = at.LinksMilliohm is { } links ? $"{look.Figure(at.LoadA, 1)} A squared x {look.Figure(links, 1)} mΩ of links, joints and leads, which the cold leaves alone" : null,
            };
        }
    }

    private static string? InCells(HeatAt at, EnergyRequest request, Look look)
    {
        if (at.CellsMilliohm is not { } milliohm)
            return null;
        string cold = at.WarmthFactor == 1 ? "" : $" x {look.Figure(at.WarmthFactor, 2)} at {look.Temperature(request.TemperatureDegC)}, as resistances were measured at {look.Temperature(ColdCapacity.TestDegC)}";
        string supposed = MissingResistances.Supposed(request.Groups) is { } words ? $"; {look.Prose(words)}" : "";
        return $"{look.Figure(at.LoadA, 1)} A squared x {look.Figure(milliohm, 1)} mΩ, the sum of all groups (3 Groups shows each){cold}{supposed}";
    }

    private static IEnumerable<EnergyLine> Shorted(StringFigures known, Look look)
    {
        bool first = true;
        foreach (BasisJson row in StartingPointWords.Basis(known))
        {
            string figure = row.Value is { } value ? $"{look.Figure(value, value < 10 ? 1 : 0)} {row.Unit}" : "-";
            // The words after a colon with dashes are those of the command line.
            string from = row.From.Contains(": --", StringComparison.Ordinal) ? row.From[..row.From.IndexOf(": --", StringComparison.Ordinal)] + "; e says it" : row.From;
            yield return new(first ? "fuse to start from" : row.Name, look.Prose(from), figure, StartingPointWords.NeverFinal, IsTotal: first);
            first = false;
        }
    }

    private static IEnumerable<EnergyLine> Charger(StringFigures known, Look look)
    {
        if (ChargerSettings.Of(known.Request, known.Protection) is not { } set)
            yield break;
        const string Rule = "the cells' data sheet comes first; volts are those of one full group times the groups, the current is the charger's, and what the cold allows goes by the smallest group";
        string most = set.HighestA is { } highestA
            ? $"{(set.CurrentA > highestA ? "ABOVE" : "within")} {look.Figure(highestA, 1)} A at {look.Temperature(known.Protection.ChargeDegC ?? known.Request.TemperatureDegC)}"
            : "temperature limit not known";
        yield return new("charger set to", $"{known.Request.Groups.Count} x {look.Figure(known.Request.ChargedToV, 2)} V", look.Figure(set.PackV, 1) + " V", Rule, IsTotal: true);
        yield return new("charging current", most, look.Figure(set.CurrentA, 1) + " A", Rule);
        yield return new("charge ends below", "at the charger's volts", look.Figure(set.TaperA, 2) + " A", Rule);
        yield return new("hours from empty", "smallest group, and half an hour", look.Figure(set.Hours, 1) + " h", Rule);
    }
}
