namespace PackPlanner.Core.Grouping;

/// <summary>Betters an existing grouping by single exchanges, each as large a gain as there is, until it is good enough.</summary>
internal static class FewestMovesSearch
{
    /// <param name="problem">The cells and groups.</param>
    /// <param name="existing">Group of each free cell, -1 for none; groups may have empty places.</param>
    /// <param name="goodEnough">Steps: no further exchange once the smallest group holds this.</param>
    internal static GroupingTrial Improve(GroupingProblem problem, int[] existing, long goodEnough)
    {
        int[] completed = Completed(problem, existing);
        GroupingTrial current = GroupingTrial.Of(problem, completed);
        while (current.Smallest < goodEnough && BestExchange(problem, current, completed) is { } better)
            current = better;
        return current;
    }

    /// <summary>Cells that a lock has crowded out go to the spares; empty places take the largest spares, the poorest group first.</summary>
    private static int[] Completed(GroupingProblem problem, int[] existing)
    {
        int[] groupOf = [.. existing];
        int[] open = [.. problem.Places];
        long[] sum = [.. problem.BaseSum];
        for (int i = 0; i < groupOf.Length; i++)
        {
            int group = groupOf[i];
            if (group >= 0 && open[group] == 0)
                groupOf[i] = -1;
            if (groupOf[i] < 0)
                continue;
            open[group]--;
            sum[group] += problem.Capacity[i];
        }

        for (int i = 0; i < groupOf.Length; i++)
        {
            if (groupOf[i] >= 0)
                continue;
            int poorest = -1;
            for (int g = 0; g < sum.Length; g++)
                if (open[g] > 0 && (poorest < 0 || sum[g] < sum[poorest]))
                    poorest = g;
            if (poorest < 0)
                break;
            groupOf[i] = poorest;
            open[poorest]--;
            sum[poorest] += problem.Capacity[i];
        }

        return groupOf;
    }

    /// <summary>The exchange that raises the first of the smallest groups most; null when none raises it.</summary>
    private static GroupingTrial? BestExchange(GroupingProblem problem, GroupingTrial current, int[] before)
    {
        int poor = Array.IndexOf(current.Sum, current.Smallest);
        (long best, (int Moved, long Unlike) bestTie, int inCell, int outCell) = (current.Smallest, (int.MaxValue, 0), -1, -1);
        for (int a = 0; a < current.GroupOf.Length; a++)
        {
            if (current.GroupOf[a] != poor)
                continue;
            for (int b = 0; b < current.GroupOf.Length; b++)
            {
                int giver = current.GroupOf[b];
                long gain = problem.Capacity[b] - problem.Capacity[a];
                if (giver == poor || gain <= 0)
                    continue;
                long raised = current.Smallest + gain;
                long lowered = giver < 0 ? long.MaxValue : current.Sum[giver] - gain;
                long smallest = Math.Min(raised, lowered);

                // Of equal gains the one that leaves fewer cells away from where they were welded.
                int moved = Moved(before[a], poor, giver) + Moved(before[b], giver, poor);
                (int, long) tie = (moved, giver < 0 ? 0 : Math.Abs(raised - lowered) + 1);
                if (smallest > best || (smallest == best && inCell >= 0 && tie.CompareTo(bestTie) < 0))
                    (best, bestTie, inCell, outCell) = (smallest, tie, b, a);
            }
        }

        if (inCell < 0)
            return null;
        int[] groupOf = [.. current.GroupOf];
        (groupOf[inCell], groupOf[outCell]) = (groupOf[outCell], groupOf[inCell]);
        return GroupingTrial.Of(problem, groupOf);
    }

    /// <summary>What taking a cell from one group to another adds to the count of cells that moved; a spare that stays out is none.</summary>
    private static int Moved(int before, int from, int to) => (to == before || to < 0 ? 0 : 1) - (from == before || from < 0 ? 0 : 1);
}
