namespace PackPlanner.Core.Fitting;

/// <summary>A body in space, millimetres. Closed: box, prism and tube are all there are.</summary>
public abstract record Solid
{
    private Solid()
    {
    }

    /// <summary>A box with its sides along the axes.</summary>
    /// <param name="From">The corner with the smallest coordinates.</param>
    /// <param name="To">The corner with the largest coordinates.</param>
    public sealed record Box(PointMm From, PointMm To) : Solid;

    /// <summary>A simple outline, drawn out along the axis at right angles to its plane.</summary>
    /// <param name="Extrusion">The axis it is drawn out along; the outline lies in the other two.</param>
    /// <param name="Outline">The corners in either sense; need not be convex; three at least.</param>
    /// <param name="FromMm">Where it begins along the extrusion.</param>
    /// <param name="ToMm">Where it ends along the extrusion.</param>
    public sealed record Prism(Axis Extrusion, IReadOnlyList<OutlinePointMm> Outline, double FromMm, double ToMm) : Solid;

    /// <summary>A round bar in any direction, with round ends.</summary>
    /// <param name="From">Centre of one end.</param>
    /// <param name="To">Centre of the other end.</param>
    /// <param name="DiameterMm">Thickness of the bar.</param>
    public sealed record Tube(PointMm From, PointMm To, double DiameterMm) : Solid;
}
