namespace PackPlanner.Core.Grouping;

/// <summary>A request made ready for the searches: free cells sorted downwards, pinned ones in their groups.</summary>
/// <remarks>
/// Cells are ordered by capacity, then resistance, then label, so that the order of rows changes nothing, and labels decide
/// only between cells that are alike in every figure.
/// </remarks>
internal sealed class SortedLot
{
    private readonly CapacitySteps _steps;

    private SortedLot(
        GroupingCell[] free, GroupingCell[][] pinned, CapacitySteps steps, GroupingProblem problem)
    {
        (Free, Pinned, _steps, Problem) = (free, pinned, steps, problem);
        AllResistancesKnown = free.Concat(pinned.SelectMany(cells => cells)).All(cell => cell.ResistanceMilliohm is not null);
        ConductanceS = AllResistancesKnown ? [.. free.Select(Siemens)] : [];
        BaseConductanceS = AllResistancesKnown ? [.. pinned.Select(cells => cells.Sum(Siemens))] : [];
    }

    /// <summary>Free cells as the problem numbers them.</summary>
    internal GroupingCell[] Free { get; }

    /// <summary>Pinned cells of each group.</summary>
    internal GroupingCell[][] Pinned { get; }

    internal GroupingProblem Problem { get; }

    /// <summary>Of each free cell; empty where a resistance is unknown.</summary>
    internal double[] ConductanceS { get; }

    /// <summary>Of the pinned cells of each group; empty where a resistance is unknown.</summary>
    internal double[] BaseConductanceS { get; }

    internal bool AllResistancesKnown { get; }

    /// <summary>Mean capacity of the cells that the largest grouping uses, in steps.</summary>
    internal double MeanSteps => (double)Problem.BestTotal / (Problem.Series * Problem.Parallel);

    internal double StepAh => _steps.StepAh;

    internal double InAh(long steps) => _steps.InAh(steps);

    internal long StepsOf(GroupingCell cell) => _steps.StepsOf(cell.CapacityAh);

    /// <summary>The exact sum of the capacities as typed.</summary>
    internal double SumAh(IEnumerable<GroupingCell> cells) => _steps.InAh(cells.Sum(StepsOf));

    /// <summary>Steps finer than the tester's own: within them two answers are alike to anyone who reads the tester.</summary>
    internal long CloseEnough(double? testerStepAh) =>
        testerStepAh is { } step ? Math.Max(0, (long)Math.Round(step / StepAh) - 1) : 0;

    internal GroupingProgress Progress(GroupingTrial trial) => new(InAh(trial.Smallest), InAh(trial.Spread));

    private static double Siemens(GroupingCell cell) => 1000 / cell.ResistanceMilliohm!.Value;

    internal static SortedLot Of(GroupingRequest request)
    {
        GroupingCell[] sorted =
        [
            .. request.Cells
                .OrderByDescending(cell => cell.CapacityAh)
                .ThenBy(cell => cell.ResistanceMilliohm ?? double.MaxValue)
                .ThenBy(cell => cell.Label, StringComparer.Ordinal),
        ];
        CapacitySteps steps = CapacitySteps.Of([.. sorted.Select(cell => cell.CapacityAh)]);
        int[] group = [.. sorted.Select(cell => request.Locks.TryGetValue(cell.Label, out int pin) ? pin - 1 : -1)];
        long[] sum = new long[request.Series];
        int[] places = new int[request.Series];
        Array.Fill(places, request.Parallel);
        for (int i = 0; i < sorted.Length; i++)
        {
            if (group[i] < 0)
                continue;
            sum[group[i]] += steps.Steps[i];
            places[group[i]]--;
        }

        GroupingProblem problem = new(
            [.. steps.Steps.Where((_, i) => group[i] < 0)], request.Parallel, sum, places,
            [.. steps.Steps.Where((_, i) => group[i] >= 0)]);
        return new SortedLot(
            [.. sorted.Where((_, i) => group[i] < 0)],
            [.. Enumerable.Range(0, request.Series).Select(g => sorted.Where((_, i) => group[i] == g).ToArray())],
            steps, problem);
    }

    /// <summary>The existing grouping in the problem's numbers; -1 for cells that are not in it.</summary>
    internal int[] ExistingGroupOf(GroupingRequest request)
    {
        Dictionary<string, int> at = [];
        for (int g = 0; g < request.Existing!.Count; g++)
            foreach (string label in request.Existing[g])
                at[label] = g;
        return [.. Free.Select(cell => at.TryGetValue(cell.Label, out int group) ? group : -1)];
    }
}
