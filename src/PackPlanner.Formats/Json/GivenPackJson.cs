using PackPlanner.Core.Cells;
using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Formats.Json;

/// <summary>What the owner of a pack said of it: read from given.json, from options, or from both; unknown parts are null.</summary>
/// <param name="Chemistry">Chemistry of the cells.</param>
/// <param name="Series">Groups in series.</param>
/// <param name="Parallel">Cells in parallel.</param>
/// <param name="RatedGroupAh">Capacity of one group when new.</param>
/// <param name="FullV">Resting volts of a full group.</param>
/// <param name="EmptyV">Resting volts of an empty group.</param>
public sealed record GivenPackJson(Chemistry? Chemistry, int? Series, int? Parallel, double? RatedGroupAh, double? FullV, double? EmptyV)
{
    /// <summary>What the vehicle uses on the owner's rides, watt-hours for each kilometre; null when not said.</summary>
    public double? WhPerKm { get; init; }

    /// <summary>Reads given.json; unknown fields are ignored.</summary>
    /// <param name="input">The opened file.</param>
    /// <returns>What stands in it, or the first field that is wrong.</returns>
    public static Outcome<GivenPackJson> Read(JsonInput input)
    {
        string? name = input.Text("chemistry");
        Chemistry? chemistry = Chemistries.Find(name);
        if (name is not null && chemistry is null)
            input.Refuse("chemistry", $"is \"{name}\", which is not known here", $"Use one of {string.Join(", ", Chemistries.All.Select(c => c.Name))}.");
        GivenPackJson given = new(
            chemistry, input.Whole("series", 1), input.Whole("parallel", 1), input.Number("ratedGroupAh", 0.01, 100_000),
            input.Number("fullVoltage", 0.5, 10), input.Number("emptyVoltage", 0.1, 10))
        { WhPerKm = input.Number("whPerKm", 0.1, 10_000) };
        return input.Wrong is { } wrong ? wrong : given;
    }

    /// <summary>Options typed on the command line stand before the file; where both say something they must agree.</summary>
    /// <param name="typed">From options.</param>
    /// <param name="file">Name of given.json, for messages.</param>
    /// <returns>Both together, or what contradicts.</returns>
    public Outcome<GivenPackJson> With(GivenPackJson typed, string file)
    {
        string? clash =
            Differ(Chemistry?.Name, typed.Chemistry?.Name) ? "chemistry and --chemistry"
            : Differ(Series, typed.Series) ? "series and --series"
            : Differ(Parallel, typed.Parallel) ? "parallel and --parallel"
            : Differ(RatedGroupAh, typed.RatedGroupAh) ? "ratedGroupAh and --rated-ah"
            : Differ(FullV, typed.FullV) ? "fullVoltage and --full-v"
            : Differ(EmptyV, typed.EmptyV) ? "emptyVoltage and --empty-v"
            : Differ(WhPerKm, typed.WhPerKm) ? "whPerKm and --use" : null;
        if (clash is not null)
            return Refusal.Input("given-contradicts", file, $"{clash} say different things", "Leave one of the two out.");
        return new GivenPackJson(
            Chemistry ?? typed.Chemistry, Series ?? typed.Series, Parallel ?? typed.Parallel, RatedGroupAh ?? typed.RatedGroupAh,
            FullV ?? typed.FullV, EmptyV ?? typed.EmptyV)
        { WhPerKm = WhPerKm ?? typed.WhPerKm };
    }

    /// <summary>The complete statement for a log, defaults filled in from the chemistry.</summary>
    /// <param name="groups">Groups found in the log.</param>
    /// <param name="source">Name of the log, for messages.</param>
    /// <param name="understood">What was filled in.</param>
    /// <returns>What a diagnosis needs, or what is missing or contradicts the log.</returns>
    public Outcome<PackGiven> For(int groups, string source, List<string> understood)
    {
        if (Series is { } series && series != groups)
            return Refusal.Input("series-differs", source, $"the log has {groups} cell voltage columns, {series} groups in series were stated",
                "Correct --series or the given file, or name the log that belongs to this pack.");
        if (Chemistry is null)
            return Refusal.CommandLine("no-chemistry", "diagnose", "neither --given nor --chemistry says what the cells are",
                $"Add --chemistry {string.Join("|", Chemistries.All.Select(c => c.Name))}.");
        if (RatedGroupAh is not { } ratedAh)
            return Refusal.CommandLine("no-rated-ah", "diagnose", "neither --given nor --rated-ah says what a group held when new",
                "Add --rated-ah, cells in parallel times the Ah on one cell's label.");
        double full = FullV ?? Chemistry.FullV, empty = EmptyV ?? Chemistry.CutoffV;
        if (empty >= full)
            return Refusal.Input("limits-crossed", source, $"full {full} V is not above empty {empty} V", "Correct --full-v and --empty-v.");
        (double lowest, double highest) = Chemistry.Physics;
        if (full > highest || empty < lowest || full < Chemistry.CutoffV || empty > Chemistry.FullV)
            return Refusal.Input("volts-contradict-chemistry", source, $"full {full} V and empty {empty} V are not volts of one {Chemistry.Name} group", "Give the volts of one group, not of the pack; or correct the chemistry.");
        if (FullV is null || EmptyV is null)
            understood.Add(FormattableString.Invariant($"Full is taken as {full:0.00##} V and empty as {empty:0.00##} V at rest, as usual for {Chemistry.Name}."));
        return new PackGiven(Chemistry, groups, Parallel, ratedAh, full, empty);
    }

    private static bool Differ<T>(T? a, T? b) => a is not null && b is not null && !EqualityComparer<T>.Default.Equals(a, b);
}
