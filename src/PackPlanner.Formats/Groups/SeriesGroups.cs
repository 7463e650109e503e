using System.Text.Json;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Diagnosis;
using PackPlanner.Core.Packs;
using PackPlanner.Core.UsableEnergy;
using PackPlanner.Formats.Json;
using PackPlanner.Formats.Words;

namespace PackPlanner.Formats.Groups;

/// <summary>The groups of a series string, from a table or from an answer of <c>match</c> or <c>diagnose</c>.</summary>
/// <param name="Groups">In series order.</param>
/// <param name="OnlyFirstInstant">True where the resistances are 1 kHz ones.</param>
/// <param name="Understood">What was assumed, one sentence each.</param>
public sealed record SeriesGroups(IReadOnlyList<SeriesGroup> Groups, bool OnlyFirstInstant, IReadOnlyList<string> Understood)
{
    // A full group reads a little above 1 where it was measured against its rating; what lies further is another unit or a slip. Our choice.
    private const double MostCharge = 1.05;

    // Numbers beyond it are serial numbers, of which most are always absent.
    private const int MostNamed = 1000;

    /// <summary>Reads the groups.</summary>
    /// <param name="input">What the user named.</param>
    /// <returns>The groups, or what is missing.</returns>
    public static Outcome<SeriesGroups> Read(GroupInput input) =>
        input.Case is { } json ? FromJson(json) : FromRows(input.Rows, input.Name);

    private static Outcome<SeriesGroups> FromJson(JsonInput json)
    {
        List<string> understood = [];
        IReadOnlyList<JsonInput> parts = json.Parts("groups");
        if (json.Wrong is null && parts.Count == 0)
            return Refusal.Input("no-groups", json.File, "it names no groups", "Give the answer of match --json, or a list \"groups\" with capacityAh and resistanceMilliohm.");
        // Match names the group whose largest cell takes most; of the others it is known only that theirs take less.
        JsonInput? share = json.Raw("largestShare") is { ValueKind: JsonValueKind.Object } ? json.Part("largestShare") : null;
        (int? shareOf, double? timesEqual) = (share?.Whole("group"), share?.Number("timesEqual", 0));
        List<SeriesGroup> groups = [];
        foreach (JsonInput part in parts)
        {
            int number = part.Whole("group", 1) ?? groups.Count + 1;
            double? capacityAh = Likely(part, "capacityAh");
            if (capacityAh is null)
                part.Refuse("capacityAh", $"is not known for group {number}", "Measure it; without the capacity of every group the weakest one is not known.");
            else if (capacityAh <= 0)
                part.Refuse("capacityAh", $"is {capacityAh} for group {number}, it must be above 0", "Correct the figure.");
            double? milliohm = Positive(part, "resistanceMilliohm");
            int? parallel = part.Raw("cells") is { ValueKind: JsonValueKind.Array } cells && cells.GetArrayLength() > 0 ? cells.GetArrayLength() : part.Whole("parallel", 1);
            groups.Add(new SeriesGroup(
                number, capacityAh ?? 1, milliohm, Likely(part, "stateOfCharge"), parallel,
                Positive(part, "acResistanceMilliohm"), number == shareOf ? timesEqual : null)
            {
                CapacitySigmaAh = Sigma(part, "capacityAh"),
                ResistanceSigmaMilliohm = Sigma(part, "resistanceMilliohm"),
                StateOfChargeSigma = Sigma(part, "stateOfCharge"),
            });
        }

        if (json.Wrong is { } wrong)
            return wrong;
        return Checked(WithOffsets(groups, parts, understood), false, json.File, understood);
    }

    // An answer of diagnose tells where the groups stand against the median group only: the fullest is then taken as full.
    private static List<SeriesGroup> WithOffsets(List<SeriesGroup> groups, IReadOnlyList<JsonInput> parts, List<string> understood)
    {
        double?[] offsets = [.. parts.Select(part => Likely(part, "stateOfChargeOffset"))];
        if (groups.Any(group => group.StateOfChargeFraction is not null) || offsets.Any(offset => offset is null))
            return groups;
        understood.Add("Charge offsets are taken from the log's answer; the fullest group is taken as full.");
        double most = offsets.Max()!.Value;
        return [.. groups.Select((group, g) => group with
        {
            StateOfChargeFraction = 1 + offsets[g] - most,
            StateOfChargeSigma = Sigma(parts[g], "stateOfChargeOffset"),
        })];
    }

