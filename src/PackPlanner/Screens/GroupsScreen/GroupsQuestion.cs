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
    GroupsFavour Favour)
{
    /// <summary>Equal when the search would be asked the same: a changed load must not start it again.</summary>
    public bool Equals(GroupsQuestion? other) => other is not null
        && ReferenceEquals(Lot, other.Lot) && Series == other.Series && Parallel == other.Parallel
        && Givens.RepeatabilityFraction == other.Givens.RepeatabilityFraction && ReferenceEquals(Locks, other.Locks)
        && ReferenceEquals(Arranged, other.Arranged) && Favour == other.Favour;

    public override int GetHashCode() => HashCode.Combine(Lot, Series, Parallel, Favour);

    /// <summary>The question of a job; null while cells, series or parallel are not known.</summary>
    internal static GroupsQuestion? Of(Job? job, ScreenedLot? lot) => job is not null && lot is not null && JobGroups.Shape(job) is (var series, var parallel)
        ? new GroupsQuestion(lot, series, parallel, job.Givens, job.Locks, job.Grouping, job.Favour)
        : null;

    /// <summary>What was arranged by hand or read from a file, and is followed as it stands.</summary>
    internal JobGrouping? Followed => Favour == GroupsFavour.FewestMoves ? null : Arranged;

    /// <summary>What was arranged by hand or read from a file needs no search.</summary>
    internal bool IsShort => Followed is not null;

    /// <summary>What of the job the groups do not follow, a sentence each.</summary>
    internal IEnumerable<string> Notes => JobGroups.Notes(Asked, Lot);

    internal GroupingOutcome Answer(CancellationToken stop, IProgress<GroupingProgress>? progress) => JobGroups.Match(Asked, Lot, progress, stop)!;

    private Job Asked => new() { Title = "", Locks = Locks, Givens = Givens, Grouping = Arranged, Favour = Favour };
}
