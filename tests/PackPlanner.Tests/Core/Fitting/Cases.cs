using PackPlanner.Core.Fitting;

namespace PackPlanner.Tests.Core.Fitting;

/// <summary>Small invented cases, so that one step of a fit can be looked at by itself.</summary>
internal static class Cases
{
    internal static readonly Clearances Clear = new(WallMm: 3, EndMm: 5, PlateMm: 6, TerminalMm: 20, CellGapMm: 1, SpacerMm: 2, LayerGapMm: 8);

    internal static readonly CellBody.Cylinder Round = new(20, 70, [Axis.Z]);

    internal static readonly CellBody.Box Brick = new(130, 36, 140, [BoxPose.Upright]);

    internal static NamedSolid Box(double x0, double y0, double z0, double x1, double y1, double z1) => new("box", new Solid.Box(new PointMm(x0, y0, z0), new PointMm(x1, y1, z1)));

    internal static NamedSolid Prism(Axis along, double from, double to, params (double U, double V)[] corners) => new("prism", new Solid.Prism(along, [.. corners.Select(c => new OutlinePointMm(c.U, c.V))], from, to));

    internal static NamedSolid Tube(PointMm from, PointMm to, double diameter) => new("tube", new Solid.Tube(from, to, diameter));

    internal static FitCase Of(CellBody cell, NamedSolid[] cavity, NamedSolid[]? keepOuts = null, Clearances? clear = null) => new(cavity, keepOuts ?? [], "cell", cell, 70, clear ?? Clear);

    /// <summary>Upright round cells at places of a square grid of 21 mm, one layer.</summary>
    internal static Body[] Grid(int columns, int rows, double pitch = 21, double z = 35)
    {
        Attitude upright = Attitude.Of(Of(Round, [Box(0, 0, 0, 999, 999, 999)]))[0];
        return [.. Enumerable.Range(0, columns * rows).Select(i => new Body(new PointMm(i % columns * pitch, i / columns * pitch, z), upright))];
    }

    internal static NeighbourGraph Graph(int columns, int rows, double pitch = 21) => NeighbourGraph.Of(Grid(columns, rows, pitch), Clear, 1);
}
