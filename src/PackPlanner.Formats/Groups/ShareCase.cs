using PackPlanner.Core.Cells;
using PackPlanner.Core.Sharing;
using PackPlanner.Formats.Json;
using PackPlanner.Formats.Words;

namespace PackPlanner.Formats.Groups;

/// <summary>Cells in parallel with their bars, as <c>share</c> takes them from a case file or from a table.</summary>
/// <param name="Groups">The groups, at least one.</param>
/// <param name="LoadA">The load that the case names; null when it names none.</param>
/// <param name="Chemistry">The chemistry that the case names; null when it names none.</param>
/// <param name="Understood">What was assumed, one sentence each.</param>
public sealed record ShareCase(
    IReadOnlyList<ParallelCells> Groups, double? LoadA, Chemistry? Chemistry, IReadOnlyList<string> Understood)
{
    /// <summary>Reads a case file.</summary>
    /// <param name="input">Its outermost object: one group, or a list of them under <c>groups</c>.</param>
    /// <returns>The case, or which field is wrong.</returns>
    public static Outcome<ShareCase> Read(JsonInput input)
    {
        if (input.Text("schema") is "packplanner/match")
        {
            return Refusal.Input("labels-only", input.File, "an answer of match names the cells of each group, not their volts and resistances",
                "Give the table of cells, and with it --places and the answer of fit --groups --json; or the table that match --csv writes.");
        }

        List<string> understood = [];
        IReadOnlyList<JsonInput> parts = input.Has("groups") ? input.Parts("groups") : [input];
        List<ParallelCells> groups = [];
        foreach (JsonInput part in parts)
            if (Group(part, groups.Count + 1, understood) is { } group)
                groups.Add(group);
        double? loadA = input.Number("loadA");
        Chemistry? chemistry = ChemistryOf(input);
        if (input.Wrong is { } wrong)
            return wrong;
        understood.AddRange(input.NotRead);
        return groups.Count > 0
            ? new ShareCase(groups, loadA, chemistry, understood)
            : Refusal.Input("no-cells", input.File, "it names no cells", "Give a list under \"cells\".");
    }

    /// <summary>Whether every piece of every bar has this resistance.</summary>
    /// <param name="milliohm">Resistance of one piece.</param>
    /// <returns>True when all have it.</returns>
    public bool HasLinks(double milliohm) =>
        Groups.All(group => group.PositiveLinkMilliohm.Concat(group.NegativeLinkMilliohm).All(link => link == milliohm));

    private static ParallelCells? Group(JsonInput part, int number, List<string> understood)
    {
        IReadOnlyList<JsonInput> parts = part.Parts("cells");
        if (parts.Count == 0)
        {
            part.Refuse("cells", "names no cell, at least one was expected", "List the cells with openCircuitV and resistanceMilliohm.");
            return null;
        }

        number = part.Whole("group", 1) ?? number;
        CellBranch[] cells = [.. parts.Select(Cell)];
        if (cells.GroupBy(cell => cell.Label).FirstOrDefault(same => same.Count() > 1) is { } twice)
            part.Refuse("cells", $"names {twice.Key} twice", "Give each cell a label of its own.");
        double[] positive = Links(part, "positiveLinkMilliohm", cells.Length, understood);
        double[] negative = Links(part, "negativeLinkMilliohm", cells.Length, understood);
        int positiveAt = TakeOff(part, "positiveAt", cells.Length, understood);
        int negativeAt = TakeOff(part, "negativeAt", cells.Length, understood);
        return new ParallelCells(number, cells, positive, negative, positiveAt, negativeAt);
    }

    private static CellBranch Cell(JsonInput part, int index)
    {
        string label = LabelOf(part) ?? $"cell {index + 1}";
        double? volts = part.Number("openCircuitV", -10, 10);
        double? milliohm = part.Number("resistanceMilliohm");
        if (volts is null && !part.Has("openCircuitV"))
            part.Refuse("openCircuitV", $"is missing for {label}, resting volts were expected", "Measure the cell at rest and give its volts.");
        if (milliohm is null && !part.Has("resistanceMilliohm"))
            part.Refuse("resistanceMilliohm", $"is missing for {label}, its DC resistance was expected", "Measure it and give milliohm.");
        if (milliohm <= 0)
            part.Refuse("resistanceMilliohm", $"is {milliohm} for {label}, it must be above 0", "Correct the figure; a cell of 0 milliohm would carry any current.");
        double? capacityAh = part.Number("capacityAh");
        if (capacityAh <= 0)
            part.Refuse("capacityAh", $"is {capacityAh} for {label}, it must be above 0", "Correct the figure, or leave it out.");
        return new CellBranch(label, volts ?? 0, milliohm ?? 0, capacityAh);
    }

    // A label may be written as text or as a bare number.
    private static string? LabelOf(JsonInput part) => part.Raw("cell") switch
    {
        { ValueKind: System.Text.Json.JsonValueKind.Number } number => number.GetRawText(),
        null => null,
        _ => part.Text("cell"),
    };

    private static double[] Links(JsonInput part, string name, int cells, List<string> understood)
    {
        double[]? links = part.Numbers(name, cells - 1);
        if (links is null)
        {
            if (cells > 1)
                understood.Add($"{name} is not given: this bar is taken to have no resistance.");
            return new double[cells - 1];
        }

        if (links.Any(link => link < 0))
            part.Refuse(name, $"holds {links.First(link => link < 0)}, a link has 0 milliohm or more", "Correct the figure.");
        return links;
    }

    private static int TakeOff(JsonInput part, string name, int cells, List<string> understood)
    {
        int? at = part.Whole(name);
        if (at is null && !part.Has(name) && cells > 1)
            understood.Add($"{name} is not given: the load is taken to leave this bar at cell 1.");
        if (at < 1 || at > cells)
            part.Refuse(name, $"is {at}, it must be the number of a cell from 1 to {cells}", "Count the cells as they stand along the bar.");
        return at ?? 1;
    }

    private static Chemistry? ChemistryOf(JsonInput input)
    {
        if (input.Text("chemistry") is not { } name)
            return null;
        Chemistry? found = Chemistries.Find(name);
        if (found is null)
            input.Refuse("chemistry", $"\"{name}\" is not a chemistry that is known here", ChemistryNames.Remedy(name));
        return found;
    }
}
