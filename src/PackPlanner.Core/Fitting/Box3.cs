namespace PackPlanner.Core.Fitting;

/// <summary>A box along the axes, millimetres.</summary>
internal readonly record struct Box3(double X0, double Y0, double Z0, double X1, double Y1, double Z1)
{
    internal double Low(Axis axis) => axis switch { Axis.X => X0, Axis.Y => Y0, _ => Z0 };

    internal double High(Axis axis) => axis switch { Axis.X => X1, Axis.Y => Y1, _ => Z1 };

    internal double Size(Axis axis) => High(axis) - Low(axis);

    internal PointMm Centre => new((X0 + X1) / 2, (Y0 + Y1) / 2, (Z0 + Z1) / 2);

    internal static Box3 Around(PointMm centre, double dx, double dy, double dz) =>
        new(centre.X - (dx / 2), centre.Y - (dy / 2), centre.Z - (dz / 2), centre.X + (dx / 2), centre.Y + (dy / 2), centre.Z + (dz / 2));

    internal Box3 Moved(Axis axis, double mm) => axis switch
    {
        Axis.X => this with { X0 = X0 + mm, X1 = X1 + mm },
        Axis.Y => this with { Y0 = Y0 + mm, Y1 = Y1 + mm },
        _ => this with { Z0 = Z0 + mm, Z1 = Z1 + mm },
    };

    /// <summary>Smallest distance between two boxes along one axis, millimetres; below zero when they overlap there.</summary>
    internal static double Gap(in Box3 a, in Box3 b, Axis axis) =>
        Math.Max(a.Low(axis) - b.High(axis), b.Low(axis) - a.High(axis));
}
