namespace PackPlanner.Core.Grouping;

/// <summary>Upper bounds on the smallest group, by arguments that hold for every grouping of the same cells.</summary>
/// <remarks>
/// All take the S x P used cells as given. That loses nothing for the smallest group: swapping a left-out larger cell for
/// a used smaller one never lowers a group. See docs/methods/grouping.md for the arguments.
/// </remarks>
internal static class GroupingBounds
{
    /// <summary>How many weak cells are looked at together; more never gave a better bound in trials and cost S squared.</summary>
    private const int MostWeakCells = 48;

    /// <summary>The least of all bounds on the smallest group, in steps.</summary>
    internal static long OnSmallest(GroupingProblem problem)
    {
        long[] used = UsedCells(problem);
        long bound = OnSmallest(used, problem.Series, problem.Parallel);
        for (int g = 0; g < problem.Series; g++)
        {
            long best = problem.BaseSum[g];
            for (int i = 0; i < problem.Places[g]; i++)
                best += problem.Capacity[i];
            bound = Math.Min(bound, best);
        }

        return bound;
    }

    /// <summary>
    /// A lower bound on the largest group, in steps, when the smallest group is <paramref name="smallest"/>: the mirror
    /// image where there are no spares, else no more than the smallest group itself.
    /// </summary>
    internal static long OnLargest(GroupingProblem problem, long smallest)
    {
        if (problem.Spares > 0)
            return smallest;
        long[] used = UsedCells(problem);
        long top = used[0];
        long[] mirrored = new long[used.Length];
        for (int i = 0; i < used.Length; i++)
            mirrored[i] = top - used[^(i + 1)];
        long bound = (problem.Parallel * top) - OnSmallest(mirrored, problem.Series, problem.Parallel);
        for (int g = 0; g < problem.Series; g++)
        {
            long least = problem.BaseSum[g];
            for (int i = 0; i < problem.Places[g]; i++)
                least += problem.Capacity[^(i + 1)];
            bound = Math.Max(bound, least);
        }

        return Math.Max(bound, smallest);
    }

    /// <summary>The least bound for S groups of P out of exactly S x P cells sorted downwards, in steps.</summary>
    internal static long OnSmallest(ReadOnlySpan<long> used, int series, int parallel)
    {
        long[] before = new long[used.Length + 1];
        for (int i = 0; i < used.Length; i++)
            before[i + 1] = before[i] + used[i];
        long bound = FloorDivide(before[^1], series);
        bound = Math.Min(bound, Largest(before, series, parallel));
        bound = Math.Min(bound, Pigeonhole(before, series, parallel));
        return Math.Min(bound, WeakCells(before, series, parallel));
    }

    /// <summary>The i largest cells touch at most i groups; the others hold only cells ranked after them.</summary>
    private static long Largest(long[] before, int series, int parallel)
    {
        long bound = long.MaxValue;
        for (int i = 1; i < series; i++)
        {
            int groups = series - i;
            bound = Math.Min(bound, FloorDivide(before[i + (groups * parallel)] - before[i], groups));
        }

        return bound;
    }

    /// <summary>Among the j x S + 1 smallest cells some group holds j + 1 of them.</summary>
    private static long Pigeonhole(long[] before, int series, int parallel)
    {
        int count = before.Length - 1;
        long bound = long.MaxValue;
        for (int j = 0; j < parallel; j++)
        {
            int first = count - ((j * series) + 1);
            bound = Math.Min(bound, before[first + j + 1] - before[first] + before[parallel - j - 1]);
        }

        return bound;
    }

    /// <summary>The i smallest cells sit in m groups; the best case over m, the least over i.</summary>
    private static long WeakCells(long[] before, int series, int parallel)
    {
        int count = before.Length - 1;
        long bound = long.MaxValue;
        for (int weak = 1; weak <= Math.Min(Math.Min(MostWeakCells, series * 2), count); weak++)
        {
            long bestCase = long.MinValue;
            int fewest = (weak + parallel - 1) / parallel;
            for (int m = fewest; m <= Math.Min(weak, series); m++)
                bestCase = Math.Max(bestCase, WeakCellsIn(before, parallel, weak, m));
            bound = Math.Min(bound, bestCase);
        }

        return bound;
    }

    private static long WeakCellsIn(long[] before, int parallel, int weak, int groups)
    {
        int count = before.Length - 1;
        int firstWeak = count - weak;
        long total = before[count] - before[firstWeak] + before[(groups * parallel) - weak];
        long bound = FloorDivide(total, groups);
        if (groups < weak)
        {
            // Some group holds two of them.
            long pair = before[firstWeak + 2] - before[firstWeak] + before[parallel - 2];
            return Math.Min(bound, pair);
        }

        // One weak cell in each group; at most j of the groups hold the j largest cells.
        for (int j = 1; j < weak; j++)
        {
            int others = weak - j;
            int strong = others * (parallel - 1);
            if (j + strong > firstWeak)
                break;
            long rest = before[firstWeak + others] - before[firstWeak] + before[j + strong] - before[j];
            bound = Math.Min(bound, FloorDivide(rest, others));
        }

        return bound;
    }

    private static long[] UsedCells(GroupingProblem problem)
    {
        long[] used = [.. problem.Pinned, .. problem.Capacity.AsSpan(0, problem.Needed)];
        Array.Sort(used);
        Array.Reverse(used);
        return used;
    }

    private static long FloorDivide(long dividend, long divisor) =>
        (dividend / divisor) - (dividend % divisor < 0 ? 1 : 0);
}
