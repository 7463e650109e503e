namespace PackPlanner.Core.Bench;

/// <summary>Which way the current flows.</summary>
public enum CurrentDirection
{
    /// <summary>No current but the sensor's own offset.</summary>
    Rest,

    /// <summary>Into the cell.</summary>
    Charge,

    /// <summary>Out of the cell.</summary>
    Discharge,
}
