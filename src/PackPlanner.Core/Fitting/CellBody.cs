namespace PackPlanner.Core.Fitting;

/// <summary>The bare body of a cell. Closed: cylinder and box are all there are.</summary>
public abstract record CellBody
{
    private CellBody()
    {
    }

    /// <summary>A round cell.</summary>
    /// <param name="DiameterMm">Over the sleeve, the largest of the data sheet.</param>
    /// <param name="LengthMm">End to end.</param>
    /// <param name="Axes">The directions in which it may lie.</param>
    public sealed record Cylinder(double DiameterMm, double LengthMm, IReadOnlyList<Axis> Axes) : CellBody;

    /// <summary>A prismatic or pouch cell.</summary>
    /// <param name="LengthMm">The long side of the base.</param>
    /// <param name="ThicknessMm">Across the two large faces.</param>
    /// <param name="HeightMm">Base to the top of the terminals.</param>
    /// <param name="Poses">The ways in which it may stand.</param>
    public sealed record Box(double LengthMm, double ThicknessMm, double HeightMm, IReadOnlyList<BoxPose> Poses) : CellBody;
}
