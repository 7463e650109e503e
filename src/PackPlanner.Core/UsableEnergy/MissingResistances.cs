using PackPlanner.Core.Cells;
using PackPlanner.Core.Packs;

namespace PackPlanner.Core.UsableEnergy;

/// <summary>Cells of a group that have no resistance, and what the group would have with them.</summary>
/// <param name="Cells">Their labels.</param>
/// <param name="EachMilliohm">What each of them is taken at, milliohm: the median of the cells of the pack that have one; null where fewer than half have.</param>
/// <param name="GroupMilliohm">The group with them so, milliohm; null with <paramref name="EachMilliohm"/>.</param>
/// <param name="AtMostMilliohm">The group without them, milliohm, which is more than it can have; null where none of its cells has a resistance.</param>
public sealed record MissingReadings(IReadOnlyList<string> Cells, double? EachMilliohm, double? GroupMilliohm, double? AtMostMilliohm);

/// <summary>What is said and supposed where some resistances of a pack are missing: the others are no reason to pass in silence, nor to say nothing.</summary>
public static class MissingResistances
{
    // Of fewer the median is no figure for the rest. Our choice.
    private const double LeastKnownFraction = 0.5;

    // More labels than these help nobody on a line.
    private const int MostNamed = 3;

    /// <summary>Adds to each group which of its cells have no resistance, and what the others say of it.</summary>
    /// <param name="groups">The groups.</param>
    /// <param name="cells">Label and DC milliohm of the cells of each group.</param>
    /// <returns>The groups; those with all resistances are unchanged.</returns>
    public static SeriesGroup[] Filled(IReadOnlyList<SeriesGroup> groups, IReadOnlyList<IReadOnlyList<(string Label, double? Milliohm)>> cells)
    {
        double[] known = [.. cells.SelectMany(group => group).Select(cell => cell.Milliohm).OfType<double>().Where(milliohm => milliohm > 0)];
        int all = cells.Sum(group => group.Count);
        double? each = known.Length > 0 && known.Length >= LeastKnownFraction * all ? Robust.Median(known) : null;
        return [.. groups.Zip(cells, (group, of) => group.ResistanceMilliohm > 0 ? group : group with { Missing = Of(of, each) })];
    }

    private static MissingReadings Of(IReadOnlyList<(string Label, double? Milliohm)> cells, double? each)
    {
        (string Label, double? Milliohm)[] read = [.. cells.Where(cell => cell.Milliohm > 0)];
        return new MissingReadings(
            [.. cells.Where(cell => cell.Milliohm is not > 0).Select(cell => cell.Label)],
            each,
            each is null ? null : ParallelResistance.Of(cells, cell => cell.Milliohm > 0 ? cell.Milliohm : each),
            ParallelResistance.Of(read, cell => cell.Milliohm));
    }

    /// <summary>Milliohm of each group, those without taken from the others; null where nothing can stand for them.</summary>
    /// <param name="groups">The groups.</param>
    /// <returns>Shape [groups]: as read, else with the median cell of the pack, else the median of the other groups.</returns>
    public static double[]? Taken(IReadOnlyList<SeriesGroup> groups)
    {
        double?[] told = [.. groups.Select(group => group.ResistanceMilliohm ?? group.Missing?.GroupMilliohm)];
        double[] known = [.. told.OfType<double>()];
        return known.Length == 0 ? null : [.. told.Select(milliohm => milliohm ?? Robust.Median(known))];
    }

    /// <summary>Which groups and cells have none: "group 4: Z20 has no milliohm".</summary>
    /// <param name="groups">The groups.</param>
    /// <returns>The words; null where every group has a resistance.</returns>
    public static string? Words(IReadOnlyList<SeriesGroup> groups)
    {
        SeriesGroup[] lacking = [.. groups.Where(group => group.ResistanceMilliohm is not > 0)];
        if (lacking.Length == 0)
            return null;
        string[] cells = [.. lacking.SelectMany(group => group.Missing?.Cells ?? [])];
        if (lacking.Length == groups.Count && groups.All(group => group.Missing?.AtMostMilliohm is null))
            return "no resistances";
        string where = $"group{(lacking.Length > 1 ? "s" : "")} {Named([.. lacking.Select(group => FormattableString.Invariant($"{group.Number}"))])}";
        return cells.Length == 0
            ? $"{where} {(lacking.Length > 1 ? "have" : "has")} no milliohm"
            : $"{where}: {Named(cells)} {(cells.Length > 1 ? "have" : "has")} no milliohm";
    }

    /// <summary>The same, and what stands in their place: "..., taken at 31.0, the median of the others".</summary>
    /// <param name="groups">The groups.</param>
    /// <returns>The words; null where every group has a resistance or nothing stands for those without.</returns>
    public static string? Supposed(IReadOnlyList<SeriesGroup> groups)
    {
        if (Words(groups) is not { } lacking || Taken(groups) is not { } taken)
            return null;
        double each = groups.Select(group => group.Missing?.EachMilliohm).FirstOrDefault(milliohm => milliohm is not null)
            ?? taken[groups.Index().First(group => group.Item.ResistanceMilliohm is not > 0).Index];
        return FormattableString.Invariant($"{lacking}, taken at {each:0.0#}, the median of the others");
    }

    private static string Named(string[] names) =>
        string.Join(", ", names.Take(MostNamed)) + (names.Length > MostNamed ? FormattableString.Invariant($" and {names.Length - MostNamed} more") : "");
}
