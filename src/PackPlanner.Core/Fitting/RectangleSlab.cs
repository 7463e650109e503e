namespace PackPlanner.Core.Fitting;

/// <summary>A slab of boxes in a plain box-shaped cavity: searched completely, with a proof where the search comes to its end.</summary>
internal static class RectangleSlab
{
    /// <summary>Whether the cavity is one box without keep-outs, so that every slab across any axis is a rectangle.</summary>
    internal static bool Applies(Scene scene) => scene.Parts is [{ IsBox: true }] && scene.Blocks.Length == 0 && scene.Tubes.Length == 0;

    /// <summary>Most boxes that area alone allows in one slab: never fewer than the truth.</summary>
    internal static int AreaBound(Scene scene, SlabClass slab) => Make(scene, slab, widest: false, out _).AreaBound;

    /// <summary>Looks for more boxes than are known, until there are none or the steps are spent.</summary>
    /// <param name="scene">With one box-shaped part.</param>
    /// <param name="slab">The class of attitudes.</param>
    /// <param name="known">Boxes known to fit.</param>
    /// <param name="steps">Steps at most.</param>
    /// <param name="cancel">Stops the search.</param>
    /// <returns>More boxes than known, with their centres at 0 along the slab, or none; and a proven bound.</returns>
    internal static (List<Body> Better, int Bound) Search(Scene scene, SlabClass slab, int known, long steps, CancellationToken cancel)
    {
        RectanglePacker packer = Make(scene, slab, widest: true, out bool exact);
        int bound = AreaBound(scene, slab);
        List<Body> better = [];
        for (int wanted = known + 1; wanted <= packer.AreaBound; wanted++)
        {
            bool complete = packer.Search(wanted, steps, cancel, out (int Kind, double X, double Y)[]? found);
            if (found is null)
                return (better, complete && exact ? Math.Min(bound, wanted - 1) : bound);
            better = [.. found.Select(f => Place(scene, slab, f))];
        }

        return (better, exact ? Math.Min(bound, packer.AreaBound) : bound);
    }

    /// <summary>
    /// Each box is grown by half the gap on every side, and the container too, so that grown boxes may touch. Where faces want different
    /// gaps the widest gives layouts that hold, the narrowest bounds that hold.
    /// </summary>
    private static RectanglePacker Make(Scene scene, SlabClass slab, bool widest, out bool exact)
    {
        (Axis first, Axis second) = Axes3.Others(slab.Along);
        (double g1, bool same1) = Gap(slab, first, widest);
        (double g2, bool same2) = Gap(slab, second, widest);
        exact = same1 && same2;
        (double w0, double w1, double[] left, double[] right) = Walls(scene, slab, first, g1);
        (double h0, double h1, double[] down, double[] up) = Walls(scene, slab, second, g2);
        return new RectanglePacker(w1 - w0, h1 - h0, [.. slab.Attitudes.Select((a, i) =>
            (a.Size(first) + g1, a.Size(second) + g2, left[i], right[i], down[i], up[i]))]);
    }

    private static (double Gap, bool Same) Gap(SlabClass slab, Axis axis, bool widest)
    {
        double[] gaps = [.. slab.Attitudes.SelectMany(a => slab.Attitudes.Select(b =>
            Math.Max(a.Want(Attitude.Face(axis, true)), b.Want(Attitude.Face(axis, false)))))];
        return (widest ? gaps.Max() : gaps.Min(), gaps.Max() - gaps.Min() < 1e-9);
    }

    /// <summary>The container from its least clearances, and how much further each attitude must stay from either end.</summary>
    private static (double From, double To, double[] Low, double[] High) Walls(Scene scene, SlabClass slab, Axis axis, double gap)
    {
        (double low, double high) = scene.Parts[0].Extent(axis);
        double[] below = [.. slab.Attitudes.Select(a => a.Wall(Attitude.Face(axis, false)))], above = [.. slab.Attitudes.Select(a => a.Wall(Attitude.Face(axis, true)))];
        return (low + below.Min() - (gap / 2), high - above.Min() + (gap / 2), [.. below.Select(b => b - below.Min())], [.. above.Select(a => a - above.Min())]);
    }

    private static Body Place(Scene scene, SlabClass slab, (int Kind, double X, double Y) found)
    {
        (Axis first, Axis second) = Axes3.Others(slab.Along);
        Attitude a = slab.Attitudes[found.Kind];
        (double g1, _) = Gap(slab, first, widest: true);
        (double g2, _) = Gap(slab, second, widest: true);
        double x = Walls(scene, slab, first, g1).From + found.X + ((a.Size(first) + g1) / 2);
        double y = Walls(scene, slab, second, g2).From + found.Y + ((a.Size(second) + g2) / 2);
        return new Body(Axes3.Place(slab.Along, 0, x, y), a);
    }
}
