namespace PackPlanner.Core.Cells;

/// <summary>The states of charge at which the measured curves were read: closer together at the ends, where they bend.</summary>
internal static class CurveGrid
{
    internal static readonly double[] Fraction =
    [
        0, 0.005, 0.01, 0.015, 0.02, 0.03, 0.04, 0.05, 0.06, 0.08, 0.1, 0.125, 0.15, 0.175, 0.2, 0.225,
        0.25, 0.275, 0.3, 0.325, 0.35, 0.375, 0.4, 0.425, 0.45, 0.475, 0.5, 0.525, 0.55, 0.575, 0.6, 0.625,
        0.65, 0.675, 0.7, 0.725, 0.75, 0.775, 0.8, 0.825, 0.85, 0.875, 0.9, 0.925, 0.95, 0.97, 0.98, 0.99,
        0.995, 1,
    ];
}
