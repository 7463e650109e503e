using PackPlanner.Core;
using PackPlanner.Core.Fitting;
using PackPlanner.Core.Sizing;

namespace PackPlanner.Formats.Json;

/// <summary>The space of a sizing need, where it gives one: asks the fit whether a choice really goes in.</summary>
public sealed class SizeSpace
{
    // A tenth of the full search: enough to gain the few places that free packing brings, for each choice in turn.
    private static readonly FitEffort Effort = new(70);

    // By the models themselves: names need not be given, nor differ.
    private readonly Func<SizingCell, FitCase?> caseOf;
    private readonly CancellationToken stopped;
    private readonly Dictionary<FitCase, SpaceLayouts> quick = new(ReferenceEqualityComparer.Instance);
    private readonly Dictionary<FitCase, SpaceLayouts> thorough = new(ReferenceEqualityComparer.Instance);
    private readonly List<string> untried = [];
    private int tried;

    private SizeSpace(Func<SizingCell, FitCase?> caseOf, CancellationToken stopped)
    {
        this.caseOf = caseOf;
        this.stopped = stopped;
    }

    /// <summary>Reads cavity, keep-outs and clearances beside the cells of a sizing need.</summary>
    /// <param name="input">The opened file.</param>
    /// <param name="request">The need read from it: its models in the order of the file.</param>
    /// <param name="understood">Takes what was assumed of the space, one sentence each.</param>
    /// <param name="stopped">Stops the search; the best so far counts.</param>
    /// <returns>The space; null in it when the need gives none; or the first field that is wrong.</returns>
    public static Outcome<SizeSpace?> Read(JsonInput input, SizingRequest request, List<string> understood, CancellationToken stopped)
    {
        if (!input.Has("cavity"))
            return new Outcome<SizeSpace?>.Given(null);
        IReadOnlyList<JsonInput> several = input.Parts("cells");
        IReadOnlyList<JsonInput> models = several.Count > 0 ? several : [.. new[] { input.Part("cell") }.OfType<JsonInput>()];
        JsonInput? pack = input.Part("pack");
        IReadOnlyList<NamedSolid> cavity = FitSolidsJson.Cavity(input, understood);
        IReadOnlyList<NamedSolid> keepOuts = FitSolidsJson.KeepOuts(input, understood);
        Clearances clearances = FitCaseJson.ClearancesOf(input);
        double linkReachMm = pack?.Number("linkReachMm", 0) ?? 0;
        int jumpers = pack?.Whole("jumpersAllowed", 0) ?? 0;
        Dictionary<SizingCell, FitCase> cases = new(ReferenceEqualityComparer.Instance);
        foreach ((JsonInput model, SizingCell cell) in models.Zip(request.Cells))
        {
            string name = model.Text("name") ?? "";
            if (FitCaseJson.Body(model) is { } body)
                cases[cell] = new FitCase(cavity, keepOuts, name, body, model.Number("massG", 0), clearances, LinkReachMm: linkReachMm, JumpersAllowed: jumpers);
        }

        if (input.Wrong is { } wrong)
            return wrong;
        foreach (FitCase fitCase in cases.Values)
            if (FitCaseCheck.Problems(fitCase) is [Problem first, ..])
                return new Refusal(ExitCodes.Input, "bad-case", first with { Where = $"{input.File}, {first.Where}" });
        return new SizeSpace(cases.GetValueOrDefault, stopped);
    }

    /// <summary>The space of a fit case, for the one cell that the case is about.</summary>
    /// <param name="fitCase">Cavity, keep-outs, clearances and cell.</param>
    /// <param name="stopped">Stops the search; the best so far counts.</param>
    /// <returns>The space.</returns>
    public static SizeSpace Of(FitCase fitCase, CancellationToken stopped)
    {
        ArgumentNullException.ThrowIfNull(fitCase);
        FitCase open = fitCase with { Parallel = null };
        return new SizeSpace(cell => (cell.Name ?? "") == open.CellName ? open : null, stopped);
    }

    /// <summary>Whether a model can be tried in the space: its size is known there.</summary>
    /// <param name="cell">The model.</param>
    /// <returns>True when <see cref="Places"/> tells.</returns>
    public bool Knows(SizingCell cell)
    {
        ArgumentNullException.ThrowIfNull(cell);
        return caseOf(cell) is not null;
    }

    /// <summary>Which choices were left out because the search was stopped; null when none.</summary>
    public string? Untried => untried.Count == 0 ? null : $"Not tried in the space before the search was stopped: {string.Join("; ", untried)}.";

    /// <summary>How many cells go in when they are to form S groups of P.</summary>
    /// <param name="cell">The model.</param>
    /// <param name="series">Groups in series.</param>
    /// <param name="parallel">Cells in a group.</param>
    /// <returns>S x P or more when that fits as wired groups; else the most that can be used; null when the search was stopped before.</returns>
    public int? Places(SizingCell cell, int series, int parallel)
    {
        ArgumentNullException.ThrowIfNull(cell);
        // One choice is tried, as well as can be done at once, so that a search that was stopped has an answer.
        if (tried++ > 0 && stopped.IsCancellationRequested)
        {
            untried.Add($"{cell.Name ?? "the cell"}, {series} in series");
            return null;
        }

        FitCase body = caseOf(cell) ?? throw new ArgumentException("The size of this model is not known in the space.", nameof(cell));
        if (Layouts(quick, body, FitEffort.Quick).Grouped(series, parallel, stopped) is { } asked)
            return asked.Places;
        return Layouts(thorough, body, Effort).Grouped(series, null, stopped) is { } found ? series * found.Parallel : 0;
    }

    // The layouts of a cell are the same whatever S and P are to be made of them.
    private SpaceLayouts Layouts(Dictionary<FitCase, SpaceLayouts> known, FitCase body, FitEffort effort)
    {
        if (!known.TryGetValue(body, out SpaceLayouts? layouts))
            known[body] = layouts = SpaceLayouts.Find(body, effort, stopped);
        return layouts;
    }
}
