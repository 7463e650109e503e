namespace PackPlanner.Core.Grouping;

/// <summary>Groups of one or two cells with nothing pinned: both aims exactly, at any size.</summary>
/// <remarks>
/// One in parallel: the S largest fix the smallest group; of the cells at least as large, the S smallest have the least
/// spread. Two in parallel: the largest with the smallest of the 2S largest gives the largest smallest pair. For the
/// spread: of the cells left, look at the largest x and the smallest y. If x + y is below the window no cell can use y; if
/// above, none can use x; else some best answer joins them (were they joined to k and l, then x + y and k + l would do as
/// well, since l + y is not above k + l and k + l not above k + x). So the count of pairs inside a window is found by two
/// pointers, and the least width by halving. By hand; tests enumerate it.
/// </remarks>
internal static class SmallGroups
{
    internal static GroupingTrial Solve(GroupingProblem problem) =>
        problem.Parallel == 1 ? Ones(problem) : Pairs(problem);

    private static GroupingTrial Ones(GroupingProblem problem)
    {
        int[] groupOf = new int[problem.Capacity.Length];
        Array.Fill(groupOf, -1);
        long smallest = problem.Capacity[problem.Series - 1];
        int end = problem.Series;
        while (end < problem.Capacity.Length && problem.Capacity[end] == smallest)
            end++;
        for (int g = 0; g < problem.Series; g++)
            groupOf[end - problem.Series + g] = g;
        return GroupingTrial.Of(problem, groupOf);
    }

    private static GroupingTrial Pairs(GroupingProblem problem)
    {
        long[] cells = problem.Capacity;
        int needed = problem.Needed;
        (long smallest, long largest) = (long.MaxValue, long.MinValue);
        for (int g = 0; g < problem.Series; g++)
        {
            long sum = cells[g] + cells[needed - 1 - g];
            smallest = Math.Min(smallest, sum);
            largest = Math.Max(largest, sum);
        }

        (long narrow, long wide) = (0, largest - smallest);
        while (narrow < wide)
        {
            long width = narrow + ((wide - narrow) / 2);
            if (PairsWithin(cells, smallest, smallest + width, problem.Series, null) == problem.Series)
                wide = width;
            else
                narrow = width + 1;
        }

        int[] groupOf = new int[cells.Length];
        Array.Fill(groupOf, -1);
        PairsWithin(cells, smallest, smallest + wide, problem.Series, groupOf);
        return GroupingTrial.Of(problem, groupOf);
    }

    private static int PairsWithin(long[] cells, long low, long high, int most, int[]? groupOf)
    {
        (int top, int bottom, int pairs) = (0, cells.Length - 1, 0);
        while (top < bottom && pairs < most)
        {
            long sum = cells[top] + cells[bottom];
            if (sum < low)
            {
                bottom--;
            }
            else if (sum > high)
            {
                top++;
            }
            else
            {
                if (groupOf is not null)
                    (groupOf[top], groupOf[bottom]) = (pairs, pairs);
                (top, bottom, pairs) = (top + 1, bottom - 1, pairs + 1);
            }
        }

        return pairs;
    }
}
