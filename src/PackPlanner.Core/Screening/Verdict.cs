namespace PackPlanner.Core.Screening;

/// <summary>What to do with a cell, mildest first.</summary>
public enum Verdict
{
    /// <summary>It may go into a group.</summary>
    Use,

    /// <summary>Not yet: repeat a test, look at it again, or ask somebody.</summary>
    Hold,

    /// <summary>It does not go into this pack.</summary>
    Reject,
}
