namespace PackPlanner.Core.Fitting;

/// <summary>Something of the pack beside the cells that has been weighed: links, plates, box, fuse, contactor, cable.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Kg">What it weighs.</param>
/// <param name="At">Its centre of mass; null when not known, and then the pack's cannot be told.</param>
public sealed record WeighedPart(string Name, double Kg, PointMm? At);
