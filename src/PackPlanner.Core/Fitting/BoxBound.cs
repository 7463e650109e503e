namespace PackPlanner.Core.Fitting;

/// <summary>How many boxes can fit at most: never fewer than the truth, keep-outs left out of account.</summary>
internal static class BoxBound
{
    /// <summary>The bound by volume, and by layers times area where all attitudes are alike along one axis.</summary>
    internal static (int? Bound, string Method) Of(Scene scene, IReadOnlyList<Attitude> attitudes)
    {
        int volume = scene.Parts.Sum(p => ByVolume(p, attitudes));
        int? layered = null;
        foreach (Axis axis in Axes3.All)
        {
            if (SlabClass.Of(attitudes, axis) is [SlabClass only])
                layered = Math.Min(layered ?? int.MaxValue, scene.Parts.Sum(p => Layers(p, only) * ByArea(p, only)));
        }

        return layered <= volume ? (layered, "layers times area") : (volume, "volume");
    }

    /// <summary>Layers of a class that fit along its axis: each box crosses one of so many planes, whatever its place.</summary>
    internal static int Layers(Prism3 part, SlabClass slab)
    {
        (double low, double high) = part.Extent(slab.Along);
        double gap = slab.GapTo(slab);
        return Math.Max(0, (int)Math.Floor(((high - low - slab.WallBelow - slab.WallAbove + gap) / (slab.Thickness + gap)) + 1e-9));
    }

    private static int ByArea(Prism3 part, SlabClass slab)
    {
        (Axis first, Axis second) = Axes3.Others(slab.Along);
        (double room1, double least1) = Grown(part, slab.Attitudes, first);
        (double room2, double least2) = Grown(part, slab.Attitudes, second);
        double smallest = slab.Attitudes.Min(a => (a.Size(first) + least1) * (a.Size(second) + least2));
        return (int)Math.Floor((Math.Max(0, room1) * Math.Max(0, room2) / smallest) + 1e-9);
    }

    private static int ByVolume(Prism3 part, IReadOnlyList<Attitude> attitudes)
    {
        double room = 1, gaps = double.PositiveInfinity;
        double[] least = new double[3];
        foreach (Axis axis in Axes3.All)
        {
            (double grown, least[(int)axis]) = Grown(part, attitudes, axis);
            room *= Math.Max(0, grown);
        }

        foreach (Attitude a in attitudes)
            gaps = Math.Min(gaps, Axes3.All.Aggregate(1.0, (v, axis) => v * (a.Size(axis) + least[(int)axis])));
        return (int)Math.Floor((room / gaps) + 1e-9);
    }

    /// <summary>The part's length between its least clearances plus one least gap, and that gap: boxes grown by half of it fill it at best.</summary>
    private static (double Room, double Gap) Grown(Prism3 part, IReadOnlyList<Attitude> attitudes, Axis axis)
    {
        (double low, double high) = part.Extent(axis);
        int below = Attitude.Face(axis, false), above = Attitude.Face(axis, true);
        double gap = attitudes.Min(a => attitudes.Min(b => Math.Max(a.Want(above), b.Want(below))));
        return (high - low - attitudes.Min(a => a.Wall(below)) - attitudes.Min(a => a.Wall(above)) + gap, gap);
    }
}
