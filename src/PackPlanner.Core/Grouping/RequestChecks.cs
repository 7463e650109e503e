namespace PackPlanner.Core.Grouping;

/// <summary>What cannot be matched whatever the figures are.</summary>
internal static class RequestChecks
{
    /// <summary>The first contradiction between locks, existing grouping, cells and shape; null when there is none.</summary>
    internal static Problem? Contradiction(GroupingRequest request)
    {
        HashSet<string> labels = [.. request.Cells.Select(cell => cell.Label)];
        if (labels.Count < request.Cells.Count)
            throw new ArgumentException("Labels must be unique.", nameof(request));
        foreach ((string label, int group) in request.Locks)
        {
            if (group < 1 || group > request.Series)
                return new Problem($"lock of {label}", $"it is locked to group {group}, and there are groups 1 to {request.Series}",
                    "Lock it to one of these groups, or raise the number in series.");
            if (!labels.Contains(label))
                return new Problem($"lock of {label}", "no usable cell has this label",
                    "Correct the label, or take the lock out; a cell that is rejected, held or left out cannot be locked.");
        }

        IGrouping<int, string>? full = request.Locks
            .GroupBy(pin => pin.Value, pin => pin.Key)
            .OrderBy(pins => pins.Key)
            .FirstOrDefault(pins => pins.Count() > request.Parallel);
        if (full is not null)
            return new Problem($"locks of group {full.Key}",
                $"{full.Count()} cells are locked to it, and a group has {request.Parallel} places",
                $"Take {full.Count() - request.Parallel} of these locks out, or raise the number in parallel.");
        return request.Existing is { } existing ? Contradiction(existing, request) : null;
    }

    private static Problem? Contradiction(IReadOnlyList<IReadOnlyList<string>> existing, GroupingRequest request)
    {
        if (existing.Count > request.Series)
            return new Problem("existing grouping", $"it has {existing.Count} groups, and {request.Series} in series were asked for",
                "Give the same number in series, or leave the existing grouping out.");
        for (int g = 0; g < existing.Count; g++)
            if (existing[g].Count > request.Parallel)
                return new Problem($"group {g + 1} of the existing grouping",
                    $"it has {existing[g].Count} cells, and {request.Parallel} in parallel were asked for",
                    "Give the same number in parallel, or leave the existing grouping out.");
        string? twice = existing.SelectMany(group => group).GroupBy(label => label).FirstOrDefault(same => same.Count() > 1)?.Key;
        return twice is null ? null : new Problem("existing grouping", $"cell {twice} stands in it twice", "Correct the labels.");
    }

    /// <summary>Shapes that a number of cells suffices for: the same S first, since another S wants another charger.</summary>
    internal static IReadOnlyList<(int Series, int Parallel)> NearestShapes(int cells, int series, int parallel)
    {
        List<(int, int)> shapes = [];
        if (cells / series is var sameSeries and > 0)
            shapes.Add((series, sameSeries));
        if (cells / parallel is var sameParallel and > 0)
            shapes.Add((sameParallel, parallel));
        return shapes;
    }
}
