namespace PackPlanner.Core.Fitting;

/// <summary>How many boxes can fit at most, by their area or volume with their gaps.</summary>
internal static class BoxBound
{
    internal static (int? Bound, string Method) Of(Scene scene, IReadOnlyList<Attitude> attitudes)
    {
        return (null, "none yet");
    }
}
