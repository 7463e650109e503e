using PackPlanner.Core.Fitting;

namespace PackPlanner.Tests.Core.Fitting;

/// <summary>Steps of grouping places: plates, links, paths, growth and the exchanges that shorten; each against enumeration or by hand.</summary>
public class GroupStepsTests
{
    /// <summary>The shortest tree, by trying every way to join cells one after another.</summary>
    private static double Tree(NeighbourGraph graph, int[] cells)
    {
        List<(double D, int A, int B)> edges = [.. from a in cells from b in cells where a < b orderby graph.Distance(a, b) select (graph.Distance(a, b), a, b)];
        Dictionary<int, int> piece = cells.ToDictionary(c => c, c => c);
        double sum = 0;
        foreach ((double d, int a, int b) in edges.Where(_ => true))
        {
            if (piece[a] == piece[b])
                continue;
            (int from, int to) = (piece[a], piece[b]);
            foreach (int c in cells.Where(c => piece[c] == from))
                piece[c] = to;
            sum += d;
        }

        return sum;
    }

    [Fact]
    public void A_plate_is_the_shortest_tree()
    {
        NeighbourGraph graph = Cases.Graph(20, 15);
        Random random = new(4);

        for (int n = 0; n < 30; n++)
        {
            int[] cells = [.. Enumerable.Range(0, 300).OrderBy(_ => random.Next()).Take(n)];
            Assert.Equal(Tree(graph, cells), LinkMeasures.Tree(graph, cells), 1e-9);
        }

        // Beyond 256 cells too: all 300 in their grid, 299 steps of 21.
        Assert.Equal(299 * 21, LinkMeasures.Tree(graph, [.. Enumerable.Range(0, 300)]), 1e-6);
    }

    // Two rows of six in groups of two, one below the other: two pairs to each next group; all plates as short as can be.
    [Fact]
    public void Pairs_and_plates_by_hand()
    {
        NeighbourGraph graph = Cases.Graph(6, 2);
        int[] columns = [1, 2, 3, 4, 5, 6, 1, 2, 3, 4, 5, 6], rows = [1, 1, 2, 2, 3, 3, 6, 6, 5, 5, 4, 4], spare = [1, 2, 0, 3, 4, 5, 1, 2, 0, 3, 4, 5];

        Assert.Equal([2, 2, 2, 2, 2], LinkMeasures.Pairs(graph, columns, 6));
        Assert.Equal([1, 1, 2, 1, 1], LinkMeasures.Pairs(graph, rows, 6));
        Assert.Equal([2, 0, 2, 2], LinkMeasures.Pairs(graph, spare, 5));
        // First and last group one step each, each pair of groups three steps: 2 + 5 x 3 = 17, and the least is the same.
        Assert.Equal(1, LinkMeasures.BusbarRatio(graph, columns, 6, [2, 2, 2, 2, 2])!.Value, 1e-12);
        Assert.Equal(1, LinkMeasures.BusbarRatio(graph, rows, 6, [1, 1, 2, 1, 1])!.Value, 1e-12);
        // The cable is left out of both: 2 + 3 x 3.
        Assert.Equal(1, LinkMeasures.BusbarRatio(graph, spare, 5, [2, 0, 2, 2])!.Value, 1e-12);
        // Groups whose cells lie two apart: by hand 2 x 2 at the ends; a pair of groups is a row of four, three steps.
        int[] apart = [1, 2, 1, 2, 0, 0, 0, 0, 0, 0, 0, 0];
        Assert.Equal((2 + 2 + 3) / 5.0, LinkMeasures.BusbarRatio(graph, apart, 2, LinkMeasures.Pairs(graph, apart, 2))!.Value, 1e-12);
        Assert.Null(LinkMeasures.BusbarRatio(graph, [1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0], 1, []));
    }

