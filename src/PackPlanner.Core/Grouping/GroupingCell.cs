namespace PackPlanner.Core.Grouping;

/// <summary>A cell that may be grouped: what the matcher needs to know of it.</summary>
/// <param name="Label">Unique within the lot.</param>
/// <param name="CapacityAh">Ampere-hours as read, above zero.</param>
/// <param name="ResistanceMilliohm">DC resistance where known, above zero; null when unknown.</param>
public sealed record GroupingCell(string Label, double CapacityAh, double? ResistanceMilliohm)
{
    /// <summary>Resting volts where known.</summary>
    public double? RestV { get; init; }

    /// <summary>Batch or origin where the table has one.</summary>
    public string? Batch { get; init; }

    /// <summary>Maker's model where the table has one.</summary>
    public string? Model { get; init; }
}
