namespace PackPlanner.Core.Grouping;

/// <summary>
/// The bare problem: whole numbers of the tester's resolution, the free cells sorted downwards, and what is already
/// fixed in each group.
/// </summary>
/// <remarks>
/// A pin is not a rule to be checked in every loop: a group with pinned cells is a group that starts at a base sum and has
/// fewer open places. All searches see only that.
/// </remarks>
internal sealed class GroupingProblem
{
    /// <param name="capacity">Steps, the free cells only, sorted downwards.</param>
    /// <param name="parallel">Cells in each group, P.</param>
    /// <param name="baseSum">Steps already pinned in each group; its length is S.</param>
    /// <param name="places">Open places of each group, 0 to P.</param>
    /// <param name="pinned">Steps of the pinned cells, in any order; needed by the bounds only.</param>
    /// <exception cref="ArgumentException">The cells are not sorted downwards, or too few for the open places.</exception>
    internal GroupingProblem(long[] capacity, int parallel, long[] baseSum, int[] places, long[] pinned)
    {
        for (int i = 1; i < capacity.Length; i++)
            if (capacity[i] > capacity[i - 1])
                throw new ArgumentException("The cells must be sorted downwards.", nameof(capacity));
        Capacity = capacity;
        Parallel = parallel;
        BaseSum = baseSum;
        Places = places;
        Pinned = pinned;
        foreach (int open in places)
            Needed += open;
        if (capacity.Length < Needed)
            throw new ArgumentException("There are fewer cells than open places.", nameof(capacity));
        if (Needed + pinned.Length != Series * parallel)
            throw new ArgumentException("Pinned cells and open places must make S times P.", nameof(places));
        long total = 0;
        foreach (long sum in baseSum)
            total += sum;
        for (int i = 0; i < Needed; i++)
            total += capacity[i];
        BestTotal = total;
    }

    internal long[] Capacity { get; }

    internal int Parallel { get; }

    internal long[] BaseSum { get; }

    internal int[] Places { get; }

    internal long[] Pinned { get; }

    internal int Series => BaseSum.Length;

    internal int Needed { get; }

    internal int Spares => Capacity.Length - Needed;

    internal bool HasPins => Pinned.Length > 0;

    /// <summary>Steps of the largest cells that the open places can take, pinned cells included.</summary>
    internal long BestTotal { get; }

    /// <summary>The usual case: nothing pinned.</summary>
    internal static GroupingProblem Free(long[] sortedDownwards, int series, int parallel)
    {
        int[] places = new int[series];
        Array.Fill(places, parallel);
        return new GroupingProblem(sortedDownwards, parallel, new long[series], places, []);
    }
}
