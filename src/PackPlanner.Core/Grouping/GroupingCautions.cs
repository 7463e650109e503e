using PackPlanner.Core.Cautions;
using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Grouping;

/// <summary>Where a matched pack can hurt.</summary>
public static class GroupingCautions
{
    /// <summary>Cautions on the pack as matched; those on single cells come from the screening.</summary>
    /// <param name="pack">The groups.</param>
    /// <param name="chemistry">The cells' chemistry; null when unknown: the voltage is then not checked.</param>
    /// <param name="fullV">Charge limit of one cell from the data sheet; null for the chemistry's.</param>
    /// <param name="loadA">Amperes drawn from the pack; null when not stated: cell currents are then not checked.</param>
    /// <param name="ratingA">Highest continuous amperes of a new cell; null when not stated.</param>
    /// <param name="ratedAh">Capacity of a new cell: an aged cell's rating is lowered in proportion; null for no lowering.</param>
    /// <returns>In any order.</returns>
    public static IReadOnlyList<Caution> Of(
        MatchedPack pack, Chemistry? chemistry, double? fullV, double? loadA, double? ratingA, double? ratedAh)
    {
        List<Caution> cautions = [];
        double? packV = pack.Groups.Count * (fullV ?? chemistry?.FullV);
        if (TouchVoltage.Of($"{pack.Groups.Count} in series", packV) is { } touch)
            cautions.Add(touch);
        if (Mixed(pack) is { } mixed)
            cautions.Add(mixed);
        if (loadA is { } load && ratingA is { } rating)
            cautions.AddRange(pack.Groups.Select(group => Overload(group, Math.Abs(load), rating, ratedAh)).OfType<Caution>());
        return cautions;
    }

    /// <summary>Groups that hold cells of several models.</summary>
    /// <param name="modelsByGroup">The model of each cell, by group; null where it is not known.</param>
    /// <returns>The caution; null where no group does, or no model is known.</returns>
    public static Caution? Mixed(IEnumerable<IEnumerable<string?>> modelsByGroup)
    {
        static string[] Models(IEnumerable<string?> cells) => [.. cells.OfType<string>().Distinct(StringComparer.OrdinalIgnoreCase).Order(StringComparer.Ordinal)];
        string[][] groups = [.. modelsByGroup.Select(Models)];
        int mixed = groups.Count(group => group.Length > 1);
        string[] models = Models(groups.SelectMany(group => group));
        return mixed == 0 ? null : new Caution("caution-06", SignalWord.Caution, "the groups",
            $"{mixed} of {groups.Length} groups mix cells of several models ({string.Join(", ", models.Take(MostModels))}{(models.Length > MostModels ? " …" : "")})");
    }

    /// <summary>The same of groups as matched.</summary>
    /// <param name="pack">The groups.</param>
    /// <returns>The caution, or null.</returns>
    public static Caution? Mixed(MatchedPack pack) => Mixed(pack.Groups.Select(group => group.Cells.Select(cell => cell.Model)));

    private const int MostModels = 4;

    private static Caution? Overload(MatchedGroup group, double loadA, double ratingA, double? ratedAh)
    {
        double AgedA(GroupingCell cell) => ratingA * (ratedAh is { } rated ? Math.Min(1, cell.CapacityAh / rated) : 1);
        double CurrentA(GroupingCell cell) => loadA * (group.PartOf(cell) ?? 1.0 / group.Cells.Count);
        // A tired cell can be past its aged rating at less current than the hardest-worked one bears.
        GroupingCell worst = group.Cells.MaxBy(cell => CurrentA(cell) / AgedA(cell))!;
        (double currentA, double aged, string label) = (CurrentA(worst), AgedA(worst), worst.Label);
        if (currentA <= aged)
            return null;
        string unchecked_ = group.LargestShare is null ? " (equal shares; a resistance is unknown, so the share is not checked)" : "";
        return new Caution("caution-24", SignalWord.Warning, $"group {group.Number}, cell {label}",
            $"{currentA:0.0#} A at first{unchecked_}, rated {ratingA:0.0#} A{(aged < ratingA ? $", {aged:0.0#} A after ageing" : "")}");
    }
}
