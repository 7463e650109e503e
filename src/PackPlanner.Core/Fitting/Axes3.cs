namespace PackPlanner.Core.Fitting;

/// <summary>Small helpers about the three axes.</summary>
internal static class Axes3
{
    internal static readonly Axis[] All = [Axis.X, Axis.Y, Axis.Z];

    /// <summary>The two other axes, in the order x, y, z.</summary>
    internal static (Axis First, Axis Second) Others(Axis axis) => axis switch
    {
        Axis.X => (Axis.Y, Axis.Z),
        Axis.Y => (Axis.X, Axis.Z),
        _ => (Axis.X, Axis.Y),
    };

    internal static string Letter(Axis axis) => axis switch { Axis.X => "x", Axis.Y => "y", _ => "z" };

    /// <summary>A place from its coordinate along an axis and the two across it.</summary>
    internal static PointMm Place(Axis axis, double along, double first, double second) => axis switch
    {
        Axis.X => new PointMm(along, first, second),
        Axis.Y => new PointMm(first, along, second),
        _ => new PointMm(first, second, along),
    };
}
