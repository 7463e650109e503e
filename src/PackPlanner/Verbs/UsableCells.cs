using PackPlanner.Core.Cells;
using PackPlanner.Core.Grouping;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.Screening;
using PackPlanner.Formats;
using PackPlanner.Formats.Words;

namespace PackPlanner.Verbs;

/// <summary>The cells of a judged lot that may be grouped, and the others.</summary>
/// <param name="Cells">May be grouped.</param>
/// <param name="LeftOut">Labels that the user left out and that might have been used.</param>
/// <param name="NotUsed">On hold or rejected.</param>
/// <param name="Understood">What was assumed, a sentence each.</param>
internal sealed record UsableCells(
    IReadOnlyList<GroupingCell> Cells, IReadOnlyList<string> LeftOut, IReadOnlyList<ScreenedCell> NotUsed, IReadOnlyList<string> Understood)
{
    /// <summary>Chooses them.</summary>
    /// <param name="lot">The judged lot.</param>
    /// <param name="leaveOut">Labels that the user leaves out.</param>
    /// <param name="useHeld">Also cells on hold, except for safety.</param>
    /// <param name="chemistryStated">The user named the chemistry: cells of another one are then on hold, not in dispute.</param>
    internal static Outcome<UsableCells> Of(ScreenedLot lot, IReadOnlyList<string> leaveOut, bool useHeld, bool chemistryStated)
    {
        HashSet<string> known = [.. lot.Cells.Select(cell => cell.Label)];
        if (leaveOut.FirstOrDefault(label => !known.Contains(label)) is { } stranger)
            return Refusal.Input("unknown-cell", $"--leave-out {stranger}", "no cell has this label",
                $"Did you mean {NearestName.Of(stranger, known)}?");
        ScreenedCell[] may = [.. lot.Cells.Where(cell => GroupableCells.May(cell, useHeld))];
        if (lot.Chemistries.Count > 1 && !chemistryStated)
            return Refusal.Input("two-chemistries", "the cells' chemistry", $"the table holds {string.Join(" and ", lot.Chemistries.Select(name => $"{OfChemistry(lot, name)} {name}"))} cells; two chemistries never go into one pack",
                $"Give --chemistry {MostCells(lot)} to use only those, and match the others by themselves.");
        ScreenedCell[] used = [.. may.Where(cell => !leaveOut.Contains(cell.Label))];
        return new UsableCells(
            [.. used.Select(GroupableCells.Of)],
            [.. may.Select(cell => cell.Label).Where(leaveOut.Contains)],
            [.. lot.Cells.Except(may)],
            [.. Notes(used)]);
    }

    /// <summary>How many cells of a lot may be grouped.</summary>
    internal static int Count(ScreenedLot lot, IReadOnlyList<string> leaveOut) =>
        lot.Cells.Count(cell => GroupableCells.May(cell, useHeld: false) && !leaveOut.Contains(cell.Label));

    /// <summary>The labels that a choice of one model leaves out; a refusal when no cell is of it.</summary>
    internal static Outcome<IReadOnlyList<string>> OfOtherModels(ScreenedLot lot, string model)
    {
        string[] known = [.. lot.Cells.Select(cell => cell.Model).OfType<string>().Distinct(StringComparer.OrdinalIgnoreCase).Order(StringComparer.Ordinal)];
        if (!known.Contains(model, StringComparer.OrdinalIgnoreCase))
        {
            return Refusal.Input("unknown-model", $"--model {OneLine.Of(model)}", "no cell is of this model",
                known.Length == 0 ? "The table names no models; a column model does." : $"Did you mean {NearestName.Of(model, known)}? The table has {string.Join(", ", known.Take(8))}.");
        }

        return lot.Cells.Where(cell => !model.Equals(cell.Model, StringComparison.OrdinalIgnoreCase)).Select(cell => cell.Label).ToArray();
    }

    private static int OfChemistry(ScreenedLot lot, string name) => lot.Cells.Count(cell => (cell.Chemistry ?? lot.Chemistry?.Name) == name);

    private static string MostCells(ScreenedLot lot) => lot.Cells.Select(cell => cell.Chemistry).OfType<string>().Where(lot.Chemistries.Contains)
        .GroupBy(name => name).OrderByDescending(group => group.Count()).ThenBy(group => group.Key, StringComparer.Ordinal).Select(group => group.Key).FirstOrDefault(lot.Chemistries[0]);

    private static IEnumerable<string> Notes(ScreenedCell[] used)
    {
        string[] models = [.. used.Select(cell => cell.Model).OfType<string>().Distinct().Order(StringComparer.Ordinal)];
        if (models.Length > 1)
            yield return $"The usable cells are of {models.Length} models ({string.Join(", ", models.Take(5).Select(model => $"{model}: {used.Count(cell => cell.Model == model)}"))}) and groups may mix them, which ages them unequally: --model \"{models[0]}\" uses one alone (common practice, no source).";
        int unknown = used.Count(cell => cell.ResistanceMilliohm is null or <= 0);
        if (unknown > 0)
            yield return $"{unknown} of the usable cells have no resistance: shares of current are not checked, and group resistances play no part.";
        else if (used.Any(cell => cell.ResistanceKind == ResistanceKind.Ac1Khz))
            yield return "Resistances are 1 kHz figures: shares under a lasting load follow the DC resistance, which may differ.";
    }
}
