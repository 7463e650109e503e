namespace PackPlanner.Core.Fitting;

/// <summary>A case made ready for the kernels, and the exact tests of one body against walls and keep-outs.</summary>
internal sealed class Scene
{
    internal Scene(FitCase fitCase)
    {
        Case = fitCase;
        Parts = [.. fitCase.Cavity.Select(p => Prism3.From(p.Shape)!)];
        Blocks = [.. fitCase.KeepOuts.Select(k => Prism3.From(k.Shape)).OfType<Prism3>()];
        Tubes = [.. fitCase.KeepOuts.Select(k => k.Shape).OfType<Solid.Tube>().Select(t => new Tube3(t.From, t.To, t.DiameterMm / 2))];
    }

    internal FitCase Case { get; }

    internal Prism3[] Parts { get; }

    internal Prism3[] Blocks { get; }

    internal Tube3[] Tubes { get; }

    /// <summary>Whether a skin, a cylinder along an axis, lies in one part and out of every keep-out.</summary>
    internal bool CylinderIsClear(Axis axis, double low, double high, double x, double y, double r)
    {
        return Parts.Any(p => CylinderInPart(p, axis, low, high, x, y, r)) && CylinderOutOfKeepOuts(axis, low, high, x, y, r);
    }

    internal bool CylinderOutOfKeepOuts(Axis axis, double low, double high, double x, double y, double r)
    {
        const double Eps = Geometry2.RoundingMm;
        foreach (Prism3 block in Blocks)
        {
            Prism3 b = block.Along(axis);
            if (b.Extrusion == axis)
            {
                if (b.Low < high - Eps && b.High > low + Eps && -Geometry2.SignedDistance(b.U, b.V, x, y) < r - Eps)
                    return false;
            }
            else if (BoxOverlaps(b, CylinderBox(axis, low, high, x, y, r)))
            {
                return false;
            }
        }

        return Tubes.All(t => t.ToCylinder(axis, low, high, x, y, r, out _) >= t.Radius - Eps);
    }

    /// <summary>Whether a skin, a box along the axes, lies in one part and out of every keep-out.</summary>
    internal bool BoxIsClear(in Box3 skin)
    {
        Box3 s = skin;
        return Parts.Any(p => BoxInPart(p, s)) && BoxOutOfKeepOuts(s);
    }

    internal bool BoxOutOfKeepOuts(in Box3 skin)
    {
        foreach (Prism3 block in Blocks)
        {
            if (BoxOverlaps(block, skin))
                return false;
        }

        foreach (Tube3 tube in Tubes)
        {
            if (tube.CanTouch(skin) && tube.ToBox(skin) < tube.Radius - Geometry2.RoundingMm)
                return false;
        }

        return true;
    }

    internal static bool BoxInPart(Prism3 part, in Box3 skin)
    {
        const double Eps = Geometry2.RoundingMm;
        return skin.Low(part.Extrusion) >= part.Low - Eps && skin.High(part.Extrusion) <= part.High + Eps
            && Geometry2.RectangleInside(
                part.U, part.V, skin.Low(part.First), skin.Low(part.Second), skin.High(part.First), skin.High(part.Second));
    }

    internal static Box3 CylinderBox(Axis axis, double low, double high, double x, double y, double r)
    {
        PointMm from = Axes3.Place(axis, low, x - r, y - r), to = Axes3.Place(axis, high, x + r, y + r);
        return new Box3(from.X, from.Y, from.Z, to.X, to.Y, to.Z);
    }

    private static bool CylinderInPart(Prism3 part, Axis axis, double low, double high, double x, double y, double r)
    {
        const double Eps = Geometry2.RoundingMm;
        Prism3 p = part.Along(axis);
        if (p.Extrusion != axis)
            return BoxInPart(p, CylinderBox(axis, low, high, x, y, r));
        return low >= p.Low - Eps && high <= p.High + Eps && Geometry2.SignedDistance(p.U, p.V, x, y) >= r - Eps;
    }

    internal static bool BoxOverlaps(Prism3 block, in Box3 skin)
    {
        const double Eps = Geometry2.RoundingMm;
        return block.Low < skin.High(block.Extrusion) - Eps && block.High > skin.Low(block.Extrusion) + Eps
            && Geometry2.RectangleOverlaps(
                block.U, block.V, skin.Low(block.First), skin.Low(block.Second), skin.High(block.First), skin.High(block.Second));
    }
}
