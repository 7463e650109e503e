namespace PackPlanner.Core.Grouping;

/// <summary>Which groups are to hold one batch only: as many as the cells allow, chosen so that the poorest of them can hold most.</summary>
internal sealed class BatchPlan
{
    private readonly SortedLot _lot;
    private readonly List<int>[] _cellsOf;

    private BatchPlan(SortedLot lot)
    {
        _lot = lot;
        string[] names =
        [
            .. lot.Free.Concat(lot.Pinned.SelectMany(cells => cells)).Select(cell => cell.Batch).OfType<string>()
                .Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal),
        ];
        BatchOf = [.. lot.Free.Select(cell => Array.IndexOf(names, cell.Batch))];
        _cellsOf = [.. names.Select(_ => new List<int>())];
        for (int i = 0; i < BatchOf.Length; i++)
            if (BatchOf[i] >= 0)
                _cellsOf[BatchOf[i]].Add(i);
        TypeOf = new int[lot.Problem.Series];
        Array.Fill(TypeOf, -1);
        int[] rest = PinnedGroups(names);
        BoundSteps = OpenGroups(rest);
    }

    /// <summary>Batch of each free cell, -1 where unknown.</summary>
    internal int[] BatchOf { get; }

    /// <summary>Batch that each group is to hold, -1 for a mixed group.</summary>
    internal int[] TypeOf { get; }

    /// <summary>Steps that no smallest group can exceed with so many groups of one batch; the largest number where nothing is known.</summary>
    internal long BoundSteps { get; }

    /// <summary>What another choice of counts for the batches could reach at most; the smallest number where there is no other.</summary>
    internal long OtherwiseSteps { get; private set; } = long.MinValue;

    internal int Mixed => TypeOf.Count(type => type < 0);

    internal static BatchPlan Of(SortedLot lot) => new(lot);

    /// <summary>Whether a cell may stand in a group; -1 is out.</summary>
    internal bool Allows(int cell, int group) => group < 0 || TypeOf[group] < 0 || TypeOf[group] == BatchOf[cell];

    // A group with locks keeps its batch where enough cells of it are free; those that want fewest are served first, which fills most.
    private int[] PinnedGroups(string[] names)
    {
        int[] rest = [.. _cellsOf.Select(cells => cells.Count)];
        int[] pinned = [.. Enumerable.Range(0, TypeOf.Length).Where(g => _lot.Pinned[g].Length > 0).OrderBy(g => _lot.Problem.Places[g]).ThenBy(g => g)];
        foreach (int g in pinned)
        {
            int batch = Array.IndexOf(names, _lot.Pinned[g][0].Batch);
            if (batch < 0 || _lot.Pinned[g].Any(cell => cell.Batch != names[batch]) || rest[batch] < _lot.Problem.Places[g])
                continue;
            TypeOf[g] = batch;
            rest[batch] -= _lot.Problem.Places[g];
        }

        return rest;
    }

    private long OpenGroups(int[] rest)
    {
        int[] open = [.. Enumerable.Range(0, TypeOf.Length).Where(g => _lot.Pinned[g].Length == 0)];
        int[] most = [.. rest.Select(count => count / _lot.Problem.Parallel)];
        int[] groups = most.Sum() <= open.Length ? most : Chosen(most, open.Length);
        int next = 0;
        for (int batch = 0; batch < groups.Length; batch++)
            for (int k = 0; k < groups[batch]; k++)
                TypeOf[open[next++]] = batch;

        // With locks the counts are not forced, so they bound nothing.
        if (_lot.Problem.HasPins)
            OtherwiseSteps = long.MaxValue;
        return _lot.Problem.HasPins
            ? long.MaxValue
            : Enumerable.Range(0, groups.Length).Where(batch => groups[batch] > 0).Select(batch => Best(batch, groups[batch])).DefaultIfEmpty(long.MaxValue).Min();
    }

    // More groups could hold one batch than there are: the highest floor at which enough remain. Any other choice has a batch below it.
    private int[] Chosen(int[] most, int wanted)
    {
        int[] groups = new int[most.Length];
        for (int taken = 0; taken < wanted; taken++)
        {
            int best = -1;
            for (int batch = 0; batch < most.Length; batch++)
                if (groups[batch] < most[batch] && (best < 0 || Best(batch, groups[batch] + 1) > Best(best, groups[best] + 1)))
                    best = batch;
            groups[best]++;
        }

        for (int batch = 0; batch < most.Length; batch++)
            if (groups[batch] < most[batch])
                OtherwiseSteps = Math.Max(OtherwiseSteps, Best(batch, groups[batch] + 1));

        return groups;
    }

    /// <summary>What the poorest of so many groups of a batch can hold at most: the largest cells, shared out.</summary>
    private long Best(int batch, int groups)
    {
        long total = 0;
        foreach (int cell in _cellsOf[batch].Take(groups * _lot.Problem.Parallel))
            total += _lot.Problem.Capacity[cell];
        return total / groups;
    }
}
