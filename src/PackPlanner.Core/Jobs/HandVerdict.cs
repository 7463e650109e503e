namespace PackPlanner.Core.Jobs;

/// <summary>The three verdicts as a user may set them.</summary>
public enum HandVerdict
{
    /// <summary>May be grouped.</summary>
    Use,

    /// <summary>Waits for a repeat or a decision.</summary>
    Hold,

    /// <summary>Is not used.</summary>
    Reject,
}
