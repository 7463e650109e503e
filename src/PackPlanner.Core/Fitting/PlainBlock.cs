namespace PackPlanner.Core.Fitting;

/// <summary>Places a pack without a cavity: plain rows and columns, so that a sorter gets taps, links and sheets too.</summary>
public static class PlainBlock
{
    /// <summary>Each group one column of P cells along y, the groups side by side along x; long strings fold into several rows.</summary>
    /// <param name="series">Groups in series, at least 1.</param>
    /// <param name="parallel">Cells in each group, at least 1.</param>
    /// <param name="model">Cell, its mass and volts, and the gaps between cells; its cavity, limits and numbers are not looked at.</param>
    /// <param name="columns">Groups beside each other before the string folds back; null: as many as make the block nearly square.</param>
    /// <returns>The block as a case, its own outline being the cavity, and the placement, standing on z = 0 with its corner at the origin.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is below 1.</exception>
    public static (FitCase Case, FitAnswer Answer) Place(int series, int parallel, FitCase model, int? columns = null)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentOutOfRangeException.ThrowIfLessThan(series, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(parallel, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(columns ?? 1, 1);
        Attitude attitude = Upright(model);
        double px = attitude.Size(Axis.X) + Math.Max(attitude.Want(0), attitude.Want(1));
        double py = attitude.Size(Axis.Y) + Math.Max(attitude.Want(2), attitude.Want(3));
        int wide = Math.Min(series, columns ?? Math.Max(1, (int)Math.Round(Math.Sqrt(series * parallel * py / px))));
        List<Body> bodies = [];
        List<int> groupOf = [];
        for (int g = 0; g < series; g++)
        {
            int fold = g / wide, column = (fold & 1) == 0 ? g % wide : wide - 1 - (g % wide);
            for (int i = 0; i < parallel; i++)
            {
                bodies.Add(new Body(new PointMm(
                    (column * px) + (attitude.Size(Axis.X) / 2), (((fold * parallel) + i) * py) + (attitude.Size(Axis.Y) / 2), attitude.Size(Axis.Z) / 2), attitude));
                groupOf.Add(g + 1);
            }
        }

        FitCase fitCase = Around(bodies, attitude, series, parallel, model);
        Layout layout = new(bodies, "block", 0, Regular: true);
        NeighbourGraph graph = NeighbourGraph.Of(bodies, fitCase.Clearances, fitCase.LinkReachMm);
        int[] groups = [.. groupOf], pairs = LinkMeasures.Pairs(graph, groups, series);
        GroupPlan plan = new(groups, parallel, pairs, LinkMeasures.BusbarRatio(graph, groups, series, pairs));
        LayoutChoice choice = new([layout], null, "a plain block, nothing was searched", bodies.Count, null);
        return (fitCase, AnswerBuilder.Build(new Scene(fitCase), layout, plan, choice, [], stopped: false));
    }

    /// <summary>The block's own outline is its cavity, clearances included, so that margins are nought and volumes mean the block.</summary>
    private static FitCase Around(List<Body> bodies, Attitude attitude, int series, int parallel, FitCase model)
    {
        double[] wall = [.. Enumerable.Range(0, 6).Select(attitude.Wall)];
        Solid around = new Solid.Box(
            new PointMm(-wall[0], -wall[2], -wall[4]),
            new PointMm(
                bodies.Max(b => b.Box.X1) + wall[1], bodies.Max(b => b.Box.Y1) + wall[3], attitude.Size(Axis.Z) + wall[5]));
        return model with
        {
            Cavity = [new NamedSolid("block", around)],
            KeepOuts = [],
            Series = series,
            Parallel = parallel,
            CellMassLimitKg = null,
            Openings = null,
            Boxes = Math.Min(Math.Max(1, model.Boxes), series),
        };
    }

    /// <summary>Round cells stand; boxes stand upright with their large faces across the string.</summary>
    private static Attitude Upright(FitCase model)
    {
        FitCase standing = model with
        {
            Cell = model.Cell switch
            {
                CellBody.Cylinder c => c with { Axes = [Axis.Z] },
                CellBody.Box b => b with { Poses = [BoxPose.Upright] },
                CellBody other => other,
            },
        };
        IReadOnlyList<Attitude> ways = Attitude.Of(standing);
        return ways.FirstOrDefault(a => a.TerminalFace >= 0 && a.ThicknessAlong == Axis.X) ?? ways[0];
    }
}
