namespace PackPlanner.Core.Fitting;

/// <summary>One of the three directions of the vehicle: x forward, y to the left, z up (right-handed).</summary>
public enum Axis
{
    /// <summary>Forward.</summary>
    X = 0,

    /// <summary>To the left.</summary>
    Y = 1,

    /// <summary>Up.</summary>
    Z = 2,
}
