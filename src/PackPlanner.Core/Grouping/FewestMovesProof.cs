namespace PackPlanner.Core.Grouping;

/// <summary>How few cells of a grouping must change places, at least, so that its smallest group holds what a search reached.</summary>
/// <remarks>
/// Each group below the aim must take in a cell, and one more cell must go to a richer group or out: one more than there are such
/// groups. Below four, all exchanges of two cells and all rotations of three are looked at. Two cells: one exchange.
/// </remarks>
internal static class FewestMovesProof
{
    // Rotations are looked at in cubic time.
    private const int MostCellsForRotations = 400;

    /// <param name="problem">The cells and groups.</param>
    /// <param name="before">The existing grouping, every group full.</param>
    /// <param name="aim">Steps that the smallest group is to hold.</param>
    /// <returns>No fewer cells than this move, counting those that go in or out.</returns>
    internal static int Least(GroupingProblem problem, GroupingTrial before, long aim)
    {
        int below = before.Sum.Count(sum => sum < aim);
        if (below == 0)
            return 0;
        int least = below + 1;
        if (least == 2 && !Exchange(problem, before, aim))
            least = 3;
        if (least == 3 && before.GroupOf.Length <= MostCellsForRotations && !Rotation(problem, before, aim))
            least = 4;
        return least;
    }

    private static bool Exchange(GroupingProblem problem, GroupingTrial t, long aim)
    {
        int poor = Array.FindIndex(t.Sum, sum => sum < aim);
        for (int a = 0; a < t.GroupOf.Length; a++)
        {
            for (int b = 0; t.GroupOf[a] == poor && b < t.GroupOf.Length; b++)
            {
                long gain = problem.Capacity[b] - problem.Capacity[a];
                if (t.GroupOf[b] != poor && t.Sum[poor] + gain >= aim && (t.GroupOf[b] < 0 || t.Sum[t.GroupOf[b]] - gain >= aim))
                    return true;
            }
        }

        return false;
    }

    // a leaves the poor group for the place of c, c goes to the place of b, b goes to the poor group; spares are one more group without an aim.
    private static bool Rotation(GroupingProblem problem, GroupingTrial t, long aim)
    {
        int[] poor = [.. Enumerable.Range(0, t.Sum.Length).Where(g => t.Sum[g] < aim)];
        long Sum(int group) => group < 0 ? long.MaxValue / 2 : t.Sum[group];
        for (int a = 0; a < t.GroupOf.Length; a++)
        {
            if (t.GroupOf[a] != poor[0])
                continue;
            for (int b = 0; b < t.GroupOf.Length; b++)
            {
                if (t.GroupOf[b] == poor[0] || t.Sum[poor[0]] + problem.Capacity[b] - problem.Capacity[a] < aim)
                    continue;
                for (int c = 0; c < t.GroupOf.Length; c++)
                {
                    if (t.GroupOf[c] == poor[0] || t.GroupOf[c] == t.GroupOf[b])
                        continue;
                    bool others = poor.All(g => g == poor[0] || g == t.GroupOf[b] || g == t.GroupOf[c]);
                    if (others && Sum(t.GroupOf[b]) - problem.Capacity[b] + problem.Capacity[c] >= aim
                        && Sum(t.GroupOf[c]) - problem.Capacity[c] + problem.Capacity[a] >= aim)
                        return true;
                }
            }
        }

        return false;
    }
}
