using PackPlanner.Core.Packs;

namespace PackPlanner.Core.Grouping;

/// <summary>From the searches' numbers back to cells and ampere-hours.</summary>
internal static class PackAssembly
{
    internal static MatchedPack Of(
        GroupingRequest request, SortedLot lot, StrictAnswer strict, GroupingTrial chosen, bool stopped)
    {
        List<GroupingCell>[] members = Members(request, lot, chosen);
        MatchedGroup[] groups = [.. members.Select((cells, g) => Group(g + 1, cells, lot))];
        bool sharesKnown = Array.TrueForAll(groups, group => group.LargestShare is not null);
        double[] used = [.. members.SelectMany(cells => cells).Select(cell => cell.CapacityAh).Order()];
        double? repeatability = request.RepeatabilityFraction ?? request.FoundRepeatabilityFraction;
        return new MatchedPack
        {
            Groups = groups,
            LeftOut = [.. lot.Free.Where((_, i) => chosen.GroupOf[i] < 0)],
            SmallestAh = lot.InAh(chosen.Smallest),
            SpreadAh = lot.InAh(chosen.Spread),
            SmallestBoundAh = lot.InAh(strict.Bound),
            StrictSmallestAh = lot.InAh(strict.Best.Smallest),
            StrictSpreadAh = lot.InAh(strict.Best.Spread),
            ProvenOptimal = strict.Proven,
            SmallestProven = strict.SmallestProven,
            StepAh = lot.StepAh,
            NoiseSpreadAh = repeatability is { } fraction
                ? GroupMatcher.NoiseSpreadAh(fraction, used.Average(), request.Series, request.Parallel)
                : null,
            LargestShare = sharesKnown ? groups.Select(group => group.LargestShare!).MaxBy(share => share.TimesEqual) : null,
            OneMoreCellAh = (used[used.Length / 2] - used[0]) / request.Series,
            Moves = request.Existing is { } existing ? Moves(existing, members) : null,
            Stopped = stopped,
        };
    }

    /// <summary>
    /// Cells of each group, in the order of the answer: groups with locks keep their numbers; the others take the number of
    /// the existing group that they hold most of, else go by their largest cell.
    /// </summary>
    private static List<GroupingCell>[] Members(GroupingRequest request, SortedLot lot, GroupingTrial chosen)
    {
        int series = request.Series;
        List<GroupingCell>[] found = [.. lot.Pinned.Select(cells => cells.ToList())];
        int[] rank = new int[series];
        Array.Fill(rank, int.MaxValue);
        for (int i = lot.Free.Length - 1; i >= 0; i--)
        {
            int group = chosen.GroupOf[i];
            if (group < 0)
                continue;
            found[group].Add(lot.Free[i]);
            rank[group] = i;
        }

        foreach (List<GroupingCell> cells in found)
            cells.Sort(LargestFirst);
        List<GroupingCell>?[] numbered = new List<GroupingCell>?[series];
        for (int g = 0; g < series; g++)
            if (lot.Pinned[g].Length > 0 || request.FewestMoves || request.AsItIs)
                numbered[g] = found[g];
        Queue<List<GroupingCell>> loose = new(Enumerable.Range(0, series).Where(g => numbered[g] is null).OrderBy(g => rank[g]).Select(g => found[g]));
        if (request.Existing is { } existing)
            loose = NumberLike(existing, numbered, loose);
        for (int g = 0; g < series; g++)
            numbered[g] ??= loose.Dequeue();
        return numbered!;
    }

    private static Queue<List<GroupingCell>> NumberLike(
        IReadOnlyList<IReadOnlyList<string>> existing, List<GroupingCell>?[] numbered, Queue<List<GroupingCell>> loose)
    {
        List<List<GroupingCell>> rest = [.. loose];
        var pairs = existing
            .SelectMany((labels, g) => rest.Select((cells, c) => (g, c, Same: cells.Count(cell => labels.Contains(cell.Label)))))
            .Where(pair => pair.Same > 0 && numbered[pair.g] is null)
            .OrderByDescending(pair => pair.Same).ThenBy(pair => pair.g).ThenBy(pair => pair.c)
            .ToList();
        HashSet<int> taken = [];
        foreach ((int g, int c, _) in pairs)
        {
            if (numbered[g] is not null || !taken.Add(c))
                continue;
            numbered[g] = rest[c];
        }

        return new Queue<List<GroupingCell>>(rest.Where((_, c) => !taken.Contains(c)));
    }

    private static int LargestFirst(GroupingCell one, GroupingCell other)
    {
        int byCapacity = other.CapacityAh.CompareTo(one.CapacityAh);
        return byCapacity != 0 ? byCapacity : string.CompareOrdinal(one.Label, other.Label);
    }

    private static MatchedGroup Group(int number, List<GroupingCell> cells, SortedLot lot)
    {
        return new MatchedGroup(
            number, cells, lot.SumAh(cells), ParallelResistance.Of(cells, cell => cell.ResistanceMilliohm), ShareOf(number, cells));
    }

    /// <summary>Cells of one group share the first current by their conductance.</summary>
    internal static CurrentShare? ShareOf(int number, IReadOnlyList<GroupingCell> cells)
    {
        if (cells.Any(cell => cell.ResistanceMilliohm is null))
            return null;
        GroupingCell most = cells.MinBy(cell => cell.ResistanceMilliohm!.Value)!;
        double all = cells.Sum(cell => 1 / cell.ResistanceMilliohm!.Value);
        return new CurrentShare(number, most.Label, cells.Count / most.ResistanceMilliohm!.Value / all);
    }

    private static List<CellMove> Moves(IReadOnlyList<IReadOnlyList<string>> existing, List<GroupingCell>[] members)
    {
        Dictionary<string, int> now = [];
        for (int g = 0; g < members.Length; g++)
            foreach (GroupingCell cell in members[g])
                now[cell.Label] = g + 1;
        Dictionary<string, int> before = [];
        for (int g = 0; g < existing.Count; g++)
            foreach (string label in existing[g])
                before[label] = g + 1;
        return
        [
            .. before.Keys.Union(now.Keys)
                .Select(label => new CellMove(label, Of(before, label), Of(now, label)))
                .Where(move => move.FromGroup != move.ToGroup)
                .OrderBy(move => move.ToGroup ?? int.MaxValue)
                .ThenBy(move => move.FromGroup ?? int.MaxValue)
                .ThenBy(move => move.Cell, StringComparer.Ordinal),
        ];

        static int? Of(Dictionary<string, int> groups, string label) =>
            groups.TryGetValue(label, out int group) ? group : null;
    }
}
