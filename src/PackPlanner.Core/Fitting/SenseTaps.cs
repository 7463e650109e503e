namespace PackPlanner.Core.Fitting;

/// <summary>Where the sense leads go and what a meter must show there.</summary>
internal static class SenseTaps
{
    internal static IReadOnlyList<SenseTap> Of(IReadOnlyList<PlacedGroup> groups, FitCase fitCase)
    {
        if (groups.Count == 0)
            return [];
        List<SenseTap> taps = [new SenseTap(0, 1, "minus", fitCase.NominalV * 0, fitCase.FullV * 0, groups[0].Centre)];
        foreach (PlacedGroup group in groups)
        {
            // The plate of tap k joins the plus poles of group k to the minus poles of the next.
            PointMm at = group.Group < groups.Count ? AnswerBuilder.Mean([group.Centre, groups[group.Group].Centre]) : group.Centre;
            taps.Add(new SenseTap(group.Group, group.Group, "plus", fitCase.NominalV * group.Group, fitCase.FullV * group.Group, at));
        }

        return taps;
    }
}
