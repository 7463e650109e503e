namespace PackPlanner.Core.Fitting;

/// <summary>One way in which a cell may stand: its size as placed, and what each of its six faces asks for.</summary>
internal sealed class Attitude
{
    private readonly double[] wall = new double[6];
    private readonly double[] want = new double[6];
    private readonly double[] size = new double[3];

    private Attitude()
    {
    }

    /// <summary>The axis of a cylinder; null for a box.</summary>
    internal Axis? RoundAlong { get; private init; }

    /// <summary>Where the terminal face looks: 0..5 as <see cref="Face"/> counts; -1 for a cylinder.</summary>
    internal int TerminalFace { get; private init; } = -1;

    /// <summary>The axis across the large faces of a box.</summary>
    internal Axis ThicknessAlong { get; private init; }

    /// <summary>The axis along the long side of a box.</summary>
    internal Axis LengthAlong { get; private init; }

    /// <summary>Length along an axis as it stands, millimetres.</summary>
    internal double Size(Axis axis) => size[(int)axis];

    /// <summary>Distance that a face keeps from walls and keep-outs, millimetres.</summary>
    internal double Wall(int face) => wall[face];

    /// <summary>Distance that a face keeps from the next cell, millimetres.</summary>
    internal double Want(int face) => want[face];

    /// <summary>Faces are counted -x, +x, -y, +y, -z, +z.</summary>
    internal static int Face(Axis axis, bool positive) => (2 * (int)axis) + (positive ? 1 : 0);

    internal static string FaceName(int face) => ((face & 1) != 0 ? "+" : "-") + Axes3.Letter((Axis)(face / 2));

    internal Box3 Body(PointMm centre) => Box3.Around(centre, size[0], size[1], size[2]);

    internal Box3 Skin(PointMm centre)
    {
        Box3 b = Body(centre);
        return new Box3(b.X0 - wall[0], b.Y0 - wall[2], b.Z0 - wall[4], b.X1 + wall[1], b.Y1 + wall[3], b.Z1 + wall[5]);
    }

    internal static IReadOnlyList<Attitude> Of(FitCase fitCase) => fitCase.Cell switch
    {
        CellBody.Cylinder c => [.. c.Axes.Distinct().Order().Select(a => Round(c, a, fitCase.Clearances))],
        CellBody.Box b => [.. b.Poses.Distinct().Order().SelectMany(p => Boxes(b, p, fitCase.Clearances))],
        _ => [],
    };

    private static Attitude Round(CellBody.Cylinder cell, Axis axis, Clearances c)
    {
        Attitude a = new() { RoundAlong = axis };
        foreach (Axis other in Axes3.All)
        {
            bool end = other == axis;
            a.size[(int)other] = end ? cell.LengthMm : cell.DiameterMm;
            foreach (bool positive in new[] { false, true })
            {
                a.wall[Face(other, positive)] = end ? c.EndMm : c.WallMm;
                a.want[Face(other, positive)] = end ? c.LayerGapMm : c.CellGapMm;
            }
        }

        return a;
    }

    private static IEnumerable<Attitude> Boxes(CellBody.Box cell, BoxPose pose, Clearances c)
    {
        int[] terminalFaces = pose switch { BoxPose.Upright => [5], BoxPose.Inverted => [4], _ => [0, 1, 2, 3] };
        foreach (int terminal in terminalFaces)
        {
            foreach (Axis thickness in Axes3.All)
            {
                if ((int)thickness == terminal / 2)
                    continue;
                bool level = thickness == Axis.Z;
                if ((pose == BoxPose.OnEdge && level) || (pose == BoxPose.OnFace && !level))
                    continue;
                yield return OneBox(cell, terminal, thickness, c);
            }
        }
    }

    private static Attitude OneBox(CellBody.Box cell, int terminal, Axis thickness, Clearances c)
    {
        Axis height = (Axis)(terminal / 2), length = (Axis)(3 - (int)height - (int)thickness);
        Attitude a = new() { TerminalFace = terminal, ThicknessAlong = thickness, LengthAlong = length };
        (a.size[(int)height], a.size[(int)thickness], a.size[(int)length]) = (cell.HeightMm, cell.ThicknessMm, cell.LengthMm);
        for (int face = 0; face < 6; face++)
        {
            bool large = face / 2 == (int)thickness;
            a.wall[face] = face == terminal ? c.TerminalMm : large ? Math.Max(c.PlateMm, c.WallMm) : c.WallMm;
            a.want[face] = face == terminal ? Math.Max(c.TerminalMm, c.CellGapMm) : large ? c.SpacerMm : c.CellGapMm;
        }

        return a;
    }
}
