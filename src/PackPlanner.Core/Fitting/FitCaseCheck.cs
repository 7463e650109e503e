using static System.FormattableString;

namespace PackPlanner.Core.Fitting;

/// <summary>Finds what is wrong or contradictory in a case before anything is searched.</summary>
public static class FitCaseCheck
{
    /// <summary>Every problem of a case; empty when it can be searched.</summary>
    /// <param name="fitCase">A case as read.</param>
    /// <returns>Problems in the order of the case, each with where, why and what to do.</returns>
    public static IReadOnlyList<Problem> Problems(FitCase fitCase)
    {
        ArgumentNullException.ThrowIfNull(fitCase);
        List<Problem> problems = [];
        if (fitCase.Cavity.Count == 0)
            problems.Add(new("cavity.parts", "the cavity has no part", "Give at least one box or prism."));
        foreach (NamedSolid part in fitCase.Cavity)
        {
            if (part.Shape is Solid.Tube)
                problems.Add(new(part.Name, "a part of the cavity is a tube", "Describe it as a prism whose outline is a polygon inside the round."));
            CheckSolid(part, problems);
        }

        foreach (NamedSolid keepOut in fitCase.KeepOuts)
            CheckSolid(keepOut, problems);
        CheckCell(fitCase, problems);
        CheckClearances(fitCase.Clearances, problems);
        CheckPack(fitCase, problems);
        if (problems.Count == 0)
            FitCaseSizes.Check(fitCase, problems);
        return problems;
    }

    private static void CheckSolid(NamedSolid solid, List<Problem> problems)
    {
        switch (solid.Shape)
        {
            case Solid.Box b:
                foreach (Axis axis in Axes3.All)
                {
                    if (!Finite(b.From[axis], b.To[axis]) || b.To[axis] - b.From[axis] <= 0)
                        problems.Add(new(solid.Name, Invariant($"the box has no volume: along {Axes3.Letter(axis)} it runs from {b.From[axis]} to {b.To[axis]} mm"), "Give the smaller corner first, x0,y0,z0, then the larger, x1,y1,z1."));
                }

                break;
            case Solid.Prism p:
                CheckPrism(solid.Name, p, problems);
                break;
            case Solid.Tube t:
                if (!Finite(t.From.X, t.From.Y, t.From.Z, t.To.X, t.To.Y, t.To.Z) || !(t.DiameterMm > 0) || !double.IsFinite(t.DiameterMm))
                    problems.Add(new(solid.Name, Invariant($"the tube has a diameter of {t.DiameterMm} mm"), "Give a diameter above zero and two ends."));
                break;
        }
    }

    private static void CheckPrism(string name, Solid.Prism prism, List<Problem> problems)
    {
        if (!Finite(prism.FromMm, prism.ToMm) || prism.ToMm - prism.FromMm <= 0)
            problems.Add(new(name, Invariant($"the prism has no volume: it runs from {prism.FromMm} to {prism.ToMm} mm along {Axes3.Letter(prism.Extrusion)}"), "Give from smaller than to."));
        if (prism.Outline.Count < 3 || prism.Outline.Any(c => !Finite(c.U, c.V)))
        {
            problems.Add(new(name, Invariant($"the outline has {prism.Outline.Count} usable corners"), "Give three corners or more, each as two numbers in mm."));
            return;
        }

        double[] u = [.. prism.Outline.Select(c => c.U)], v = [.. prism.Outline.Select(c => c.V)];
        if (OutlineCrossing.First(u, v) is (int a, int b))
        {
            problems.Add(new(
                name,
                Invariant($"the outline crosses or touches itself: the side from corner {a + 1} ({u[a]}, {v[a]}) meets the side from corner {b + 1} ({u[b]}, {v[b]})"),
                "List the corners in the order in which a pencil would draw them, each once; two lobes that meet in a point are two parts."));
        }
        else if (Math.Abs(Geometry2.TwiceArea(u, v)) < 1e-6)
        {
            problems.Add(new(name, "the outline has no area: all corners lie on one line", "Give corners that enclose the space."));
        }
    }

