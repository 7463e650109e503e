using static System.FormattableString;

namespace PackPlanner.Core.Fitting;

/// <summary>Places that were chosen before, held against a case by the rules that the search keeps.</summary>
public static class GivenLayout
{
    private const double SameMm = 0.01;

    private const string Anew = "Ask fit again with this case, or take the places out of the job: they are then looked for anew.";

    /// <summary>Takes places over.</summary>
    /// <param name="fitCase">The case, its numbers in series and in parallel as wanted; null: as the places have them.</param>
    /// <param name="places">The places with their groups.</param>
    /// <param name="from">Where they come from, for people.</param>
    /// <param name="problem">The first rule that they break; null when they keep all.</param>
    /// <returns>The answer, as the search would give it of these places; null where there is a problem.</returns>
    public static FitAnswer? Of(FitCase fitCase, IReadOnlyList<PlacedCell> places, string from, out Problem? problem)
    {
        ArgumentNullException.ThrowIfNull(fitCase);
        ArgumentNullException.ThrowIfNull(places);
        int[] groupOf = [.. places.Select(place => place.Group ?? 0)];
        int series = fitCase.Series ?? groupOf.DefaultIfEmpty(0).Max();
        int parallel = fitCase.Parallel ?? groupOf.Count(group => group == 1);
        FitCase asked = fitCase with { Series = series, Parallel = parallel };
        problem = Shape(groupOf, series, parallel) ?? (FitCaseCheck.Problems(asked) is [var first, ..] ? first : null) ?? Mass(asked, series * parallel);
        if (problem is not null || Bodies(asked, places, out problem) is not { } bodies)
            return null;
        Scene scene = new(asked);
        NeighbourGraph graph = NeighbourGraph.Of(bodies, asked.Clearances, asked.LinkReachMm);
        problem = Clear(scene, bodies, places) ?? Together(graph, groupOf, series);
        if (problem is not null)
            return null;
        int[] pairs = LinkMeasures.Pairs(graph, groupOf, series);
        FitAnswer answer = AnswerBuilder.Build(
            scene, new Layout(bodies, "given", null, Regular: false), new GroupPlan(groupOf, parallel, pairs, LinkMeasures.BusbarRatio(graph, groupOf, series, pairs)),
            new LayoutChoice([], null, $"places taken from {from}, nothing was searched", null, null), [], stopped: false);
        problem = Poles(answer, places);
        return problem is null ? answer : null;
    }

    private static Problem? Shape(int[] groupOf, int series, int parallel)
    {
        int groups = groupOf.DefaultIfEmpty(0).Max();
        if (groups == 0)
            return new Problem("places", "no place belongs to a group", "Ask fit again with pack.series in the case.");
        if (groups != series)
            return new Problem("places", Invariant($"they make {groups} groups, and {series} in series are wanted"), Anew);
        for (int group = 1; group <= groups; group++)
        {
            if (groupOf.Count(of => of == group) is var count && count != parallel)
                return new Problem(Invariant($"places of group {group}"), Invariant($"there are {count}, and {parallel} in parallel are wanted"), Anew);
        }

        return null;
    }

    private static Problem? Mass(FitCase fitCase, int cells) => fitCase is { CellMassLimitKg: { } kg, CellMassG: { } g } && cells * g / 1000 > kg + 1e-9
        ? new Problem("places", Invariant($"{cells} cells of {g:0.#} g weigh {cells * g / 1000:0.###} kg, the limit is {kg:0.###} kg"), "Allow more, or use fewer cells.")
        : null;

    private static List<Body>? Bodies(FitCase fitCase, IReadOnlyList<PlacedCell> places, out Problem? problem)
    {
        IReadOnlyList<Attitude> ways = Attitude.Of(fitCase);
        List<Body> bodies = [];
        foreach (PlacedCell place in places)
        {
            if (ways.FirstOrDefault(way => Stands(way, place)) is not { } way)
            {
                problem = new Problem(Invariant($"place {place.Cell}"), "the case has no cell that stands so", Anew);
                return null;
            }

            bodies.Add(new Body(place.Centre, way));
        }

        problem = null;
        return bodies;
    }

    // An answer names the axis of a round cell alone; its size is the case's.
    private static bool Stands(Attitude way, PlacedCell place) => place.RoundAlong is { } axis
        ? way.RoundAlong == axis
        : way.TerminalFace >= 0 && Attitude.FaceName(way.TerminalFace) == place.Terminals && Axes3.All.All(along => Math.Abs(way.Size(along) - place.SizeMm[along]) <= SameMm);

    private static Problem? Clear(Scene scene, List<Body> bodies, IReadOnlyList<PlacedCell> places) => LayoutCheck.Broken(scene, bodies) is [var first, ..]
        ? new Problem(Invariant($"place {places[first].Cell}"), "the cell there is not inside the space, or nearer to a wall, a keep-out or another cell than the clearances allow", Anew)
        : null;

    private static Problem? Together(NeighbourGraph graph, int[] groupOf, int series)
    {
        for (int group = 1; group <= series; group++)
        {
            if (graph.Pieces(cell => groupOf[cell] == group).Sizes.Count != 1)
                return new Problem(Invariant($"places of group {group}"), "they do not stand side by side, so that no plate joins them", Anew);
        }

        return null;
    }

    private static Problem? Poles(FitAnswer answer, IReadOnlyList<PlacedCell> places)
    {
        Dictionary<PointMm, string?> plus = places.Where(place => place.Group is not null).ToDictionary(place => place.Centre, place => place.Plus);
        return answer.Cells.FirstOrDefault(cell => cell.Group is not null && plus[cell.Centre] is { } said && said != cell.Plus) is { } other
            ? new Problem(Invariant($"place {other.Cell}"), $"its plus is said to look {plus[other.Centre]}; from group to group the cells stand in turns, and there it is {other.Plus}", Anew)
            : null;
    }
}
