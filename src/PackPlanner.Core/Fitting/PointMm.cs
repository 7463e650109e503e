namespace PackPlanner.Core.Fitting;

/// <summary>A place in the vehicle, millimetres.</summary>
/// <param name="X">Forward.</param>
/// <param name="Y">To the left.</param>
/// <param name="Z">Up.</param>
public readonly record struct PointMm(double X, double Y, double Z)
{
    /// <summary>The coordinate along one axis, millimetres.</summary>
    /// <param name="axis">Which of the three.</param>
    /// <returns>Millimetres.</returns>
    public double this[Axis axis] => axis switch { Axis.X => X, Axis.Y => Y, _ => Z };

    internal PointMm With(Axis axis, double valueMm) => axis switch
    {
        Axis.X => this with { X = valueMm },
        Axis.Y => this with { Y = valueMm },
        _ => this with { Z = valueMm },
    };
}
