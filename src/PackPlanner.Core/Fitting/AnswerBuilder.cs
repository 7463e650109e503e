namespace PackPlanner.Core.Fitting;

/// <summary>Turns a layout and its groups into the answer: numbers, masses, margins, taps.</summary>
internal static class AnswerBuilder
{
    internal static FitAnswer Build(
        Scene scene, Layout layout, GroupPlan? plan, LayoutChoice choice, IReadOnlyList<FitReason> reasons, bool stopped)
    {
        FitCase c = scene.Case;
        int[] order = Order(layout, plan);
        PlacedCell[] cells = Cells(layout, plan, order);
        PlacedCell[] used = c.Series is null ? cells : [.. cells.Where(cell => cell.Group is not null)];
        double? cellKg = c.CellMassG / 1000, massKg = cellKg * used.Length;
        double partsKg = (c.Parts ?? []).Sum(p => p.Kg);
        PlacedGroup[] groups = Groups(cells, plan, c.Series ?? 0, cellKg);
        int count = cells.Length;
        FitAnswer answer = new()
        {
            Cells = cells,
            Fits = reasons.Count == 0,
            Series = c.Series,
            Parallel = plan?.Parallel,
            Used = used.Length,
            CellMassKg = massKg,
            PackMassKg = massKg + partsKg,
            CellsCentreOfMass = used.Length == 0 ? null : Mean(used.Select(p => p.Centre)),
            UsedVolumeL = count * (BodyVolumeMm3(c.Cell) / 1e6),
            CavityVolumeL = CavityVolume.OfMm3(scene) / 1e6,
            MarginMm = count == 0 ? [] : Margins.Of(scene, layout.Bodies),
            Bound = choice.Bound,
            BoundMethod = choice.BoundMethod,
            Proven = choice.Bound == count,
            NestKind = count == 0 ? "none" : layout.Kind,
            NestAngleDeg = layout.Regular && layout.AngleRad is double a ? a * 180 / Math.PI : null,
            RegularCount = choice.RegularCount,
            FreeCount = choice.FreeCount,
            NarrowestLink = plan is { Pairs.Length: > 0 } ? plan.Narrowest : null,
            LinkPairs = plan?.Pairs ?? [],
            BusbarRatio = plan?.BusbarRatio,
            Jumpers = [.. (plan?.Pairs ?? []).Select((p, k) => (p, k)).Where(e => e.p == 0).Select(e => e.k + 1)],
            Groups = groups,
            Taps = SenseTaps.Of(groups, c),
            Boxes = BoxSplit.Of(groups, c),
            Reasons = reasons,
            Stopped = stopped,
        };
        answer = answer with { CentreOfMass = WholeCentre(answer, c), WaysIn = WaysInCheck.Of(scene, [.. order.Take(used.Length > 0 ? used.Length : count).Select(i => layout.Bodies[i])]) };
        return answer with { Cautions = FitCautions.Of(answer, c) };
    }

    /// <summary>Groups first, in series order, then spares; within a group from low to high.</summary>
    private static int[] Order(Layout layout, GroupPlan? plan) =>
        [.. Enumerable.Range(0, layout.Bodies.Count)
            .OrderBy(i => plan is null || plan.GroupOf[i] == 0 ? int.MaxValue : plan.GroupOf[i])
            .ThenBy(i => layout.Bodies[i].Centre.Z).ThenBy(i => layout.Bodies[i].Centre.Y).ThenBy(i => layout.Bodies[i].Centre.X)];

    private static PlacedCell[] Cells(Layout layout, GroupPlan? plan, int[] order)
    {
        return [.. order.Select((i, k) =>
        {
            Body body = layout.Bodies[i];
            Attitude a = body.Attitude;
            int group = plan?.GroupOf[i] ?? 0;
            // Every second group stands the other way round, so that each plate joins plus poles to minus poles on one side.
            Axis poles = a.RoundAlong ?? a.LengthAlong;
            string? plus = group == 0 ? null : ((group & 1) == 1 ? "+" : "-") + Axes3.Letter(poles);
            return new PlacedCell(
                k + 1, body.Centre, new PointMm(a.Size(Axis.X), a.Size(Axis.Y), a.Size(Axis.Z)), a.RoundAlong, plus,
                a.TerminalFace < 0 ? null : Attitude.FaceName(a.TerminalFace), group == 0 ? null : group);
        })];
    }

    private static PlacedGroup[] Groups(PlacedCell[] cells, GroupPlan? plan, int series, double? cellKg)
    {
        if (plan is null)
            return [];
        return [.. Enumerable.Range(1, series).Select(k =>
        {
            PlacedCell[] members = [.. cells.Where(cell => cell.Group == k)];
            return new PlacedGroup(k, [.. members.Select(m => m.Cell)], members[0].Plus!, cellKg * members.Length, Mean(members.Select(m => m.Centre)));
        })];
    }

    private static PointMm? WholeCentre(FitAnswer answer, FitCase c)
    {
        IReadOnlyList<WeighedPart> parts = c.Parts ?? [];
        if (parts.All(p => p.Kg == 0) || answer.CellsCentreOfMass is not PointMm cells)
            return answer.CellsCentreOfMass;
        // One part in an unknown place, or cells of unknown mass, and the centre of the whole cannot be told.
        if (answer.CellMassKg is not double kg || parts.Any(p => p.At is null && p.Kg > 0))
            return null;
        double all = kg + parts.Sum(p => p.Kg);
        double Along(Axis axis) => ((kg * cells[axis]) + parts.Where(p => p.Kg > 0).Sum(p => p.Kg * p.At!.Value[axis])) / all;
        return new PointMm(Along(Axis.X), Along(Axis.Y), Along(Axis.Z));
    }

    internal static PointMm Mean(IEnumerable<PointMm> points)
    {
        double x = 0, y = 0, z = 0;
        int n = 0;
        foreach (PointMm p in points)
            (x, y, z, n) = (x + p.X, y + p.Y, z + p.Z, n + 1);
        return new PointMm(x / n, y / n, z / n);
    }

    private static double BodyVolumeMm3(CellBody cell) => cell switch
    {
        CellBody.Cylinder c => Math.PI / 4 * c.DiameterMm * c.DiameterMm * c.LengthMm,
        CellBody.Box b => b.LengthMm * b.ThicknessMm * b.HeightMm,
        _ => 0,
    };
}
