using PackPlanner.Core.Grouping;
using PackPlanner.Core.Screening;

namespace PackPlanner.Core.Jobs;

/// <summary>The groups of a job: those that were read or arranged by hand, else those of the search.</summary>
public static class JobGroups
{
    /// <summary>What the search is asked for a job.</summary>
    /// <param name="job">The job.</param>
    /// <param name="lot">Its cells, judged.</param>
    /// <returns>The request; null while S or P is unknown.</returns>
    public static GroupingRequest? Request(Job job, ScreenedLot lot) => job.Givens is not { Series: { } series, Parallel: { } parallel } ? null : new GroupingRequest
    {
        Cells = [.. lot.Cells.Where(MayBeGrouped).Select(cell => new GroupingCell(cell.Label, cell.CapacityAh!.Value, cell.ResistanceMilliohm)
        {
            RestV = cell.RestV,
            Batch = cell.Batch,
            Model = cell.Model,
        })],
        Series = series,
        Parallel = parallel,
        RepeatabilityFraction = job.Givens.RepeatabilityFraction,
        Locks = job.Locks.Where(pair => pair.Value <= series).ToDictionary(pair => pair.Key, pair => pair.Value, StringComparer.Ordinal),
    };

    /// <summary>Whether a cell may go into a group: judged use, with a capacity, and not set apart for safety.</summary>
    /// <param name="cell">The cell.</param>
    /// <returns>True when it may.</returns>
    public static bool MayBeGrouped(ScreenedCell cell) => cell is { Verdict: Verdict.Use, HeldForSafety: false, CapacityAh: > 0 };

    /// <summary>Groups of labels as groups of judged cells.</summary>
    /// <param name="lot">The cells.</param>
    /// <param name="groups">Labels by group.</param>
    /// <returns>The groups; labels that the lot does not hold are left out.</returns>
    public static IReadOnlyList<JobGroup> Of(ScreenedLot lot, IEnumerable<IReadOnlyList<string>> groups)
    {
        Dictionary<string, ScreenedCell> cells = lot.Cells.ToDictionary(cell => cell.Label, StringComparer.Ordinal);
        return
        [
            .. groups.Select((labels, i) => new JobGroup(
                i + 1, [.. labels.Where(cells.ContainsKey).Order(StringComparer.Ordinal).Select(label => cells[label])])),
        ];
    }

    /// <summary>The groups of a job.</summary>
    /// <param name="job">The job.</param>
    /// <param name="lot">Its cells, judged.</param>
    /// <param name="stopped">The user's cancel.</param>
    /// <returns>The groups and what the search said of them; no groups while S, P or enough cells are missing.</returns>
    public static (IReadOnlyList<JobGroup> Groups, GroupingOutcome? Outcome) Find(Job job, ScreenedLot lot, CancellationToken stopped)
    {
        if (job.Grouping is { } byHand)
            return (Of(lot, byHand.Groups), null);
        if (Request(job, lot) is not { } request)
            return ([], null);
        GroupingOutcome outcome = GroupMatcher.Match(request, null, stopped);
        return outcome is GroupingOutcome.Matched matched
            ? (Of(lot, matched.Pack.Groups.Select(group => (IReadOnlyList<string>)[.. group.Cells.Select(cell => cell.Label)])), outcome)
            : ([], outcome);
    }
}