    // Groups grow in the order of the ranks and stay in one piece; each begins beside the last.
    [Fact]
    public void Groups_grow_through_neighbours_in_the_order_given()
    {
        NeighbourGraph graph = Cases.Graph(6, 2);
        double[] across = [.. Enumerable.Range(0, 12).Select(i => (double)(i % 6) + (i / 6 * 0.1))];

        (int[] groupOf, int completed) = GroupGrower.Grow(graph, across, series: 6, parallel: 2, jumpers: 0);

        Assert.Equal(6, completed);
        Assert.Equal([1, 2, 3, 4, 5, 6, 1, 2, 3, 4, 5, 6], groupOf);
        // By the other order: the first two of the upper row, and so on to its end, then back.
        double[] rows = [.. Enumerable.Range(0, 12).Select(i => i < 6 ? i : 20.0 - i)];
        Assert.Equal([1, 1, 2, 2, 3, 3, 6, 6, 5, 5, 4, 4], GroupGrower.Grow(graph, rows, 6, 2, 0).GroupOf);
        // Seven groups of two have no room.
        Assert.Equal(6, GroupGrower.Grow(graph, across, 7, 2, 0).Completed);
    }

    // A pocket of one cell cannot begin a group of two; a second piece is reached by a cable only.
    [Fact]
    public void Pockets_are_passed_over_and_pieces_need_cables()
    {
        Body[] bodies = [.. Cases.Grid(4, 1), .. Cases.Grid(1, 1).Select(b => b with { Centre = new PointMm(200, 0, 35) }), .. Cases.Grid(2, 1).Select(b => b with { Centre = new PointMm(300 + b.Centre.X, 0, 35) })];
        NeighbourGraph graph = NeighbourGraph.Of(bodies, Cases.Clear, 1);
        double[] rank = [.. bodies.Select(b => b.Centre.X)];

        Assert.Equal(2, GroupGrower.Grow(graph, rank, 3, 2, jumpers: 0).Completed);
        (int[] groupOf, int completed) = GroupGrower.Grow(graph, rank, 3, 2, jumpers: 1);
        Assert.Equal(3, completed);
        Assert.Equal([1, 1, 2, 2, 0, 3, 3], groupOf);
        Assert.Equal(0, GroupGrower.Grow(graph, rank, 1, 5, jumpers: 3).Completed);
    }

    // A path through every place of a grid is found where there is one; one place more than there are is not.
    [Fact]
    public void A_path_of_single_cells_is_found()
    {
        NeighbourGraph graph = Cases.Graph(4, 3);
        double[] rank = [.. Enumerable.Range(0, 12).Select(i => (double)i)];

        int[] path = SeriesPath.Find(graph, 12, 0, 0, rank, 248)!;

        Assert.Equal(12, path.Distinct().Count());
        Assert.Equal(0, path[0]);
        Assert.All(path.Zip(path.Skip(1)), step => Assert.Contains(step.Second, graph.Near[step.First]));
        Assert.Null(SeriesPath.Find(graph, 12, 0, 0, rank, steps: 10));
        Assert.NotNull(SeriesPath.Find(graph, 12, 0, 0, rank, steps: 11));
        // Three by three from the middle of a side: the colours of a chess board leave one over.
        Assert.Null(SeriesPath.Find(Cases.Graph(3, 3), 9, 0, 1, rank, 5000));
        Assert.NotNull(SeriesPath.Find(Cases.Graph(3, 3), 9, 0, 4, rank, 5000));
        Assert.NotNull(SeriesPath.Find(Cases.Graph(3, 3), 9, 1, 1, rank, 5000));
    }

