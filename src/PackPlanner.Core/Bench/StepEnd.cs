namespace PackPlanner.Core.Bench;

/// <summary>How a charge or discharge ended.</summary>
public enum StepEnd
{
    /// <summary>Nothing tells.</summary>
    Unknown,

    /// <summary>At its voltage limit, under full current.</summary>
    CutOff,

    /// <summary>At its voltage limit, held there while the current fell.</summary>
    CurrentTaper,

    /// <summary>Before its voltage limit: broken off, so its charge is no capacity.</summary>
    Aborted,
}
