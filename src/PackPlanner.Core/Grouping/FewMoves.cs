namespace PackPlanner.Core.Grouping;

/// <summary>An existing grouping made whole, and bettered only as far as it must be, with as few cells moved as can be.</summary>
internal static class FewMoves
{
    // Some tenths of a second: all ways to move five cells of a pack of twenty, four of one of eighty.
    private const long MovesSteps = 20_000_000;

    // One place in each of a hundred groups is filled to the last step with far fewer.
    private const long FillingSteps = 20_000_000;

    /// <summary>Fills the empty places and moves what else must move.</summary>
    /// <returns>The grouping, and no fewer moves than Least serve, as far as that is proven: null where it is not.</returns>
    internal static (int? Least, GroupingTrial Chosen) Of(GroupingRequest request, SortedLot lot, StrictAnswer strict, CancellationToken stop)
    {
        int[] existing = lot.ExistingGroupOf(request);
        long aim = GoodEnough(request, lot, strict);
        int[] open = [.. Enumerable.Range(0, request.Series).Select(g => lot.Problem.Places[g] - existing.Count(group => group == g))];
        GroupingTrial descent = FewestMovesSearch.Improve(lot.Problem, existing, aim);
        if (Array.Exists(open, places => places < 0))
            return (null, descent);
        if (!open.AsSpan().ContainsAnyExcept(0))
            return Fewer(lot.Problem, GroupingTrial.Of(lot.Problem, existing), descent, aim, stop);

        // Every empty place takes one cell: no fewer can move, and where that is good enough none else does.
        int filled = open.Sum();
        if (request.Shunned.Count > 0 && Filled(request, lot, existing, shunning: true, stop) is { } unwarned && unwarned.Smallest >= aim)
            return (filled + Lost(request), unwarned);
        if (Filled(request, lot, existing, shunning: false, stop) is not { } best)
            return (null, descent);
        if (best.Smallest >= aim)
            return (filled + Lost(request), best);
        (_, GroupingTrial fewer) = Fewer(lot.Problem, best, FewestMovesSearch.Improve(lot.Problem, best.GroupOf, aim), aim, stop);
        return (null, descent.Smallest >= Math.Min(aim, fewer.Smallest) && Away(descent, existing) < Away(fewer, existing) ? descent : fewer);
    }

    /// <summary>Takes the existing grouping as it stands and fills its empty places.</summary>
    internal static GroupingTrial AsItIs(GroupingRequest request, SortedLot lot) =>
        FewestMovesSearch.Improve(lot.Problem, lot.ExistingGroupOf(request), long.MinValue);

    // Cells of the existing grouping that may not be used any more: they come out.
    private static int Lost(GroupingRequest request)
    {
        HashSet<string> usable = [.. request.Cells.Select(cell => cell.Label)];
        return request.Existing!.Sum(group => group.Count(label => !usable.Contains(label)));
    }

    // Steps: cells are not cut out of an existing grouping for what measuring cannot tell apart. Where a cell was lost, what noise alone would show
    // between equal groups is borne by the pack; else, without a stated repeatability, nothing is given away.
    private static long GoodEnough(GroupingRequest request, SortedLot lot, StrictAnswer strict)
    {
        bool whole = request.Existing!.Sum(group => group.Count) - Lost(request) >= request.Series * request.Parallel;
        double tau = MeasurementNoise.OfGroup(request.RepeatabilityFraction ?? 0, lot.MeanSteps, request.Parallel);
        double lost = whole && !request.LossWithinNoise
            ? tau / 4
            : MeasurementNoise.ExpectedRange(request.Series, MeasurementNoise.OfGroup(request.NoiseFraction, lot.MeanSteps, request.Parallel));
        return strict.Best.Smallest - (long)lost;
    }

    // The best that can be had with every cell that stands left standing; null where there are too few that are not shunned.
    private static GroupingTrial? Filled(GroupingRequest request, SortedLot lot, int[] existing, bool shunning, CancellationToken stop)
    {
        Dictionary<string, int> at = new(request.Locks, StringComparer.Ordinal);
        for (int i = 0; i < existing.Length; i++)
            if (existing[i] >= 0)
                at[lot.Free[i].Label] = existing[i] + 1;
        GroupingCell[] cells = [.. request.Cells.Where(cell => !shunning || at.ContainsKey(cell.Label) || !request.Shunned.Contains(cell.Label))];
        if (cells.Length < request.Series * request.Parallel)
            return null;
        SortedLot filling = SortedLot.Of(request with { Cells = cells, Locks = at });
        GroupingTrial best = StrictSearch.Solve(filling.Problem, new SearchBudget(FillingSteps, stop), (ulong)request.Seed, 0, null).Best;
        for (int i = 0; i < filling.Free.Length; i++)
            if (best.GroupOf[i] >= 0)
                at[filling.Free[i].Label] = best.GroupOf[i] + 1;
        return GroupingTrial.Of(lot.Problem, [.. lot.Free.Select(cell => at.TryGetValue(cell.Label, out int group) ? group - 1 : -1)]);
    }

    // The descent may take more moves than are needed: all ways to move fewer are looked at, as far as the steps last.
    private static (int Least, GroupingTrial Chosen) Fewer(GroupingProblem problem, GroupingTrial before, GroupingTrial descent, long aim, CancellationToken stop)
    {
        (int least, GroupingTrial? better) = FewestMovesDeepening.Solve(
            problem, before, Math.Min(descent.Smallest, aim), Away(descent, before.GroupOf), new SearchBudget(MovesSteps, stop));
        return (least, better ?? descent);
    }

    private static int Away(GroupingTrial trial, int[] from) => trial.GroupOf.Zip(from).Count(cell => cell.First != cell.Second);
}
