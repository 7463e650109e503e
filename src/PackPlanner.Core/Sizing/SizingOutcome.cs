namespace PackPlanner.Core.Sizing;

/// <summary>What sizing found. Closed: these two cases are all there are.</summary>
public abstract record SizingOutcome
{
    private SizingOutcome()
    {
    }

    /// <summary>Choices that no other beats, the proposed one first.</summary>
    /// <param name="Options">At least one.</param>
    public sealed record Choices(IReadOnlyList<PackChoice> Options) : SizingOutcome;

    /// <summary>No S serves.</summary>
    /// <param name="Reasons">Which two limits contradict each other, one sentence each.</param>
    public sealed record None(IReadOnlyList<SizingReason> Reasons) : SizingOutcome;
}
