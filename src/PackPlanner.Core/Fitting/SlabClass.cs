namespace PackPlanner.Core.Fitting;

/// <summary>Attitudes of a box that are alike along one axis, so that cells in any of them share a slab one cell thick; all lengths in millimetres.</summary>
internal sealed record SlabClass(Axis Along, IReadOnlyList<Attitude> Attitudes)
{
    internal double Thickness => Attitudes[0].Size(Along);

    internal double WallBelow => Attitudes[0].Wall(Attitude.Face(Along, false));

    internal double WallAbove => Attitudes[0].Wall(Attitude.Face(Along, true));

    /// <summary>Gap from a slab of this class up to one of the other.</summary>
    internal double GapTo(SlabClass above) =>
        Math.Max(Attitudes[0].Want(Attitude.Face(Along, true)), above.Attitudes[0].Want(Attitude.Face(Along, false)));

    internal static List<SlabClass> Of(IReadOnlyList<Attitude> attitudes, Axis along)
    {
        int below = Attitude.Face(along, false), above = Attitude.Face(along, true);
        return [.. attitudes.GroupBy(a => (a.Size(along), a.Wall(below), a.Wall(above), a.Want(below), a.Want(above)))
            .Select(g => new SlabClass(along, [.. g]))];
    }
}
