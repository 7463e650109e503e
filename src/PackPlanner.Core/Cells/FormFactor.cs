using UnitsNet;

namespace PackPlanner.Core.Cells;

/// <summary>Outer form of a cell. Closed: a cylinder or a box.</summary>
public abstract record FormFactor
{
    private FormFactor()
    {
    }

    /// <summary>A round cell.</summary>
    /// <param name="Diameter">Over the can and its sleeve.</param>
    /// <param name="Height">Over both ends.</param>
    public sealed record Cylinder(Length Diameter, Length Height) : FormFactor;

    /// <summary>A prismatic or pouch cell.</summary>
    /// <param name="LongSide">The longer side of the footprint.</param>
    /// <param name="Thickness">Across the two large faces.</param>
    /// <param name="Height">Base to top of the terminals.</param>
    public sealed record Box(Length LongSide, Length Thickness, Length Height) : FormFactor;
}
