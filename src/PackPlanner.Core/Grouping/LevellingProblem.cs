namespace PackPlanner.Core.Grouping;

/// <summary>The same cells and groups with what decides a group's resistance, and the band that the sums must keep.</summary>
/// <param name="Cells">The capacities.</param>
/// <param name="ConductanceS">Siemens of each free cell, above zero.</param>
/// <param name="BaseConductanceS">Siemens of the pinned cells of each group.</param>
/// <param name="Low">Steps: no group may be below.</param>
/// <param name="High">Steps: none may be above.</param>
internal sealed record LevellingProblem(
    GroupingProblem Cells, double[] ConductanceS, double[] BaseConductanceS, long Low, long High)
{
    /// <summary>Whether a free cell may stand in a group, -1 for out; null: all may. Such a problem is annealed only, never searched completely.</summary>
    internal Func<int, int, bool>? Allows { get; init; }

    /// <summary>Ohms between the group of most and of least resistance.</summary>
    internal double SpreadOhm(int[] groupOf)
    {
        double[] conductance = GroupConductanceS(groupOf);
        return (1 / conductance.Min()) - (1 / conductance.Max());
    }

    internal double[] GroupConductanceS(int[] groupOf)
    {
        double[] conductance = [.. BaseConductanceS];
        for (int i = 0; i < groupOf.Length; i++)
            if (groupOf[i] >= 0)
                conductance[groupOf[i]] += ConductanceS[i];
        return conductance;
    }
}
