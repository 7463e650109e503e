using System.Collections.Immutable;
using PackPlanner.Core.Grouping;
using PackPlanner.Core.Jobs;
using PackPlanner.Core.Screening;

namespace PackPlanner.Screens.GroupsScreen;

/// <summary>All that the grouping depends on.</summary>
internal sealed record GroupsQuestion(
    ScreenedLot Lot,
    int Series,
    int Parallel,
    double? RepeatabilityFraction,
    ImmutableSortedDictionary<string, int> Locks,
    JobGrouping? Arranged,
    GroupingPreference Prefer,
    bool FewestMoves)
{
    /// <summary>The question of a job; null while cells, series or parallel are not known.</summary>
    internal static GroupsQuestion? Of(Job? job, ScreenedLot? lot, GroupingPreference prefer, bool fewestMoves) =>
        job is { Givens: { Series: { } series, Parallel: { } parallel } givens } && lot is not null
            ? new GroupsQuestion(lot, series, parallel, givens.RepeatabilityFraction, job.Locks, job.Grouping, prefer, fewestMoves)
            : null;

    /// <summary>What was arranged by hand or read from a file needs no search.</summary>
    internal bool IsShort => Arranged is not null && !FewestMoves;

    internal GroupingOutcome Answer(CancellationToken stop, IProgress<GroupingProgress>? progress)
    {
        GroupingCell[] usable = [.. Lot.Cells.Where(MayBeGrouped).Select(Cell)];
        HashSet<string> known = [.. usable.Select(cell => cell.Label)];
        GroupingRequest request = new()
        {
            Cells = usable,
            Series = Series,
            Parallel = Parallel,
            RepeatabilityFraction = RepeatabilityFraction,
            Locks = Locks.Where(held => held.Value <= Series && known.Contains(held.Key)).ToDictionary(),
            Prefer = Prefer,
        };
        if (Arranged is null)
            return GroupMatcher.Match(request, progress, stop);
        if (FewestMoves)
            return GroupMatcher.Match(request with { Existing = Arranged.Groups, FewestMoves = true }, progress, stop);
        // Every cell locked where it stands: the door then only adds up what was arranged.
        return GroupMatcher.Match(
            request with { Locks = Placed(known), SearchSteps = 1000, LevellingSteps = 1000, RepeatabilityFraction = null, Prefer = GroupingPreference.EqualAh },
            progress: null,
            stop);
    }

    private Dictionary<string, int> Placed(HashSet<string> known)
    {
        Dictionary<string, int> placed = [];
        for (int group = 0; group < Arranged!.Groups.Count; group++)
        {
            foreach (string label in Arranged.Groups[group].Where(known.Contains))
                placed[label] = group + 1;
        }

        return placed;
    }

    /// <summary>Whether a cell may stand in a group: what is held or rejected never does, nor what has no capacity.</summary>
    internal static bool MayBeGrouped(ScreenedCell cell) => cell is { Verdict: Verdict.Use, HeldForSafety: false, CapacityAh: > 0 };

    private static GroupingCell Cell(ScreenedCell cell) =>
        new(cell.Label, cell.CapacityAh!.Value, cell.ResistanceMilliohm is > 0 ? cell.ResistanceMilliohm : null)
        {
            RestV = cell.RestV,
            Batch = cell.Batch,
            Model = cell.Model,
        };
}
