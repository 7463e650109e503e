namespace PackPlanner.Core.Grouping;

/// <summary>Puts measured cells into groups that hold as nearly the same as can be, and says how near that is.</summary>
/// <remarks>See docs/methods/grouping.md for the rule, the searches and the proofs.</remarks>
public static class GroupMatcher
{
    /// <summary>Matches cells into S groups of P.</summary>
    /// <param name="request">Cells, shape, locks and preferences.</param>
    /// <param name="progress">Told of every better strict grouping while the search runs.</param>
    /// <param name="stop">The user's cancel: the best so far is returned.</param>
    /// <returns>The groups, or why there are none.</returns>
    public static GroupingOutcome Match(
        GroupingRequest request, IProgress<GroupingProgress>? progress = null, CancellationToken stop = default)
    {
        if (RequestChecks.Contradiction(request) is { } problem)
            return new GroupingOutcome.Contradicts(problem);
        int needed = request.Series * request.Parallel;
        if (request.Cells.Count < needed)
            return new GroupingOutcome.TooFewCells(
                request.Cells.Count, needed, RequestChecks.NearestShapes(request.Cells.Count, request.Series, request.Parallel));

        if (AsWithoutLocks(request, needed, progress, stop) is { } same)
            return same;
        SortedLot lot = SortedLot.Of(request);
        StrictAnswer strict = StrictSearch.Solve(
            lot.Problem,
            new SearchBudget(request.SearchSteps, stop),
            (ulong)request.Seed,
            lot.CloseEnough(request.TesterStepAh),
            progress is null ? null : better => progress.Report(lot.Progress(better)));
        BatchPlan? plan = request.KeepBatches ? BatchPlan.Of(lot) : null;
        (GroupingTrial chosen, long batchBound) = plan is null
            ? (Choose(request, lot, strict, stop), long.MaxValue)
            : BatchSearch.Arrange(lot, plan, new SearchBudget(request.LevellingSteps, stop), (ulong)request.Seed);
        if (plan is not null && lot.AllResistancesKnown)
            chosen = Levelled(request, lot, chosen, new SearchBudget(LevellingSteps(request), stop), plan.Allows);

        int? leastMoves = null;
        if (request is { FewestMoves: true, AsItIs: false, Existing: not null })
            (leastMoves, chosen) = FewMoves.Of(request, lot, strict, stop);

        // What was chosen may better a strict answer that was not proven.
        if (chosen.IsBetterThan(strict.Best))
            strict = strict with { Best = chosen };
        MatchedPack pack = PackAssembly.Of(request, lot, strict, chosen, stop.IsCancellationRequested);
        return new GroupingOutcome.Matched(pack with
        {
            Batches = plan is null ? null : new BatchKeeping(pack.Groups.Count(group => group.Cells.Any(cell => cell.Batch is null || cell.Batch != group.Cells[0].Batch)), plan.Mixed, lot.InAh(Math.Min(batchBound, strict.Bound))),
            FewestMoves = leastMoves,
        });
    }

    // What the search arranges by itself is kept where the locks are met by it: a lock on what stands must not move all the rest.
    private static GroupingOutcome.Matched? AsWithoutLocks(GroupingRequest request, int needed, IProgress<GroupingProgress>? progress, CancellationToken stop)
    {
        if (request.Existing is not null || request.Locks.Count == 0 || request.Locks.Count >= needed)
            return null;
        return Match(request with { Locks = new Dictionary<string, int>() }, progress, stop) is GroupingOutcome.Matched free
            && request.Locks.All(pin => free.Pack.Groups[pin.Value - 1].Cells.Any(cell => cell.Label == pin.Key)) ? free : null;
    }

    /// <summary>Expected range of the groups' sums that measurement noise alone would show.</summary>
    /// <param name="repeatabilityFraction">Relative standard deviation of one capacity test.</param>
    /// <param name="meanAh">Mean capacity of the cells, ampere-hours.</param>
    /// <param name="series">Groups.</param>
    /// <param name="parallel">Cells in each.</param>
    /// <returns>Ampere-hours.</returns>
    public static double NoiseSpreadAh(double repeatabilityFraction, double meanAh, int series, int parallel) =>
        MeasurementNoise.ExpectedRange(series, MeasurementNoise.OfGroup(repeatabilityFraction, meanAh, parallel));

    /// <summary>What one kind of preference makes of the strict answer.</summary>
    private static GroupingTrial Choose(GroupingRequest request, SortedLot lot, StrictAnswer strict, CancellationToken stop)
    {
        SearchBudget budget = new(LevellingSteps(request), stop);
        if (request.Existing is not null && request.AsItIs)
            return FewMoves.AsItIs(request, lot);
        if (request.Existing is not null && request.FewestMoves)
            return strict.Best;
        if (!lot.AllResistancesKnown)
            return strict.Best;
        if (request.Prefer == GroupingPreference.EvenCurrents)
            return EvenCurrents.Arrange(lot, strict.Best, budget, (ulong)request.Seed);
        return Levelled(request, lot, strict.Best, budget, null);
    }

    // Without a band resistance only breaks ties, and there are few to break.
    private static long LevellingSteps(GroupingRequest request) =>
        request.RepeatabilityFraction > 0 || request.Prefer == GroupingPreference.EvenCurrents ? request.LevellingSteps : request.LevellingSteps / 8;

    private static double Noise(GroupingRequest request, SortedLot lot) =>
        MeasurementNoise.OfGroup(request.RepeatabilityFraction ?? 0, lot.MeanSteps, request.Parallel);

    /// <summary>Group resistances made alike inside the band about a grouping.</summary>
    private static GroupingTrial Levelled(
        GroupingRequest request, SortedLot lot, GroupingTrial from, SearchBudget budget, Func<int, int, bool>? allows)
    {
        (long low, long high) = Band(from, Noise(request, lot));
        LevellingProblem levelling = new(lot.Problem, lot.ConductanceS, lot.BaseConductanceS, low, high) { Allows = allows };
        return GroupingTrial.Of(lot.Problem, ResistanceLevelling.Level(levelling, from.GroupOf, budget, (ulong)request.Seed));
    }

    /// <summary>
    /// Where group sums may lie once the strict aims are known: as wide as the strict spread or half the noise of a group,
    /// whichever is more, about the middle of the strict answer. Without stated noise the strict sums themselves.
    /// </summary>
    internal static (long Low, long High) Band(GroupingTrial strict, double noiseSteps)
    {
        double middle = (strict.Smallest + strict.Largest) / 2.0;
        double half = Math.Max(strict.Spread, noiseSteps / 2) / 2;
        return ((long)Math.Ceiling(middle - half - 1e-6), (long)Math.Floor(middle + half + 1e-6));
    }
}