    // Of two rows with every third place wider, a path of eight that goes the long way is shortened to the shortest that enumeration finds.
    [Fact]
    public void A_path_is_shortened_and_stays_a_path()
    {
        Random random = new(2);
        Attitude upright = Cases.Grid(1, 1)[0].Attitude;
        Body[] bodies = [.. Enumerable.Range(0, 16).Select(i => new Body(new PointMm((i % 4 * 22) + random.NextDouble(), (i / 4 * 22) + random.NextDouble(), 35), upright))];
        NeighbourGraph graph = NeighbourGraph.Of(bodies, Cases.Clear, 3);
        int[] path = SeriesPath.Find(graph, 9, 0, 5, [.. Enumerable.Range(0, 16).Select(_ => random.NextDouble())], 500)!;

        int[] shorter = PathPolish.Shorten(graph, path, seed: 1, moves: 40_000);

        Assert.Equal(9, shorter.Distinct().Count());
        Assert.All(shorter.Zip(shorter.Skip(1)), step => Assert.Contains(step.Second, graph.Near[step.First]));
        Assert.Equal(shorter.Zip(shorter.Skip(1)).Sum(s => graph.Distance(s.First, s.Second)), PathPolish.Length(graph, shorter), 1e-9);
        Assert.Equal(Shortest(graph, 9), PathPolish.Length(graph, shorter), 1e-9);
    }

    private static double Shortest(NeighbourGraph graph, int cells)
    {
        double best = double.PositiveInfinity;
        bool[] used = new bool[graph.Count];
        void Go(int at, int left, double length)
        {
            if (left == 0)
                best = Math.Min(best, length);
            used[at] = true;
            foreach (int next in left > 0 ? graph.Near[at].Where(j => !used[j]) : [])
                Go(next, left - 1, length + graph.Distance(at, next));
            used[at] = false;
        }

        for (int start = 0; start < graph.Count; start++)
            Go(start, cells - 1, 0);
        return best;
    }

    // Groups of two that lie across each other have long plates; exchanged they have the shortest, in one piece and linked.
    [Fact]
    public void Groups_are_exchanged_until_their_plates_are_short()
    {
        NeighbourGraph graph = Cases.Graph(6, 4);
        int[] snake = [1, 1, 1, 1, 2, 2, 3, 3, 3, 3, 2, 2, 4, 4, 4, 4, 5, 5, 6, 6, 6, 6, 5, 5];
        double Ratio(int[] g) => LinkMeasures.BusbarRatio(graph, g, 6, LinkMeasures.Pairs(graph, g, 6))!.Value;

        int[] shorter = GroupPolish.Shorten(graph, snake, 6, seed: 3, moves: 20_000, CancellationToken.None);

        Assert.True(Ratio(shorter) <= Ratio(snake));
        Assert.Equal(1, Ratio(shorter), 1e-9);
        for (int g = 1; g <= 6; g++)
        {
            Assert.Equal(4, shorter.Count(of => of == g));
            Assert.Single(graph.Pieces(i => shorter[i] == g).Sizes);
        }

        Assert.All(LinkMeasures.Pairs(graph, shorter, 6), p => Assert.True(p >= LinkMeasures.Pairs(graph, snake, 6).Min()));
    }

    // A worse step is taken with the chance exp(-change / heat), a better one always; the heat falls to a hundredth.
    [Fact]
    public void Worse_steps_are_taken_less_and_less()
    {
        Random random = new(5);

        Assert.Equal([2, 0.2, 0.02], new[] { Annealing.Heat(2, 0, 100), Annealing.Heat(2, 50, 100), Annealing.Heat(2, 100, 100) }, (a, b) => Math.Abs(a - b) < 1e-12);
        Assert.All(Enumerable.Range(0, 50), _ => Assert.True(Annealing.Takes(0, 1e-9, random) && Annealing.Takes(-1, 1e-9, random)));
        Assert.Equal(Math.Exp(-0.5), Enumerable.Range(0, 20000).Count(_ => Annealing.Takes(1, 2, random)) / 20000.0, 0.012);
    }

