namespace PackPlanner.Core.Fitting;

/// <summary>Divides a pack into boxes between groups, so that the heaviest box is as light as can be.</summary>
internal static class BoxSplit
{
    internal static IReadOnlyList<PackBox> Of(IReadOnlyList<PlacedGroup> groups, FitCase fitCase)
    {
        int boxes = fitCase.Boxes;
        if (boxes <= 1 || groups.Count < boxes)
            return [];
        List<PackBox> split = [];
        for (int b = 0; b < boxes; b++)
        {
            // All groups weigh the same, so even shares are the best.
            int from = (groups.Count * b / boxes) + 1, to = groups.Count * (b + 1) / boxes, count = to - from + 1;
            split.Add(new PackBox(
                b + 1, from, to, groups.Skip(from - 1).Take(count).Sum(g => g.Cells.Count),
                groups.Skip(from - 1).Take(count).Sum(g => g.MassKg), fitCase.NominalV * count, fitCase.FullV * count));
        }

        return split;
    }
}