    private static Outcome<SeriesGroups> FromRows(IReadOnlyList<CellRow> rows, string file)
    {
        List<string> understood = [];
        if (rows.Count == 0)
            return Refusal.Input("no-groups", file, "it holds no rows", "Give a table with group, capacityAh and resistanceMilliohm.");
        if (rows.Where(row => row.CapacityAh is not > 0).Select(row => row.Label).ToArray() is [_, ..] lacking)
            return Refusal.Input("no-capacity", file, $"no capacity above 0 for {string.Join(", ", lacking.Take(5))}{(lacking.Length > 5 ? $" and {lacking.Length - 5} more" : "")}",
                "Measure it; without the capacity of every group the weakest one is not known.");
        bool grouped = rows.Any(row => row.Group is not null);
        if (!grouped)
            understood.Add("The table has no group numbers: each row is taken as one group in series, in the order of the table.");
        (int Number, IReadOnlyList<CellRow> Cells)[] parts = grouped
            ? [.. CellGroups.Of(rows, understood).Select(group => (group.Group, group.Cells))]
            : [.. rows.Select((row, i) => (i + 1, (IReadOnlyList<CellRow>)[row]))];
        SeriesGroup[] groups = [.. parts.Select(part => Together(part.Number, part.Cells))];
        // A row that is a whole group is named by its number.
        if (parts.Any(part => part.Cells.Count > 1))
            groups = MissingResistances.Filled(groups, [.. parts.Select(part => (IReadOnlyList<(string, double?)>)[.. part.Cells.Select(cell => (cell.Label, cell.ResistanceMilliohm))])]);
        groups = AgainstOneAnother(groups, [.. rows], understood);
        understood.AddRange(CellGroups.Kinds([.. rows]));
        bool onlyFirstInstant = ResistanceKinds.TellOnlyFirstInstant(rows.Select(row => (row.ResistanceMilliohm, row.ResistanceKind)));
        return Checked(groups, onlyFirstInstant, file, understood);
    }

    // Offsets say only how the groups stand against one another: the fullest is then taken as full.
    private static SeriesGroup[] AgainstOneAnother(SeriesGroup[] groups, CellRow[] rows, List<string> understood)
    {
        if (groups.Length == rows.Length && rows.All(row => row.ChargeOffsetAh is not null) && groups.All(group => group.StateOfChargeFraction is null))
        {
            understood.Add("Charge offsets are ampere-hours against one another, negative for less full; the fullest group is taken as full.");
            Dictionary<int, double> offsetAh = rows.Select((row, i) => (Number: row.Group ?? i + 1, row.ChargeOffsetAh)).ToDictionary(row => row.Number, row => row.ChargeOffsetAh!.Value);
            double mostAh = offsetAh.Values.Max();
            return [.. groups.Select(group => group with { StateOfChargeFraction = 1 + (offsetAh[group.Number] - mostAh) / group.CapacityAh })];
        }

        if (!groups.All(group => group.StateOfChargeFraction is not null) || !AreOffsets(groups.Select(group => group.StateOfChargeFraction)))
            return groups;
        understood.Add(OffsetsUnderstood);
        double most = groups.Max(group => group.StateOfChargeFraction!.Value);
        return [.. groups.Select(group => group with { StateOfChargeFraction = 1 + group.StateOfChargeFraction - most })];
    }

    /// <summary>What is said where a column of states of charge holds offsets.</summary>
    public const string OffsetsUnderstood = "A state of charge below zero is an offset against the other groups; the fullest group is taken as full.";

