using PackPlanner.Core.Fitting;

namespace PackPlanner.Core.Jobs;

/// <summary>Which cell of a job stands in which place, with what the user turned and exchanged.</summary>
public static class JobPlaces
{
    /// <summary>Puts the groups into the places.</summary>
    /// <param name="layout">The places, numbered in series order.</param>
    /// <param name="groups">The job's groups; may be empty.</param>
    /// <param name="placement">What the user changed.</param>
    /// <returns>One entry for each place, in the layout's order.</returns>
    /// <remarks>
    /// Within a group the cells go in the order of their labels, from the back row to the front and from left to right, so
    /// that a builder who lays them out by hand need not look up each one.
    /// </remarks>
    public static IReadOnlyList<PlacedLabel> Of(FitAnswer layout, IReadOnlyList<JobGroup> groups, JobPlacement placement)
    {
        placement = placement.Within(layout.Series ?? groups.Count);
        Dictionary<int, string> labels = [];
        foreach (IGrouping<int, PlacedCell> place in layout.Cells.Where(cell => cell.Group is not null).GroupBy(cell => Position(cell, layout, placement)!.Value))
        {
            JobGroup? group = GroupAt(groups, placement, place.Key);
            foreach ((PlacedCell cell, int i) in ByHand(place).Select((cell, i) => (cell, i)))
            {
                if (group is not null && i < group.Cells.Count)
                    labels[cell.Cell] = group.Cells[i].Label;
            }
        }

        return
        [
            .. layout.Cells.Select(cell => new PlacedLabel(
                cell, Position(cell, layout, placement), labels.GetValueOrDefault(cell.Cell), PlusUp(cell, layout, placement), Turned(cell, layout, placement))),
        ];
    }

    /// <summary>Places in the order in which a builder lays cells out by hand: from the back row to the front, from left to right.</summary>
    /// <param name="places">Places of one group.</param>
    /// <returns>The same places.</returns>
    public static IEnumerable<PlacedCell> ByHand(IEnumerable<PlacedCell> places) => ByHand(places, place => place);

    /// <summary>The same order for places with the cells that go there.</summary>
    /// <param name="places">Places of one group.</param>
    /// <returns>The same places.</returns>
    public static IEnumerable<PlacedLabel> ByHand(IEnumerable<PlacedLabel> places) => ByHand(places, place => place.Place);

    private static IEnumerable<T> ByHand<T>(IEnumerable<T> places, Func<T, PlacedCell> of) =>
        places.OrderByDescending(place => Math.Round(of(place).Centre.Y, 3)).ThenBy(place => of(place).Centre.X).ThenBy(place => of(place).Cell);

    /// <summary>The groups in series order from pack minus, after those exchanges that so many groups allow.</summary>
    /// <param name="groups">The job's groups.</param>
    /// <param name="placement">What the user changed.</param>
    /// <returns>The same groups, first the one at pack minus.</returns>
    public static IReadOnlyList<JobGroup> InSeries(IReadOnlyList<JobGroup> groups, JobPlacement placement)
    {
        JobPlacement within = placement.Within(groups.Count);
        return [.. Enumerable.Range(1, groups.Count).Select(place => GroupAt(groups, within, place)!)];
    }

    private static JobGroup? GroupAt(IReadOnlyList<JobGroup> groups, JobPlacement placement, int place)
    {
        int number = placement.Exchanged.GetValueOrDefault(place, place);
        return number >= 1 && number <= groups.Count ? groups[number - 1] : null;
    }

    private static int? Position(PlacedCell cell, FitAnswer layout, JobPlacement placement) =>
        placement.EndsSwapped ? layout.Series + 1 - cell.Group : cell.Group;

    private static bool? PlusUp(PlacedCell cell, FitAnswer layout, JobPlacement placement)
    {
        bool? up = cell.Plus switch { "+z" => true, "-z" => false, _ => null };
        return up ^ Turned(cell, layout, placement);
    }

    // Swapping the ends numbers the groups from the other side, so that each must also stand the other way up.
    private static bool Turned(PlacedCell cell, FitAnswer layout, JobPlacement placement) =>
        placement.EndsSwapped ^ (Position(cell, layout, placement) is { } position && placement.Turned.Contains(position));
}
