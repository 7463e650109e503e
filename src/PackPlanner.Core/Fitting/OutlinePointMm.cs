namespace PackPlanner.Core.Fitting;

/// <summary>A corner of an outline, millimetres, in the order of the two letters of its plane (xz: x, then z).</summary>
/// <param name="U">Along the first letter.</param>
/// <param name="V">Along the second letter.</param>
public readonly record struct OutlinePointMm(double U, double V);
