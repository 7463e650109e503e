using static System.FormattableString;

namespace PackPlanner.Core.Fitting;

/// <summary>Says why what was asked does not fit, what is short by how much, and the nearest change that would help.</summary>
internal static class FitReasons
{
    internal static IReadOnlyList<FitReason> Of(Scene scene, Layout layout, GroupPlan? plan, QuickLooks looks)
    {
        FitCase c = scene.Case;
        int count = layout.Bodies.Count, series = c.Series ?? 1, need = series * (c.Parallel ?? 1);
        if (plan is not null || (c.Series is null && count > 0))
            return [];
        if (c is { CellMassLimitKg: double kg, CellMassG: double g } && need * g / 1000 > kg + 1e-9)
        {
            int most = (int)Math.Floor((kg * 1000 / g) + 1e-9);
            return [new("mass-over", null, null, Invariant($"{need} cells of {g:0.#} g weigh {need * g / 1000:0.###} kg, the limit is {kg:0.###} kg"),
                Invariant($"Allow {need * g / 1000:0.###} kg, or use {most} cells at most."))];
        }

        if (count == 0 && TooLarge(scene, c) is { } size)
            return [Turned(scene, size, 1, need, looks)];
        if (looks.IsStopped)
        {
            string had = count < need ? Invariant($"it had found {count} of {need} places") : Invariant($"its {count} places were not grouped yet");
            return [new("stopped-early", null, null, $"the search was stopped when {had}", "Let it look longer.")];
        }

        if (count == 0)
            return NoCell(scene, looks);
        if (count < need && TooFew(scene, count, need, looks) is [FitReason nearest, .. var more])
            return [Turned(scene, nearest, need, need, looks), .. more];
        return [NoPath(layout, c, series)];
    }

    private static List<FitReason> NoCell(Scene scene, QuickLooks looks)
    {
        if (scene.Case.KeepOuts.Count > 0 && looks.Finds(scene.Case with { KeepOuts = [] }, 1))
            return [KeepOutsFill(scene, 1, looks)];
        return [.. Growth(scene, 0, 1, looks).DefaultIfEmpty(
            new("outline-too-narrow", null, null, "the space is large enough from end to end, but no part of it is wide enough for one cell with its clearances", "Use a smaller cell or smaller clearances."))];
    }

    /// <summary>Along which axis even an empty cavity is shorter than one cell with its clearances; null when along none.</summary>
    private static FitReason? TooLarge(Scene scene, FitCase fitCase)
    {
        (FitReason Reason, double Short)? nearest = null;
        foreach (Attitude a in Attitude.Of(fitCase))
        {
            foreach (Prism3 part in scene.Parts)
            {
                double worst = 0, sum = 0;
                FitReason? reason = null;
                foreach (Axis axis in Axes3.All)
                {
                    (double low, double high) = part.Extent(axis);
                    double below = a.Wall(Attitude.Face(axis, false)), above = a.Wall(Attitude.Face(axis, true)), size = a.Size(axis);
                    double lacks = size + below + above - (high - low);
                    if (lacks <= Geometry2.RoundingMm)
                        continue;
                    sum += lacks;
                    if (lacks <= worst)
                        continue;
                    worst = lacks;
                    string space = Invariant($"{size:0.##} mm of cell + {below:0.##} mm at -{Axes3.Letter(axis)} + {above:0.##} mm at +{Axes3.Letter(axis)} = {size + below + above:0.##} mm, the space is {high - low:0.##} mm");
                    reason = new("cell-too-large", axis, lacks, Invariant($"{lacks:0.##} mm short {Direction(axis)}: {space}"),
                        Invariant($"Give {lacks:0.##} mm more {Direction(axis)}, or use a cell or clearances that much smaller."));
                }

                if (reason is null)
                    return null;
                if (nearest is null || sum < nearest.Value.Short)
                    nearest = (reason, sum);
            }
        }

        return nearest?.Reason;
    }

    /// <summary>The same reason, and that cells turned another way would help: they find at least so many places.</summary>
    private static FitReason Turned(Scene scene, FitReason reason, int least, int need, QuickLooks looks)
    {
        FitCase any = AnyWay(scene.Case);
        if (Attitude.Of(any).Count == Attitude.Of(scene.Case).Count || TooLarge(scene, any) is not null || looks.Count(any, least) is not { } turned || turned < least)
            return reason;
        string enough = turned < need ? Invariant($" of the {need} needed") : "";
        return reason with { WhenTurned = turned, Change = Invariant($"Turn the cells another way, where their maker allows it: at least {turned}{enough} go in. Else: {reason.Change}") };
    }

    // Never with the terminals below: many makers forbid that.
    private static FitCase AnyWay(FitCase fitCase) => fitCase with
    {
        Cell = fitCase.Cell switch
        {
            CellBody.Cylinder round => round with { Axes = Axes3.All },
            CellBody.Box box => box with { Poses = [.. box.Poses.Union([BoxPose.Upright, BoxPose.OnEdge, BoxPose.OnFace])] },
            _ => fitCase.Cell,
        },
    };

