namespace PackPlanner.Core.Grouping;

/// <summary>One complete assignment of the free cells, and its figures in steps.</summary>
internal sealed class GroupingTrial
{
    private GroupingTrial(int[] groupOf, long[] sum)
    {
        GroupOf = groupOf;
        Sum = sum;
        Smallest = sum.Min();
        Largest = sum.Max();
    }

    /// <summary>For each free cell of the problem its group from 0, or -1 when it is left out.</summary>
    internal int[] GroupOf { get; }

    /// <summary>Steps in each group, pinned cells included.</summary>
    internal long[] Sum { get; }

    /// <summary>Steps in the smallest group.</summary>
    internal long Smallest { get; }

    /// <summary>Steps in the largest group.</summary>
    internal long Largest { get; }

    /// <summary>Largest less smallest, steps.</summary>
    internal long Spread => Largest - Smallest;

    /// <summary>Adds up an assignment and checks its sizes.</summary>
    /// <exception cref="ArgumentException">A group does not have exactly the cells it has places for.</exception>
    internal static GroupingTrial Of(GroupingProblem problem, int[] groupOf)
    {
        long[] sum = [.. problem.BaseSum];
        int[] open = [.. problem.Places];
        for (int i = 0; i < groupOf.Length; i++)
        {
            int group = groupOf[i];
            if (group < 0)
                continue;
            sum[group] += problem.Capacity[i];
            open[group]--;
        }

        if (open.AsSpan().ContainsAnyExcept(0))
            throw new ArgumentException("Every group must be filled exactly.", nameof(groupOf));
        return new GroupingTrial(groupOf, sum);
    }

    /// <summary>True when the smallest group is larger, or as large with less spread.</summary>
    internal bool IsBetterThan(GroupingTrial? other) =>
        other is null || Smallest > other.Smallest || (Smallest == other.Smallest && Largest < other.Largest);
}
