namespace PackPlanner.Core.Grouping;

/// <summary>How few cells of a grouping must change places so that its smallest group holds an aim: every way to move two cells, then three, and so on.</summary>
/// <remarks>
/// Whatever moves falls into rounds: a cell comes into a group, one of that group goes on to a second, one of the second to a third, until one comes
/// into the group that the first left. The spares are one more group, without an aim. A poor group takes in a cell that is larger than one it gives,
/// so a round begins with such two, at the first group below the aim; once none is below, all is done.
/// </remarks>
internal sealed class FewestMovesDeepening
{
    private readonly GroupingProblem problem;
    private readonly long aim;
    private readonly SearchBudget budget;
    private readonly int[] groupOf;
    private readonly long[] sum;
    private readonly bool[] moved;
    private int below;
    private GroupingTrial? best;

    private FewestMovesDeepening(GroupingProblem problem, GroupingTrial before, long aim, SearchBudget budget)
    {
        (this.problem, this.aim, this.budget) = (problem, aim, budget);
        groupOf = [.. before.GroupOf];
        sum = [.. before.Sum];
        moved = new bool[groupOf.Length];
        below = sum.Count(held => held < aim);
    }

    /// <summary>Looks through all ways to move fewer cells than a known way does.</summary>
    /// <param name="problem">The cells and groups.</param>
    /// <param name="before">The existing grouping, every group full.</param>
    /// <param name="aim">Steps that the smallest group is to hold.</param>
    /// <param name="known">Cells that a known way moves, counting those that go in or out.</param>
    /// <param name="budget">Ends the looking.</param>
    /// <returns>
    /// No fewer cells than Least move, proven; and of the ways to move the fewest cells the best that was looked at, null where the known way stands.
    /// </returns>
    internal static (int Least, GroupingTrial? Better) Solve(GroupingProblem problem, GroupingTrial before, long aim, int known, SearchBudget budget)
    {
        FewestMovesDeepening search = new(problem, before, aim, budget);
        if (search.below == 0)
            return (0, known > 0 ? before : null);

        // Each group below the aim takes a cell in, and one more cell goes to a richer group or out.
        int least = search.below + 1;
        for (; least < known && !budget.Spent; least++)
        {
            search.Begin(least);
            if (search.best is not null)
                return (least, search.best);
            if (budget.Spent)
                break;
        }

        return (Math.Min(least, known), null);
    }

    // One round more, at the first group below the aim.
    private void Begin(int left)
    {
        if (below == 0)
        {
            GroupingTrial found = GroupingTrial.Of(problem, [.. groupOf]);
            if (found.IsBetterThan(best))
                best = found;
            return;
        }

        if (below + 1 > left)
            return;
        int poor = Array.FindIndex(sum, held => held < aim);
        for (int comes = 0; comes < groupOf.Length; comes++)
        {
            int hole = groupOf[comes];
            if (hole == poor || moved[comes])
                continue;
            Move(comes, poor);
            for (int goes = groupOf.Length - 1; goes > comes && budget.Spend(1); goes--)
                if (groupOf[goes] == poor && !moved[goes] && problem.Capacity[goes] < problem.Capacity[comes])
                    GoOn(goes, hole, left - 2);
            Back(comes, hole);
            if (budget.Spent)
                return;
        }
    }

    // A cell has left its group in favour of another: into the hole with it, or into a third group, from which one more goes on.
    private void GoOn(int cell, int hole, int left)
    {
        int from = groupOf[cell];
        Move(cell, hole);
        if (below <= Math.Max(0, left - 1))
            Begin(left);
        Back(cell, from);
        if (left == 0)
            return;
        for (int next = 0; next < groupOf.Length && budget.Spend(1); next++)
        {
            int through = groupOf[next];
            if (moved[next] || next == cell || through == from || through == hole)
                continue;
            Move(cell, through);
            GoOn(next, hole, left - 1);
            Back(cell, from);
        }
    }

    private void Move(int cell, int to)
    {
        Put(cell, to);
        moved[cell] = true;
    }

    private void Back(int cell, int from)
    {
        Put(cell, from);
        moved[cell] = false;
    }

    private void Put(int cell, int to)
    {
        Add(groupOf[cell], -problem.Capacity[cell]);
        Add(to, problem.Capacity[cell]);
        groupOf[cell] = to;
    }

    private void Add(int group, long steps)
    {
        if (group < 0)
            return;
        below -= sum[group] < aim ? 1 : 0;
        sum[group] += steps;
        below += sum[group] < aim ? 1 : 0;
    }
}
