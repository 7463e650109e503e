using PackPlanner.Core.Jobs;
using PackPlanner.Core.UsableEnergy;
using PackPlanner.Screens.Drawing;

namespace PackPlanner.Screens.EnergyScreen;

/// <summary>The list from the label to usable, line by line.</summary>
internal static class EnergyLines
{
    internal static IReadOnlyList<(string Name, string Says, double? Wh)> Of(EnergyQuestion.Answered known, JobGivens givens, Look look)
    {
        EnergyRequest request = known.Request;
        EnergyBudget budget = known.Budget;
        return
        [
            ("new, as on the label", $"{request.Groups.Count} x {look.Figure(request.LabelV, 2)} V x {look.Figure(request.LabelAh, 2)} Ah", budget.NominalWh),
            .. budget.Losses.Select(loss => (loss.Name, Says(loss, request, budget, look), loss.Wh)),
            ("usable", givens.NumberOf("whPerKm") is > 0 and { } use ? $"{look.Distance(budget.UsableWh / use)} at {look.Figure(use, 0)} Wh/km" : "", (double?)budget.UsableWh),
            ("ends at", EnergyPicture.Ends(budget, look), null),
        ];
    }

    /// <summary>Remedies and what they give.</summary>
    internal static IReadOnlyList<(string Word, string Says)> Remedies(EnergyQuestion.Answered known, Look look)
    {
        EnergyBudget budget = known.Budget;
        string Gain(UsableAfter after) => $"{(after.UsableWh >= budget.UsableWh ? "+" : "")}{look.Figure(after.UsableWh - budget.UsableWh, 0)} Wh";
        return
        [
            ("balance all to full", Gain(budget.AfterBalance)),
            .. budget.AfterReplacement.Select(after => ($"new group{(after.Groups.Count > 1 ? "s" : "")} {string.Join(", ", after.Groups)}", Gain(after))),
        ];
    }

    internal static WhereFrom? WhereFrom(EnergyQuestion.Answered known, int row, JobGivens givens, Look look)
    {
        IReadOnlyList<(string Name, string Says, double? Wh)> lines = Of(known, givens, look);
        if (row >= lines.Count)
            return null;
        (string name, string says, double? wh) = lines[row];
        List<(string, string)> words = [];
        if (says.Length > 0)
            words.Add(("from", says));
        words.Add(("rule", row == 0 || name is "usable" or "ends at"
            ? "groups in series carry one current; the first that is full ends the charge, the first loaded cut-off ends the ride"
            : "the difference of two discharges that differ in this one thing, taken in this order, so that the list adds up"));
        if (name == "usable")
            words.Add(("spread", $"{look.Figure(known.Budget.Spread.LowWh, 0)} to {look.Figure(known.Budget.Spread.HighWh, 0)} Wh nine times in ten, from how well capacity tests repeat"));
        words.Add(("method", "docs/methods/energy.md"));
        return new WhereFrom(wh is null ? name : $"{look.Figure(wh, 0)} Wh ({name})", words);
    }

    private static string Says(LossStep loss, EnergyRequest request, EnergyBudget budget, Look look) => loss.Name switch
    {
        "ageing" => $"groups hold {look.Figure(request.Groups.Average(group => group.CapacityAh), 2)} of {look.Figure(request.LabelAh, 2)} Ah",
        "weakest group" => $"{look.Figure(request.Groups.Min(group => group.CapacityAh), 2)} Ah",
        "temperature" => look.Temperature(request.TemperatureDegC),
        "reserve" => look.Percent(request.ReserveFraction, 0),
        "controller's low-voltage limit" => $"{look.Figure(request.PackEmptyV, 1)} V",
        _ when loss.Wh is null => "not known: a reading is missing",
        _ when loss.Name.Contains("heat", StringComparison.Ordinal) => $"at {look.Figure(budget.EffectiveA, 1)} A",
        _ => "",
    };
}