    private static List<FitReason> TooFew(Scene scene, int count, int need, QuickLooks looks)
    {
        List<FitReason> reasons = [.. Growth(scene, count, need, looks)];
        if (scene.Case.KeepOuts.Count > 0 && looks.Finds(scene.Case with { KeepOuts = [] }, need))
            reasons.Add(KeepOutsFill(scene, need, looks));
        int series = scene.Case.Series ?? 1;
        string change = count >= series ? Invariant($"Ask for {count / series} in parallel, or for {count / Math.Max(1, scene.Case.Parallel ?? 1)} in series.") : Invariant($"Ask for {count} in series at most, or use a smaller cell.");
        if (reasons.Count == 0)
            reasons.Add(new("too-few-places", null, null, Invariant($"{count} places fit, {need} are needed"), change));
        return reasons;
    }

    /// <summary>How much longer the space would have to be along each axis; the least first.</summary>
    private static IEnumerable<FitReason> Growth(Scene scene, int count, int need, QuickLooks looks)
    {
        // A look at boxes costs far more than one at round cells: fewer steps, and told to 4 mm; what is far off to one part in fifty.
        bool boxes = scene.Case.Cell is CellBody.Box;
        double fine = boxes ? 4 : 0.5;
        double[] lengths = boxes ? [0, 4, 16, 64, 256, 1024] : [0, 2, 5, 10, 20, 40, 80, 160, 320, 1280];
        // First roughly along every axis, so that the looks left, if they run out, are missing where they tell least.
        List<(Axis Axis, double Low, double Enough)> rough = [];
        foreach (Axis axis in Axes3.All)
        {
            int at = Array.FindIndex(lengths, 1, mm => looks.Finds(Longer(scene.Case, axis, mm), need));
            if (at > 0)
                rough.Add((axis, lengths[at - 1], lengths[at]));
        }

        List<FitReason> reasons = [];
        foreach ((Axis axis, double from, double to) in rough)
        {
            (double low, double enough) = (from, to);
            while (enough - low > Math.Max(fine, enough / 50))
            {
                double middle = (low + enough) / 2;
                (low, enough) = looks.Finds(Longer(scene.Case, axis, middle), need) ? (low, middle) : (middle, enough);
            }

            reasons.Add(new("too-few-places", axis, enough, Invariant($"{count} places fit, {need} are needed: {enough:0.#} mm short {Direction(axis)}, by a quick look at a longer space"),
                Invariant($"Make the space {enough:0.#} mm longer {Direction(axis)}.")));
        }

        return reasons.OrderBy(r => r.ShortMm);
    }

    private static FitCase Longer(FitCase c, Axis axis, double mm)
    {
        Scene scene = new(c);
        double low = scene.Parts.Min(p => p.Extent(axis).Low), high = scene.Parts.Max(p => p.Extent(axis).High), middle = (low + high) / 2;
        double Move(double at) => at > middle ? at + mm : at;
        PointMm MovePoint(PointMm p) => p.With(axis, Move(p[axis]));
        return c with { Cavity = [.. c.Cavity.Select(part => part with { Shape = Moved(part.Shape) })] };

        Solid Moved(Solid solid)
        {
            switch (solid)
            {
                case Solid.Box b:
                    return new Solid.Box(MovePoint(b.From), MovePoint(b.To));
                case Solid.Prism p when p.Extrusion == axis:
                    return p with { FromMm = Move(p.FromMm), ToMm = Move(p.ToMm) };
                case Solid.Prism p:
                    bool first = Axes3.Others(p.Extrusion).First == axis;
                    return p with { Outline = [.. p.Outline.Select(o => first ? o with { U = Move(o.U) } : o with { V = Move(o.V) })] };
                default:
                    return solid;
            }
        }
    }

    private static FitReason KeepOutsFill(Scene scene, int need, QuickLooks looks)
    {
        FitCase c = scene.Case;
        string[] alone = [.. c.KeepOuts.Where(k => looks.Finds(c with { KeepOuts = [.. c.KeepOuts.Where(o => o != k)] }, need)).Select(k => k.Name)];
        string names = string.Join(", ", alone.Length > 0 ? alone : c.KeepOuts.Select(k => k.Name));
        return new("keep-outs-fill-cavity", null, null, Invariant($"without keep-outs {need} {(need == 1 ? "cell" : "cells")} would fit; with them not"),
            alone.Length > 0 ? $"Move or shrink one of: {names}." : $"Move or shrink several of: {names}.");
    }

    private static FitReason NoPath(Layout layout, FitCase c, int series)
    {
        NeighbourGraph graph = NeighbourGraph.Of(layout.Bodies, c.Clearances, c.LinkReachMm);
        List<int> sizes = [.. graph.Pieces(_ => true).Sizes.OrderDescending()];
        string pieces = string.Join(", ", sizes.Take(6)) + (sizes.Count > 6 ? ", ..." : "");
        return new("no-series-path", null, null,
            Invariant($"{layout.Bodies.Count} places fit, but {series} groups cannot all be linked: the cells lie in {sizes.Count} separate pieces of {pieces}"),
            sizes.Count > 1 ? Invariant($"Allow {Math.Min(sizes.Count - 1, c.JumpersAllowed + 1)} links by cable, or a longer link reach than {c.LinkReachMm:0.#} mm.") : "Ask for fewer cells in parallel.");
    }

    private static string Direction(Axis axis) => axis switch { Axis.X => "in length (x)", Axis.Y => "in width (y)", _ => "in height (z)" };
}