    // Bands along an angle, every second one walked back; layers by turns through or stacked.
    [Fact]
    public void Sweeps_walk_every_place_once_to_and_fro()
    {
        Body[] bodies = Cases.Grid(4, 3);
        double[][] orders = [.. SweepOrders.Of(bodies, [0.0, Math.PI / 2])];
        int[] Walk(double[] rank) => [.. Enumerable.Range(0, 12).OrderBy(i => rank[i])];

        // Along x in one band and two (a third would be 14 mm, narrower than 0.8 of a cell), along y in three at most; each forth and back.
        Assert.Equal((2 * 2) + (3 * 2), orders.Length);
        Assert.Equal([0, 4, 8, 1, 5, 9, 2, 6, 10, 3, 7, 11], Walk(orders[0]));
        Assert.Equal(Walk(orders[0]).Reverse(), Walk(orders[1]));
        Assert.Equal([0, 4, 1, 5, 2, 6, 3, 7, 11, 10, 9, 8], Walk(orders[2]));
        Body[] two = [.. bodies, .. Cases.Grid(4, 3, z: 113)];
        double[][] layered = [.. SweepOrders.Of(two, [0.0])];
        Assert.Equal(2 * 4, layered.Length);
        int[] stacked = [.. Enumerable.Range(0, 24).OrderBy(i => layered[2][i])];
        Assert.All(stacked[..12], i => Assert.True(i < 12));
        // The upper layer goes back the way that the lower came.
        Assert.Equal(stacked[11] + 12, stacked[12]);
        int[] through = [.. Enumerable.Range(0, 24).OrderBy(i => layered[0][i])];
        Assert.Equal([0, 12], through[..2]);
    }

    [Theory]
    [InlineData(6, 2, 6, 2, 0)]
    [InlineData(6, 4, 4, 6, 0)]
    [InlineData(5, 5, 8, 3, 0)]
    [InlineData(7, 3, 21, 1, 0)]
    [InlineData(3, 3, 2, 4, 0)]
    public void A_plan_has_groups_as_large_as_the_places_allow(int columns, int rows, int series, int parallel, int jumpers)
    {
        NeighbourGraph graph = Cases.Graph(columns, rows);

        GroupPlan plan = GroupPlanner.Plan(graph, series, columns * rows / series, 1, jumpers, [], CancellationToken.None)!;

        Assert.Equal(parallel, plan.Parallel);
        Assert.Equal(LinkMeasures.Pairs(graph, plan.GroupOf, series), plan.Pairs);
        Assert.Equal(series < 2 ? 0 : plan.Pairs.Min(), plan.Narrowest);
        Assert.Equal(0, plan.Jumpers);
        for (int g = 1; g <= series; g++)
        {
            Assert.Equal(parallel, plan.GroupOf.Count(of => of == g));
            Assert.Single(graph.Pieces(i => plan.GroupOf[i] == g).Sizes);
        }

        Assert.InRange(plan.BusbarRatio!.Value, 1 - 1e-9, 1.1);
    }

    // Two pieces of five: one cable joins them, and groups of three leave two over.
    [Fact]
    public void A_plan_uses_a_cable_only_where_it_may()
    {
        Body[] bodies = [.. Cases.Grid(5, 1), .. Cases.Grid(5, 1).Select(b => b with { Centre = b.Centre with { Y = 200 } })];
        NeighbourGraph graph = NeighbourGraph.Of(bodies, Cases.Clear, 1);

        Assert.Equal(2, GroupPlanner.Plan(graph, 2, 5, 1, 0, [], CancellationToken.None)!.Parallel);
        GroupPlan cabled = GroupPlanner.Plan(graph, 2, 5, 1, 1, [], CancellationToken.None)!;
        Assert.Equal((5, 1, 0), (cabled.Parallel, cabled.Jumpers, cabled.Narrowest));
        Assert.Null(GroupPlanner.Plan(graph, 2, 5, 3, 0, [], CancellationToken.None));
        Assert.Null(GroupPlanner.Plan(graph, 11, 1, 1, 1, [], CancellationToken.None));
        Assert.Equal(2, GroupPlanner.Plan(graph, 4, 2, 1, 1, [], CancellationToken.None)!.Parallel);
    }
}
