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
    JobGivens Givens,
    ImmutableSortedDictionary<string, int> Locks,
    JobGrouping? Arranged,
    GroupingPreference Prefer,
    bool FewestMoves)
{
    /// <summary>Equal when the search would be asked the same: a changed load must not start it again.</summary>
    public bool Equals(GroupsQuestion? other) => other is not null
        && ReferenceEquals(Lot, other.Lot) && Series == other.Series && Parallel == other.Parallel
        && Givens.RepeatabilityFraction == other.Givens.RepeatabilityFraction && ReferenceEquals(Locks, other.Locks)
        && ReferenceEquals(Arranged, other.Arranged) && Prefer == other.Prefer && FewestMoves == other.FewestMoves;

    public override int GetHashCode() => HashCode.Combine(Lot, Series, Parallel, Prefer, FewestMoves);

    /// <summary>The question of a job; null while cells, series or parallel are not known.</summary>
    internal static GroupsQuestion? Of(Job? job, ScreenedLot? lot, GroupingPreference prefer, bool fewestMoves) =>
        job is { Givens: { Series: { } series, Parallel: { } parallel } givens } && lot is not null
            ? new GroupsQuestion(lot, series, parallel, givens, job.Locks, job.Grouping, prefer, fewestMoves)
            : null;

    /// <summary>What was arranged by hand or read from a file needs no search.</summary>
    internal bool IsShort => Arranged is not null && !FewestMoves;

    internal GroupingOutcome Answer(CancellationToken stop, IProgress<GroupingProgress>? progress)
    {
        Job job = new() { Title = "", Locks = Locks, Givens = Givens };
        GroupingRequest request = JobGroups.Request(job, Lot)! with { Prefer = Prefer };
        HashSet<string> known = [.. request.Cells.Select(cell => cell.Label)];
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
}