    /// <summary>True where states of charge are offsets against one another, because no group can hold less than nothing.</summary>
    /// <param name="fractions">The states of charge.</param>
    /// <returns>Whether one of them is below zero.</returns>
    public static bool AreOffsets(IEnumerable<double?> fractions) => fractions.Any(fraction => fraction < 0);

    private static SeriesGroup Together(int number, IReadOnlyList<CellRow> cells)
    {
        double? charge = cells.All(row => row.StateOfChargeFraction is not null)
            ? cells.Sum(row => row.StateOfChargeFraction!.Value * row.CapacityAh!.Value) / cells.Sum(row => row.CapacityAh!.Value)
            : null;
        double? milliohm = ParallelResistance.Of(cells, row => row.ResistanceMilliohm);
        double? share = cells.Count > 1 && milliohm is { } whole ? cells.Max(row => whole / row.ResistanceMilliohm!.Value) * cells.Count : null;
        return new SeriesGroup(
            number, cells.Sum(row => row.CapacityAh!.Value), milliohm, charge, cells.Count > 1 ? cells.Count : null,
            ParallelResistance.Of(cells, row => row.AcResistanceMilliohm), share);
    }

    private static Outcome<SeriesGroups> Checked(IReadOnlyList<SeriesGroup> groups, bool onlyFirstInstant, string file, List<string> understood)
    {
        int charged = groups.Count(group => group.StateOfChargeFraction is not null);
        if (charged > 0 && charged < groups.Count)
        {
            int[] without = [.. groups.Where(group => group.StateOfChargeFraction is null).Select(group => group.Number)];
            return Refusal.Input("charge-of-some", file,
                $"{charged} of {groups.Count} groups have a state of charge; none that can be read stands for {string.Join(", ", without.Take(5))}{(without.Length > 5 ? $" and {without.Length - 5} more" : "")}",
                "Give it for all groups, from 0 to 1 or in percent, or for none.");
        }

        if (groups.FirstOrDefault(group => group.StateOfChargeFraction is < -0.5 or > MostCharge) is { } odd)
            return Refusal.Input("charge-outside", file, $"group {odd.Number} has a state of charge of {Figures.Digits(odd.StateOfChargeFraction!.Value, 3)}, and no group holds more than 1", "Give it as a fraction from 0 to 1, or in percent with the unit in the heading.");
        if (groups.GroupBy(group => group.Number).FirstOrDefault(same => same.Count() > 1) is { } twice)
            return Refusal.Input("group-twice", file, $"group {twice.Key} stands twice", "Number each group once.");
        int highest = groups.Max(group => group.Number);
        int[] absent = [.. Enumerable.Range(1, Math.Min(highest, MostNamed)).Except(groups.Select(group => group.Number)).Take(4)];
        if (absent.Length > 0)
            understood.Add($"There is no group {string.Join(", ", absent.Take(3))}{(absent.Length > 3 ? " and so on" : "")}, though groups are numbered up to {highest}: the pack is taken to have {groups.Count} in series.");
        return new SeriesGroups(groups, onlyFirstInstant, understood);
    }

    private static double? Positive(JsonInput part, string name)
    {
        double? figure = Likely(part, name);
        return figure <= 0 ? part.Refuse(name, $"is {figure}, it must be above 0", "Correct the figure, or leave it out.") : figure;
    }

    // A figure stands alone, or as the middle of a range.
    internal static double? Likely(JsonInput part, string name) => part.Raw(name) is { ValueKind: JsonValueKind.Object }
        ? part.Part(name)!.Number("value")
        : part.Number(name);

    /// <summary>One standard deviation of a figure that stands with its 90 % range; null where it stands alone.</summary>
    internal static double? Sigma(JsonInput part, string name)
    {
        if (part.Raw(name) is not { ValueKind: JsonValueKind.Object } || part.Part(name) is not { } range
            || range.Number("low") is not { } low || range.Number("high") is not { } high)
            return null;
        return low <= high
            ? new Ranged(0, low, high).Sigma
            : range.Refuse("low", $"is {low}, above high, {high}", "Exchange the two.");
    }
}
