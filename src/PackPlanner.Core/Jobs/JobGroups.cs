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
    public static GroupingRequest? Request(Job job, ScreenedLot lot) => Shape(job) is not (var series, var parallel) ? null
        : GroupableCells.Request(lot, [.. lot.Cells.Where(cell => GroupableCells.May(cell)).Select(GroupableCells.Of)], series, parallel) with
        {
            // One above S is told by Notes.
            Locks = job.Locks.Where(pair => pair.Value <= series).ToDictionary(pair => pair.Key, pair => pair.Value, StringComparer.Ordinal),
            Prefer = job.Favour == GroupsFavour.EvenCurrents ? GroupingPreference.EvenCurrents : GroupingPreference.EqualAh,
            Existing = job.Favour == GroupsFavour.FewestMoves ? job.Grouping?.Groups : null,
            FewestMoves = job is { Favour: GroupsFavour.FewestMoves, Grouping: not null },
            LossWithinNoise = true,
            Shunned = job is { Favour: GroupsFavour.FewestMoves, Grouping: { } arranged } ? ShunnedSpares.Of(lot, arranged.Groups, parallel, job.Givens) : new HashSet<string>(),
        };

    /// <summary>Groups of labels as groups of judged cells.</summary>
    /// <param name="lot">The cells.</param>
    /// <param name="groups">Labels by group.</param>
    /// <param name="givens">What the job was told of links and ratings: it decides which cells are brought to volts alone first.</param>
    /// <returns>The groups; labels that the lot does not hold are left out.</returns>
    public static IReadOnlyList<JobGroup> Of(ScreenedLot lot, IEnumerable<IReadOnlyList<string>> groups, JobGivens givens)
    {
        Dictionary<string, ScreenedCell> cells = lot.Cells.ToDictionary(cell => cell.Label, StringComparer.Ordinal);
        return
        [
            .. groups.Select((labels, i) => new JobGroup(
                    i + 1, [.. labels.Where(cells.ContainsKey).Order(StringComparer.Ordinal).Select(label => cells[label])]))
                .Select(group => group with { BroughtToV = new(() => JobJoining.BroughtToV(group, givens)) }),
        ];
    }

    /// <summary>Groups in series and cells in parallel: as the job says, else as its groups were read or arranged.</summary>
    /// <param name="job">The job.</param>
    /// <returns>Both; null while one is not known.</returns>
    public static (int Series, int Parallel)? Shape(Job job)
    {
        int? series = job.Givens.Series ?? job.Grouping?.Groups.Count;
        int? parallel = job.Givens.Parallel ?? (job.Grouping?.Groups is [var first, ..] ? first.Count : null);
        return series is > 0 and { } s && parallel is > 0 and { } p ? (s, p) : null;
    }

    /// <summary>Whether a job's groups are those of its cells, rather than those that a log shows.</summary>
    /// <param name="job">The job.</param>
    /// <returns>True once it has cells and their groups can be asked for.</returns>
    public static bool AreOfCells(Job job) => (!job.Tables.IsEmpty || !job.AddedRows.IsEmpty) && Shape(job) is not null;

    /// <summary>Groups a job's cells: as they were read or arranged by hand, else by the search.</summary>
    /// <param name="job">The job.</param>
    /// <param name="lot">Its cells, judged.</param>
    /// <param name="progress">Told of the best so far; may be null.</param>
    /// <param name="stopped">The user's cancel.</param>
    /// <returns>The groups, or why there are none; null while S or P is unknown.</returns>
    public static GroupingOutcome? Match(Job job, ScreenedLot lot, IProgress<GroupingProgress>? progress, CancellationToken stopped)
    {
        if (Request(job, lot) is not { } request)
            return null;
        if (job.Grouping is not { } arranged || job.Favour == GroupsFavour.FewestMoves)
            return GroupMatcher.Match(request, progress, stopped);
        if (JobArrangement.Wrong(arranged, lot, request.Series, request.Parallel) is { } wrong)
            return ToMend(new GroupingOutcome.Contradicts(wrong), arranged, request, lot, stopped);
        return AddedUp(arranged, request, stopped);
    }

    // Every cell locked where it stands: the door then only adds up what was arranged.
    private static GroupingOutcome AddedUp(JobGrouping arranged, GroupingRequest request, CancellationToken stopped)
    {
        Dictionary<string, int> placed = arranged.Groups.SelectMany((group, i) => group.Select(label => (label, Group: i + 1))).ToDictionary(pair => pair.label, pair => pair.Group, StringComparer.Ordinal);
        return GroupMatcher.Match(
            request with { Locks = placed, SearchSteps = 1000, LevellingSteps = 1000, RepeatabilityFraction = null, Prefer = GroupingPreference.EqualAh },
            progress: null,
            stopped);
    }

    // Groups whose only fault is a cell that may not stay are still shown, so that a spare can be chosen in its place.
    private static GroupingOutcome.Contradicts ToMend(
        GroupingOutcome.Contradicts wrong, JobGrouping arranged, GroupingRequest request, ScreenedLot lot, CancellationToken stopped)
    {
        string[] standing = [.. arranged.Groups.SelectMany(group => group)];
        Dictionary<string, ScreenedCell> known = lot.Cells.ToDictionary(cell => cell.Label, StringComparer.Ordinal);
        if (standing.Distinct(StringComparer.Ordinal).Count() < standing.Length || !standing.All(label => known.TryGetValue(label, out ScreenedCell? cell) && cell.CapacityAh > 0)
            || arranged.Groups.Count != request.Series || arranged.Groups.Any(group => group.Count != request.Parallel))
            return wrong;
        ScreenedCell[] not = [.. standing.Select(label => known[label]).Where(cell => !GroupableCells.May(cell))];
        return AddedUp(arranged, request with { Cells = [.. request.Cells, .. not.Select(GroupableCells.Of)] }, stopped) is GroupingOutcome.Matched { Pack: var pack }
            ? wrong with { AsArranged = pack, WhyToReplace = JobArrangement.Listed([.. JobArrangement.NotUsable(arranged, lot)]), ToReplace = not.Select(cell => cell.Label).ToHashSet(StringComparer.Ordinal) } : wrong;
    }

    /// <summary>The groups of a job.</summary>
    /// <param name="job">The job.</param>
    /// <param name="lot">Its cells, judged.</param>
    /// <param name="stopped">The user's cancel.</param>
    /// <returns>The groups and how they came about; no groups while S, P or enough cells are missing, or where the arrangement cannot be followed.</returns>
    public static (IReadOnlyList<JobGroup> Groups, GroupingOutcome? Outcome) Find(Job job, ScreenedLot lot, CancellationToken stopped)
    {
        GroupingOutcome? outcome = Match(job, lot, null, stopped);
        return outcome is GroupingOutcome.Matched matched
            ? (Of(lot, matched.Pack.Groups.Select(group => (IReadOnlyList<string>)[.. group.Cells.Select(cell => cell.Label)]), job.Givens), outcome)
            : ([], outcome);
    }

    /// <summary>Why a job has no groups of cells.</summary>
    /// <param name="outcome">What <see cref="Match"/> answered.</param>
    /// <returns>The problem; null when there are groups.</returns>
    public static Problem? WhyNone(GroupingOutcome? outcome) => outcome switch
    {
        GroupingOutcome.Matched => null,
        GroupingOutcome.TooFewCells few => new Problem("groups", $"{few.Needed} cells are needed and {few.Usable} may be used", "Test more cells, or set another series or parallel."),
        GroupingOutcome.Contradicts wrong => wrong.Problem,
        _ => new Problem("groups", "series and parallel are not both known", "Set series and parallel."),
    };

    /// <summary>What of the job its groups do not follow, a sentence each.</summary>
    /// <param name="job">The job.</param>
    /// <param name="lot">Its cells, judged.</param>
    /// <returns>None while everything is followed.</returns>
    public static IEnumerable<string> Notes(Job job, ScreenedLot lot)
    {
        if (Shape(job) is not { } shape)
            yield break;
        // An arrangement stands as it is, locks or not.
        if (job.Grouping is null || job.Favour == GroupsFavour.FewestMoves)
        {
            string[] beyond = [.. job.Locks.Where(pair => pair.Value > shape.Series).Select(pair => $"{pair.Key} in group {pair.Value}")];
            if (beyond.Length > 0)
                yield return $"Not locked: {JobArrangement.Listed(beyond)}; there are {shape.Series} groups.";
        }

        if (job.Grouping is { } arranged && job.Favour == GroupsFavour.FewestMoves && JobArrangement.NotUsable(arranged, lot).ToArray() is { Length: > 0 } not)
            yield return $"Of the groups from {arranged.From.From}, other cells stand in the places of these: {JobArrangement.Listed(not)}.";
    }
}
