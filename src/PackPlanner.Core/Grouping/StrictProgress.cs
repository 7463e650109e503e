namespace PackPlanner.Core.Grouping;

/// <summary>What a search for the strict aims has found and proven so far, shared by the ways that it tries.</summary>
internal sealed class StrictProgress(GroupingProblem problem, SearchBudget budget, Dice dice, long closeEnough, Action<GroupingTrial>? onBetter)
{
    // A field, because every draw changes it.
    internal Dice Dice = dice;

    internal GroupingProblem Problem => problem;

    internal SearchBudget Budget => budget;

    /// <summary>The best grouping so far.</summary>
    internal GroupingTrial Best { get; set; } = null!;

    /// <summary>No grouping has a smallest group above this, in steps.</summary>
    internal long Bound { get; set; }

    /// <summary>No grouping with this smallest group has less spread, in steps.</summary>
    internal long SpreadBound { get; set; }

    /// <summary>1 when no choice of cells has a total that S equal groups at the sum bound would need.</summary>
    internal long LeastSpread { get; set; }

    /// <summary>True when both aims are met to within what is close enough.</summary>
    internal bool Done => Bound - Best.Smallest <= closeEnough && Best.Spread - SpreadBound <= closeEnough;

    /// <summary>Takes the first grouping.</summary>
    internal void Begin(GroupingTrial trial)
    {
        Best = trial;
        onBetter?.Invoke(trial);
    }

    /// <summary>Takes a grouping if it is better.</summary>
    internal void Take(GroupingTrial trial)
    {
        if (!trial.IsBetterThan(Best))
            return;
        bool higher = trial.Smallest > Best.Smallest;
        Best = trial;
        if (higher)
            BoundSpread();
        onBetter?.Invoke(trial);
    }

    /// <summary>The bound on the spread beside the smallest group that was found.</summary>
    internal void BoundSpread()
    {
        // The sum argument holds only at the sum bound; below it the groups may also all be equal.
        long atSum = Best.Smallest == problem.BestTotal / problem.Series ? LeastSpread : 0;
        SpreadBound = Math.Max(atSum, GroupingBounds.OnLargest(problem, Best.Smallest) - Best.Smallest);
    }

    /// <summary>A new assignment in which no cell has a group; shape [cells].</summary>
    internal int[] Unassigned()
    {
        int[] groupOf = new int[problem.Capacity.Length];
        Array.Fill(groupOf, -1);
        return groupOf;
    }
}
