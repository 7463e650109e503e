namespace PackPlanner.Core.Fitting;

/// <summary>A way into the cavity: a hole in one plane through which the pack, or its parts, must pass.</summary>
/// <param name="Name">The id in the case, or "opening 1".</param>
/// <param name="Across">The axis at right angles to the hole: the way in.</param>
/// <param name="Positive">True: at the side of larger coordinates (a lid on top is +z); false: the other; null: not said.</param>
/// <param name="From">One corner, in the order of the two letters of the plane.</param>
/// <param name="To">The opposite corner.</param>
public sealed record Opening(string Name, Axis Across, bool? Positive, OutlinePointMm From, OutlinePointMm To);