    private static void CheckCell(FitCase fitCase, List<Problem> problems)
    {
        (double Mm, string Name)[] sizes = fitCase.Cell switch
        {
            CellBody.Cylinder c => [(c.DiameterMm, "diameterMm"), (c.LengthMm, "lengthMm")],
            CellBody.Box b => [(b.LengthMm, "lengthMm"), (b.ThicknessMm, "thicknessMm"), (b.HeightMm, "heightMm")],
            _ => [],
        };
        foreach ((double mm, string name) in sizes)
        {
            if (!double.IsFinite(mm) || mm <= 0)
                problems.Add(new($"cell.{name}", Invariant($"it is {mm} mm"), "Give the size of the bare body in mm, above zero."));
        }

        if (fitCase.Cell is CellBody.Cylinder { Axes.Count: 0 } or CellBody.Box { Poses.Count: 0 })
            problems.Add(new("cell", "no direction is allowed, so no cell can be placed", "Name at least one: axes x, y, z for a cylinder, or a pose for a box."));
        if (fitCase.CellMassG is double g && !(g > 0 && double.IsFinite(g)))
            problems.Add(new("cell.massG", Invariant($"it is {g} g"), "Give the mass of one cell in grams, above zero, or leave it out."));
    }

    private static void CheckClearances(Clearances c, List<Problem> problems)
    {
        foreach ((double mm, string name) in new[]
        {
            (c.WallMm, "wallMm"), (c.EndMm, "endMm"), (c.PlateMm, "plateMm"), (c.TerminalMm, "terminalMm"), (c.CellGapMm, "cellGapMm"),
            (c.SpacerMm, "spacerMm"), (c.LayerGapMm, "layerGapMm"),
        })
        {
            if (!double.IsFinite(mm) || mm < 0)
                problems.Add(new($"clearance.{name}", Invariant($"it is {mm} mm, and a free distance cannot be below zero"), "Give 0 or more."));
        }
    }

    private static void CheckPack(FitCase f, List<Problem> problems)
    {
        if (f.Series is int s && (s < 1 || s > 1000))
            problems.Add(new("pack.series", Invariant($"it is {s}"), "Give 1 to 1000 groups in series, or null to count places only."));
        if (f.Parallel is int p && (p < 1 || p > 10_000))
            problems.Add(new("pack.parallel", Invariant($"it is {p}"), "Give 1 or more cells in a group, or null for as many as fit."));
        if (f.Parallel is not null && f.Series is null)
            problems.Add(new("pack.parallel", "it is given without pack.series", "Give series too, or leave both out."));
        if (!double.IsFinite(f.LinkReachMm) || f.LinkReachMm < 0)
            problems.Add(new("pack.linkReachMm", Invariant($"it is {f.LinkReachMm} mm"), "Give 0 or more."));
        if (f.JumpersAllowed < 0)
            problems.Add(new("pack.jumpersAllowed", Invariant($"it is {f.JumpersAllowed}"), "Give 0 or more."));
        if (f.CellMassLimitKg is double kg && !(kg > 0))
            problems.Add(new("limits.cellMassKg", Invariant($"it is {kg} kg"), "Give a mass above zero, or null for no limit."));
        if (f.CellMassLimitKg is not null && f.CellMassG is null)
            problems.Add(new("limits.cellMassKg", "a mass limit is given, but not what a cell weighs", "Give cell.massG."));
        if (f.Boxes < 1 || (f.Series is int groups && f.Boxes > Math.Max(1, groups)))
            problems.Add(new("boxes", Invariant($"it is {f.Boxes}"), "Give from 1 to the number of groups in series."));
        foreach (WeighedPart part in f.Parts ?? [])
        {
            if (!double.IsFinite(part.Kg) || part.Kg < 0)
                problems.Add(new($"parts, {part.Name}", Invariant($"it weighs {part.Kg} kg"), "Give 0 kg or more."));
        }

        foreach (Opening opening in f.Openings ?? [])
        {
            if (!Finite(opening.From.U, opening.From.V, opening.To.U, opening.To.V) || opening.From.U == opening.To.U || opening.From.V == opening.To.V)
                problems.Add(new(opening.Name, "the rectangle of the opening has no area", "Give two opposite corners."));
        }
    }

    private static bool Finite(params ReadOnlySpan<double> values)
    {
        foreach (double value in values)
        {
            if (!double.IsFinite(value))
                return false;
        }

        return true;
    }
}
