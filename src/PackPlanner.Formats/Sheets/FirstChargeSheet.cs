using System.Globalization;
using PackPlanner.Core.Cautions;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.UsableEnergy;

namespace PackPlanner.Formats.Sheets;

/// <summary>Charger settings, and readings to take while the pack is charged for the first time.</summary>
internal static class FirstChargeSheet
{
    internal static IReadOnlyList<SheetPage> Pages(SheetInput input) =>
    [
        SheetPage.OfTall("Charger and first charge", Settings(input), [.. Unsuited(input).Select(caution => caution.Code).Distinct(), "caution-28"]),
        .. SheetPage.Rows(
            "Volts of each group during the first charge",
            $"<p>No group may pass {Html.Figure(input.Job.Givens.FullV, 2)} V. One that runs ahead or stays behind: stop and find out why.</p>\n",
            ["group", "before", "after 10 min", "half", "full"],
            [.. input.Groups.Select((_, i) => (IReadOnlyList<string>)[$"<b class=\"num\">{(i + 1).ToString(CultureInfo.InvariantCulture)}</b>", Html.Box, Html.Box, Html.Box, Html.Box])],
            14,
            "caution-28"),
    ];

    // As the energy of the job judges it, so that screen, verb and paper agree.
    private static IEnumerable<Caution> Unsuited(SheetInput input) => input.Cautions.Where(caution => caution.Code == "caution-32");

    // What the user gave comes before what the chemistry has.
    private static string SourceOf(JobGivens givens, string key) =>
        givens.NumberOf(key) is not null ? "given" : givens.Chemistry?.Name ?? "-";

    // What the cold allows may be the least of all; a caution on the same page says it.
    private static (double? Amperes, string LimitedBy) FirstCurrent(SheetInput input)
    {
        JobGivens givens = input.Job.Givens;
        double? leastAh = input.Groups.All(group => group.CapacityAh is not null) ? input.Groups.Min(group => group.CapacityAh) : null;
        double? halfRateA = givens.NumberOf("cellChargeA") is { } cellA ? cellA * input.Groups[0].Cells.Count / 2 : leastAh * 0.25;
        string ofCells = givens.NumberOf("cellChargeA") is null ? "half of 0.5C, which is a quarter of the Ah as amperes; the data sheet comes first" : "half of the cells' charging limit";
        if (halfRateA is not { } half)
            return (null, ofCells);
        double? degC = givens.NumberOf("chargeTemperatureDegC") ?? givens.NumberOf("temperatureDegC");
        double? coldA = givens.Chemistry is { } chemistry && degC is { } told ? ChargeRates.PerHour(chemistry, told) * leastAh : null;
        double? chargerA = givens.NumberOf("chargerA");
        return coldA < half && !(chargerA < coldA) ? (coldA, string.Create(CultureInfo.InvariantCulture, $"cells at {degC:0.#} °C; the data sheet comes first"))
            : chargerA < half ? (chargerA, "your charger")
            : (half, ofCells);
    }

    // Half of a label is judged by what it says, and the other half is named.
    private static string OfCharger(SheetInput input)
    {
        if (Unsuited(input).Any())
            return $"DOES NOT SUIT: {string.Join("; ", Unsuited(input).Select(caution => caution.Saw))}";
        return (input.Job.Givens.NumberOf("chargerV"), input.Job.Givens.NumberOf("chargerA")) switch
        {
            (null, null) => "not given: not checked",
            (_, null) => "your charger; its A is not given: not checked",
            (null, _) => "your charger; its V is not given: not checked",
            _ => "your charger",
        };
    }

    private static string Settings(SheetInput input)
    {
        JobGivens givens = input.Job.Givens;
        Chemistry? chemistry = givens.Chemistry;
        int series = input.Groups.Count;
        double? chargerA = givens.NumberOf("chargerA");
        (double? firstA, string limitedBy) = FirstCurrent(input);
        string cold = chemistry switch
        {
            null => "chemistry not known: by the data sheet",
            { LowestCharging: { } lowest } => string.Create(CultureInfo.InvariantCulture, $"never with cells below {lowest.DegreesCelsius:0} °C; below 10 °C at reduced current"),
            _ => "by the data sheet of the cell",
        };
        (string What, string Value, string From)[] rows =
        [
            ("charger set to", $"{Html.Figure(series * givens.FullV, 1)} V", givens.FullV is { } fullV ? string.Create(CultureInfo.InvariantCulture, $"{series} x {fullV:0.00} V") : "full volts not known"),
            ("first charge at most", $"{Html.Figure(firstA, 1)} A", limitedBy),
            ("full volts of one group", $"{Html.Figure(givens.FullV, 2)} V", SourceOf(givens, "fullV")),
            ("empty volts of one group", $"{Html.Figure(givens.EmptyV, 2)} V", SourceOf(givens, "emptyV")),
            ("cold", Html.Text(cold), "data sheet first"),
            ("charger's own label", Html.Text($"{Words.Figures.Fixed(givens.NumberOf("chargerV"), 1)} V, {Words.Figures.Fixed(chargerA, 1)} A"), OfCharger(input)),
            ("start", "date " + Html.Box, "time " + Html.Box),
            ("cells at the start", "°C " + Html.Box, "warmest after 10 min, °C " + Html.Box),
            ("full", "V " + Html.Box, "Ah " + Html.Box),
        ];
        return Html.Table(["what", "value", "from"], rows.Select(row => (IReadOnlyList<string>)[Html.Text(row.What), row.Value, row.From.StartsWith('<') || row.From.Contains(Html.Box, StringComparison.Ordinal) ? row.From : Html.Text(row.From)]));
    }
}
