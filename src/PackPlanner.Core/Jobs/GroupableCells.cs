using PackPlanner.Core.Grouping;
using PackPlanner.Core.Screening;

namespace PackPlanner.Core.Jobs;

/// <summary>What a judged lot gives to the search of groups: the same for a job as for a table.</summary>
public static class GroupableCells
{
    /// <summary>Whether a cell may go into a group: judged use, with a capacity, and not set apart for safety.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="useHeld">Also cells on hold, except for safety or another chemistry.</param>
    /// <returns>True when it may.</returns>
    public static bool May(ScreenedCell cell, bool useHeld = false) =>
        cell is { HeldForSafety: false, CapacityAh: > 0 }
        && (cell.Verdict == Verdict.Use
            || (useHeld && cell.Verdict == Verdict.Hold && cell.Reasons.All(reason => reason.Code != ReasonCodes.OtherChemistry)));

    /// <summary>A judged cell as the search takes it.</summary>
    /// <param name="cell">A cell with a capacity.</param>
    /// <returns>The cell; a resistance that is not above nought is none.</returns>
    public static GroupingCell Of(ScreenedCell cell) =>
        new(cell.Label, cell.CapacityAh!.Value, cell.ResistanceMilliohm is > 0 ? cell.ResistanceMilliohm : null)
        {
            RestV = cell.RestV,
            Batch = cell.Batch,
            Model = cell.Model,
        };

    /// <summary>A request for groups of a lot's cells, with what the lot tells of its tester.</summary>
    /// <param name="lot">The lot.</param>
    /// <param name="cells">Those of its cells that may be used.</param>
    /// <param name="series">Groups in series.</param>
    /// <param name="parallel">Cells in parallel in each.</param>
    /// <returns>The request; locks, an existing grouping and wishes are the caller's.</returns>
    public static GroupingRequest Request(ScreenedLot lot, IReadOnlyList<GroupingCell> cells, int series, int parallel)
    {
        double[] stepsAh = [.. lot.Cells.SelectMany(cell => cell.Rows).Select(row => row.CapacityStepAh).OfType<double>()];
        return new GroupingRequest
        {
            Cells = cells,
            Series = series,
            Parallel = parallel,
            RepeatabilityFraction = lot.Repeatability.From == RepeatabilityOrigin.Given ? lot.Repeatability.Fraction : null,
            FoundRepeatabilityFraction = lot.Repeatability.From == RepeatabilityOrigin.Repeats ? lot.Repeatability.Fraction : null,
            NoiseFraction = lot.Repeatability.Fraction,
            TesterStepAh = stepsAh.Length > 0 ? stepsAh.Min() : null,
        };
    }
}
