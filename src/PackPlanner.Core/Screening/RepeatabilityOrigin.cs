namespace PackPlanner.Core.Screening;

/// <summary>How a repeatability is known.</summary>
public enum RepeatabilityOrigin
{
    /// <summary>The user stated it.</summary>
    Given,

    /// <summary>Pooled from the cells that were tested more than once.</summary>
    Repeats,

    /// <summary>Nobody knows; our assumption.</summary>
    Assumed,
}
