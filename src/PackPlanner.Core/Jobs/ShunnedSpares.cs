using PackPlanner.Core.Cautions;
using PackPlanner.Core.Screening;

namespace PackPlanner.Core.Jobs;

/// <summary>Spares that come into an existing grouping only where no others serve.</summary>
public static class ShunnedSpares
{
    /// <summary>Those that a caution names, and those that a group with an empty place could only take after they were brought to its volts alone.</summary>
    /// <param name="lot">The cells, judged.</param>
    /// <param name="existing">Labels by group.</param>
    /// <param name="parallel">Places in each group.</param>
    /// <param name="givens">What the job was told of links and ratings.</param>
    /// <returns>Labels; empty where no place is empty.</returns>
    public static IReadOnlySet<string> Of(ScreenedLot lot, IReadOnlyList<IReadOnlyList<string>> existing, int parallel, JobGivens givens)
    {
        Dictionary<string, ScreenedCell> may = lot.Cells.Where(cell => GroupableCells.May(cell)).ToDictionary(cell => cell.Label, StringComparer.Ordinal);
        ScreenedCell[][] wanting = [.. existing.Select(group => group.Where(may.ContainsKey).Select(label => may[label]).ToArray()).Where(group => group.Length < parallel)];
        HashSet<string> standing = [.. existing.SelectMany(group => group)];
        HashSet<string> warned = [.. lot.Cautions.Select(caution => caution.Where)];
        return wanting.Length == 0 ? new HashSet<string>() : may.Values
            .Where(spare => !standing.Contains(spare.Label))
            .Where(spare => warned.Contains(Caution.OfCell(spare.Label)) || Array.Exists(wanting, group => IsBroughtAlone(spare, group, givens)))
            .Select(spare => spare.Label)
            .ToHashSet(StringComparer.Ordinal);
    }

    private static bool IsBroughtAlone(ScreenedCell spare, ScreenedCell[] group, JobGivens givens) =>
        group.Length > 0 && JobJoining.Plan(1, [.. group, spare], givens).Cells.Any(step => step.Label == spare.Label && step.IsBroughtAlone);
}
