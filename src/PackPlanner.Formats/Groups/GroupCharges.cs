using System.Text.Json;
using PackPlanner.Core.Balancing;
using PackPlanner.Core.Cautions;
using PackPlanner.Core.Cells;
using PackPlanner.Formats.Json;

namespace PackPlanner.Formats.Groups;

/// <summary>How full the groups of a JSON answer stand, for levelling them.</summary>
/// <param name="Groups">In the order of the file.</param>
/// <param name="ResistanceMilliohm">Of each group; null where unknown.</param>
/// <param name="Understood">What was assumed, one sentence each.</param>
/// <param name="Cautions">Cautions of the answer for which a group is left out.</param>
public sealed record GroupCharges(
    IReadOnlyList<GroupCharge> Groups, IReadOnlyList<double?> ResistanceMilliohm, IReadOnlyList<string> Understood, IReadOnlyList<Caution> Cautions)
{
    private const string Offset = "stateOfChargeOffset";

    private static readonly string[] Fractions = ["stateOfCharge", Offset];

    /// <summary>Reads an answer of <c>diagnose</c>, or a list of groups written by hand.</summary>
    /// <param name="json">The object.</param>
    /// <param name="chemistry">Tells charge from resting volts; null: unknown.</param>
    /// <returns>The groups, or what is missing.</returns>
    public static Outcome<GroupCharges> Read(JsonInput json, Chemistry? chemistry)
    {
        IReadOnlyList<JsonInput> parts = json.Parts("groups");
        if (json.Wrong is null && parts.Count == 0)
            return Refusal.Input("no-groups", json.File, "it names no groups", "Give the answer of diagnose --json, or a list \"groups\" with capacityAh and stateOfCharge.");
        IReadOnlyList<Caution> cautions = Held(json);
        List<string> understood = [];
        if (!Charges(json, parts, chemistry, understood).Is(out (double? Fraction, double? Sigma, double? LacksAh)[]? charges, out Refusal? why))
            return why;
        List<GroupCharge> groups = [];
        List<double?> milliohms = [];
        for (int g = 0; g < parts.Count; g++)
        {
            JsonInput part = parts[g];
            int number = part.Whole("group", 1) ?? g + 1;
            double? capacityAh = SeriesGroups.Likely(part, "capacityAh");
            if (capacityAh <= 0)
                part.Refuse("capacityAh", $"is {capacityAh} for group {number}, it must be above 0", "Correct the figure.");
            groups.Add(new GroupCharge(
                number, capacityAh, charges[g].Fraction, charges[g].Sigma, charges[g].LacksAh,
                cautions.Any(caution => SafetyHolds.Names(caution.Where, number)))
            {
                CapacitySigmaAh = SeriesGroups.Sigma(part, "capacityAh"),
            });
            milliohms.Add(SeriesGroups.Likely(part, "resistanceMilliohm"));
        }

        if (json.Wrong is { } wrong)
            return wrong;
        if (groups.FirstOrDefault(group => group.Fraction is < -0.5 or > 1.5) is { } odd)
            return Refusal.Input("charge-outside", json.File, $"group {odd.Number} has a state of charge of {odd.Fraction}", "Give it as a fraction from 0 to 1.");
        return groups.GroupBy(group => group.Number).FirstOrDefault(same => same.Count() > 1) is { } twice
            ? Refusal.Input("group-twice", json.File, $"group {twice.Key} stands twice", "Number each group once.")
            : new GroupCharges(groups, milliohms, understood, cautions);
    }

    // The first of: offsets in ampere-hours, states of charge, offsets of charge, resting volts.
    private static Outcome<(double? Fraction, double? Sigma, double? LacksAh)[]> Charges(
        JsonInput json, IReadOnlyList<JsonInput> parts, Chemistry? chemistry, List<string> understood)
    {
        if (parts.All(part => part.Has("chargeOffsetAh")))
        {
            double?[] offsetAh = [.. parts.Select(part => SeriesGroups.Likely(part, "chargeOffsetAh"))];
            understood.Add(OffsetsInAhUnderstood);
            return offsetAh.Select(offset => ((double?)null, (double?)null, offsetAh.Max() - offset)).ToArray();
        }

        // What all groups have comes before what only some have; those without it then cannot be told.
        string? name = Array.Find(Fractions, field => parts.All(part => part.Has(field))) ?? Array.FindLast(Fractions, field => parts.Any(part => part.Has(field)));
        if (name is not null)
            return ByFraction(name, parts, understood);
        if (!parts.Any(part => part.Has("restV")))
            return Refusal.Input("no-charge", json.File, "no group has a state of charge or a charge offset", "Give the answer of diagnose --json, or a table with stateOfCharge or restV.");
        if (chemistry is null)
            return Refusal.Input("no-chemistry", json.File, "resting volts tell the charge only where the chemistry is known", $"Add --chemistry and one of {string.Join(", ", Chemistries.All)}.");
        understood.Add(RestUnderstood(chemistry));
        return parts.Select(part => part.Number("restV") is { } restV && CurveTells.FractionAt(chemistry, restV) is { } told
            ? (told.Fraction, told.Spread, (double?)null)
            : ((double?)null, (double?)null, (double?)null)).ToArray();
    }

    private static (double? Fraction, double? Sigma, double? LacksAh)[] ByFraction(string name, IReadOnlyList<JsonInput> parts, List<string> understood)
    {
        double?[] fractions = [.. parts.Select(part => SeriesGroups.Likely(part, name))];
        if (name == Offset)
            understood.Add("Charge offsets are taken from the log's answer; the fullest group is taken as full.");
        else if (SeriesGroups.AreOffsets(fractions))
            understood.Add(SeriesGroups.OffsetsUnderstood);
        double most = name == Offset || SeriesGroups.AreOffsets(fractions) ? fractions.Max() ?? 1 : 1;
        return [.. fractions.Select((fraction, g) => (1 + fraction - most, SeriesGroups.Sigma(parts[g], name), (double?)null))];
    }

    /// <summary>What is said where offsets are ampere-hours.</summary>
    public const string OffsetsInAhUnderstood = "Charge offsets are ampere-hours against one another, negative for less full.";

    /// <summary>What is said where charge comes from resting volts.</summary>
    /// <param name="chemistry">Whose curve it is read on.</param>
    /// <returns>One sentence.</returns>
    public static string RestUnderstood(Chemistry chemistry) =>
        $"Charge is read from resting volts on the {chemistry.Name} curve; +/- rests on {CurveTells.ReadingV * 1000:0.#} mV of reading.";

    // An answer carries its cautions; those that set a group apart go on with it.
    private static List<Caution> Held(JsonInput json)
    {
        if (json.Raw("cautions") is not { ValueKind: JsonValueKind.Array })
            return [];
        List<Caution> held = [];
        foreach (JsonInput caution in json.Parts("cautions"))
            if (caution.Text("code") is { } code && SafetyHolds.Include(code) && Enum.TryParse(caution.Text("signal"), ignoreCase: true, out SignalWord signal))
                held.Add(new Caution(code, signal, caution.Text("where") ?? "", caution.Text("saw") ?? ""));
        return held;
    }
}
