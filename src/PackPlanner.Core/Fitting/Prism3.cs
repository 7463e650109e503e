namespace PackPlanner.Core.Fitting;

/// <summary>A box or prism ready for the kernels: outline as two arrays, anticlockwise, and the extent along the extrusion; millimetres.</summary>
internal sealed class Prism3
{
    private readonly Prism3?[] turned = new Prism3?[3];

    internal Prism3(Axis extrusion, double[] u, double[] v, double low, double high, bool isBox)
    {
        if (Geometry2.TwiceArea(u, v) < 0)
        {
            Array.Reverse(u);
            Array.Reverse(v);
        }

        Extrusion = extrusion;
        (First, Second) = Axes3.Others(extrusion);
        (U, V, Low, High, IsBox) = (u, v, low, high, isBox);
        (MinU, MaxU, MinV, MaxV) = (u.Min(), u.Max(), v.Min(), v.Max());
        IsConvex = Geometry2.IsConvex(u, v);
    }

    internal Axis Extrusion { get; }

    internal Axis First { get; }

    internal Axis Second { get; }

    internal double[] U { get; }

    internal double[] V { get; }

    internal double Low { get; }

    internal double High { get; }

    internal bool IsBox { get; }

    internal bool IsConvex { get; }

    internal double MinU { get; }

    internal double MaxU { get; }

    internal double MinV { get; }

    internal double MaxV { get; }

    /// <summary>The same box drawn out along another axis; a prism with another outline stays as it is.</summary>
    internal Prism3 Along(Axis axis)
    {
        if (!IsBox || axis == Extrusion)
            return this;
        if (turned[(int)axis] is Prism3 made)
            return made;
        (Axis first, Axis second) = Axes3.Others(axis);
        (double u0, double u1) = Extent(first);
        (double v0, double v1) = Extent(second);
        (double low, double high) = Extent(axis);
        return turned[(int)axis] = new Prism3(axis, [u0, u1, u1, u0], [v0, v0, v1, v1], low, high, isBox: true);
    }

    internal (double Low, double High) Extent(Axis axis) =>
        axis == Extrusion ? (Low, High) : axis == First ? (MinU, MaxU) : (MinV, MaxV);

    internal double VolumeMm3 => Math.Abs(Geometry2.TwiceArea(U, V)) / 2 * (High - Low);

    internal static Prism3? From(Solid solid) => solid switch
    {
        Solid.Box b => new Prism3(Axis.Z, [b.From.X, b.To.X, b.To.X, b.From.X], [b.From.Y, b.From.Y, b.To.Y, b.To.Y], b.From.Z, b.To.Z, isBox: true),
        Solid.Prism p => new Prism3(p.Extrusion, [.. p.Outline.Select(c => c.U)], [.. p.Outline.Select(c => c.V)], p.FromMm, p.ToMm, isBox: false),
        _ => null,
    };
}
