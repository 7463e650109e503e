namespace PackPlanner.Formats.Pictures;

/// <summary>The pictures that can be drawn of a job.</summary>
public static class PictureCatalogue
{
    /// <summary>All, in the order of the work.</summary>
    public static IReadOnlyList<Picture> All { get; } =
    [
        new("lot", "spread of the lot: capacity, resistance, verdict", LotPicture.WhyNot, LotPicture.Draw),
        new("groups", "Ah of the groups, with the band of the tester's own noise", GroupsPicture.WhyNot, GroupsPicture.Draw),
        new("layout", "where each group stands, layer by layer", LayoutPicture.WhyNot, LayoutPicture.Draw),
        new("volts", "volts of the groups over the latest log", VoltsPicture.WhyNot, VoltsPicture.Draw),
        new("apart", "groups that stand out less the middle group", ApartPicture.WhyNot, ApartPicture.Draw),
        new("rest", "how the groups stand at rest", RestPicture.WhyNot, RestPicture.Draw),
        new("drop", "what each group loses under load", DropPicture.WhyNot, DropPicture.Draw),
        new("losses", "from the label to usable Wh, step by step", LossesPicture.WhyNot, LossesPicture.Draw),
        new("remedies", "what each remedy would give back", RemediesPicture.WhyNot, RemediesPicture.Draw),
    ];
}
