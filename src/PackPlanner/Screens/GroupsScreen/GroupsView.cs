using PackPlanner.Core.Cautions;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Grouping;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.Screening;
using PackPlanner.Core.Sharing;

namespace PackPlanner.Screens.GroupsScreen;

/// <summary>A grouping on screen with what the lot knows of its cells.</summary>
/// <param name="Pack">The groups.</param>
/// <param name="Lot">The cells.</param>
/// <param name="Question">What was asked.</param>
internal sealed record GroupsView(MatchedPack Pack, ScreenedLot Lot, GroupsQuestion Question)
{
    private (JobGivens? Givens, IReadOnlyList<Caution> Cautions) joining;
    private readonly Dictionary<string, ScreenedCell> cells = Lot.Cells.ToDictionary(cell => cell.Label, StringComparer.Ordinal);

    internal ScreenedCell Cell(string label) => cells[label];

    /// <summary>Labels of cells that stand in these groups and may not stay.</summary>
    internal IReadOnlySet<string> ToReplace { get; init; } = new HashSet<string>();

    /// <summary>A label as it is written among others: a cell that may not stay is never written like the others.</summary>
    internal string Named(string label) => ToReplace.Contains(label) ? $"!{label}" : label;

    /// <summary>The same with the word, for paper and files.</summary>
    internal string Told(string label) => ToReplace.Contains(label) ? $"{label} (! {Word(label)}, replace it)" : label;

    /// <summary>The word of a cell that may not stay.</summary>
    internal string Word(string label) => Cell(label).Verdict == Verdict.Reject ? "reject" : "hold";

    /// <summary>What happens if the cells of a group are joined now.</summary>
    internal JoinPlan JoinPlanOf(MatchedGroup group, JobGivens givens) =>
        JobJoining.Plan(group.Number, group.Cells.Select(cell => cells[cell.Label]), givens);

    /// <summary>What joining the groups as they rest raises; worked out once while the job says the same.</summary>
    internal IReadOnlyList<Caution> JoiningCautions(JobGivens givens)
    {
        if (!ReferenceEquals(joining.Givens, givens))
            joining = (givens, [.. Pack.Groups.SelectMany(group => JoinPlanOf(group, givens).Cautions)]);
        return joining.Cautions;
    }

    /// <summary>Sums of typed values keep the typed digits, so that a calculator agrees.</summary>
    internal int AhDecimals => Pack.StepAh >= 0.1 ? 1 : Pack.StepAh >= 0.01 ? 2 : 3;

    /// <summary>Half the width of the 90 % range of a group's sum: independent tests add as squares.</summary>
    internal double? RangeAh(MatchedGroup group)
    {
        double squares = 0;
        foreach (GroupingCell cell in group.Cells)
        {
            if (cells[cell.Label].CapacitySpreadAh is not { } spread)
                return null;
            squares += spread * spread;
        }

        return NormalRange.NinetyPercent * Math.Sqrt(squares);
    }

    /// <summary>What the tester's noise alone would show between groups that are equal in truth, Ah.</summary>
    internal double? NoiseAh => Pack.NoiseSpreadAh ?? GroupNoise.SpreadAh(
        Lot.Repeatability.Fraction, Pack.Groups.SelectMany(group => group.Cells).Average(cell => cell.CapacityAh), Pack.Groups.Count, Pack.Groups[0].Cells.Count);
}
