namespace PackPlanner.Core.Fitting;

/// <summary>
/// A coarse map of one slab that answers most questions whether a box may stand somewhere: it may where every square under its skin lies
/// in one part and out of every keep-out, it may not where a needle in its skin does not. Only skins that come near to a wall are looked
/// at exactly, so the answers are those of <see cref="Scene.BoxIsClear"/>.
/// </summary>
internal sealed class SlabMask
{
    /// <summary>Squares along the longer side: finer maps leave fewer doubts, and cost more to draw.</summary>
    private const int Squares = 64;

    // Wider than what the exact test forgives, so that rounding cannot make the map and the test disagree.
    private const double NeedleMm = 1e-3;
    private const double FlushMm = Geometry2.RoundingMm / 2;

    private readonly Scene scene;
    private readonly Axis first;
    private readonly Axis second;
    private readonly double low1;
    private readonly double high1;
    private readonly double low2;
    private readonly double high2;
    private readonly double side;
    private readonly int wide;
    private readonly int deep;
    // For each part, squares that are not wholly free and needles that are stopped, summed from the low corner.
    private readonly int[][] taken;
    private readonly int[][] stopped;

    /// <summary>Draws the map.</summary>
    /// <param name="scene">Walls and keep-outs.</param>
    /// <param name="along">The axis across the slab.</param>
    /// <param name="low">Where the skins of the slab begin along that axis.</param>
    /// <param name="high">Where they end.</param>
    internal SlabMask(Scene scene, Axis along, double low, double high)
    {
        this.scene = scene;
        (first, second) = Axes3.Others(along);
        (low1, high1) = Reach(scene, first);
        (low2, high2) = Reach(scene, second);
        side = Math.Max(high1 - low1, high2 - low2) / Squares;
        (wide, deep) = ((int)Math.Ceiling((high1 - low1) / side), (int)Math.Ceiling((high2 - low2) / side));
        taken = new int[scene.Parts.Length][];
        stopped = new int[scene.Parts.Length][];
        for (int p = 0; p < taken.Length; p++)
        {
            Prism3 part = scene.Parts[p];
            taken[p] = Sums((u, v) => !IsClear(part, Box(along, low, high, u * side, (u + 1) * side, v * side, (v + 1) * side)));
            stopped[p] = Sums((u, v) => !IsClear(part, Box(along, low, high, (u + 0.5) * side, (u + 0.5) * side, (v + 0.5) * side, (v + 0.5) * side)));
        }
    }

    /// <summary>Whether a skin of the slab lies in one part and out of every keep-out, by the map alone; null where only a close look tells.</summary>
    internal bool? IsClear(in Box3 skin)
    {
        double u0 = skin.Low(first) - low1, u1 = skin.High(first) - low1, v0 = skin.Low(second) - low2, v1 = skin.High(second) - low2;
        if (u0 < -NeedleMm || v0 < -NeedleMm || u1 > high1 - low1 + NeedleMm || v1 > high2 - low2 + NeedleMm)
            return false;
        (int fromU, int toU) = (Math.Max(0, (int)(u0 / side)), Math.Min(wide, (int)(u1 / side) + 1));
        (int fromV, int toV) = (Math.Max(0, (int)(v0 / side)), Math.Min(deep, (int)(v1 / side) + 1));
        (int needleU, int lastU) = (Needle(u0), Math.Min(wide, (int)Math.Floor(((u1 - (2 * NeedleMm)) / side) - 0.5) + 1));
        (int needleV, int lastV) = (Needle(v0), Math.Min(deep, (int)Math.Floor(((v1 - (2 * NeedleMm)) / side) - 0.5) + 1));
        // A skin flush with the outer walls lies within the squares; one that a hair separates from flush is looked at closely.
        bool within = u0 > -FlushMm && v0 > -FlushMm && u1 < high1 - low1 + FlushMm && v1 < high2 - low2 + FlushMm, canBe = false;
        for (int p = 0; p < taken.Length; p++)
        {
            if (within && Count(taken[p], fromU, toU, fromV, toV) == 0)
                return true;
            canBe |= needleU >= lastU || needleV >= lastV || Count(stopped[p], needleU, lastU, needleV, lastV) == 0;
        }

        return canBe ? null : false;
    }

    private int Needle(double from) => Math.Max(0, (int)Math.Ceiling(((from + (2 * NeedleMm)) / side) - 0.5));

    private bool IsClear(Prism3 part, in Box3 box) => Scene.BoxInPart(part, box) && scene.BoxOutOfKeepOuts(box);

    private Box3 Box(Axis along, double low, double high, double u0, double u1, double v0, double v1)
    {
        PointMm from = Axes3.Place(along, low, Math.Max(low1, low1 + u0 - NeedleMm), Math.Max(low2, low2 + v0 - NeedleMm));
        PointMm to = Axes3.Place(along, high, Math.Min(high1, low1 + u1 + NeedleMm), Math.Min(high2, low2 + v1 + NeedleMm));
        return new Box3(from.X, from.Y, from.Z, to.X, to.Y, to.Z);
    }

    private int[] Sums(Func<int, int, bool> counts)
    {
        int[] sums = new int[(wide + 1) * (deep + 1)];
        for (int v = 0; v < deep; v++)
        {
            int row = 0;
            for (int u = 0; u < wide; u++)
            {
                row += counts(u, v) ? 1 : 0;
                sums[((v + 1) * (wide + 1)) + u + 1] = sums[(v * (wide + 1)) + u + 1] + row;
            }
        }

        return sums;
    }

    private int Count(int[] sums, int fromU, int toU, int fromV, int toV)
    {
        (int below, int above) = (fromV * (wide + 1), toV * (wide + 1));
        return sums[above + toU] - sums[above + fromU] - sums[below + toU] + sums[below + fromU];
    }

    private static (double Low, double High) Reach(Scene scene, Axis axis) =>
        (scene.Parts.Min(p => p.Extent(axis).Low), scene.Parts.Max(p => p.Extent(axis).High));
}
