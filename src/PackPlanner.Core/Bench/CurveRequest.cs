using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Bench;

/// <summary>What the user says about a log of a cell or a string.</summary>
public sealed record CurveRequest
{
    /// <summary>Voltage at which a discharge is to end, of what the log's volts show (a cell or the whole string); null when not stated.</summary>
    public double? CutOffV { get; init; }

    /// <summary>Chemistry; null when not stated.</summary>
    public Chemistry? Chemistry { get; init; }

    /// <summary>Cells in series in what the log shows; null when not stated.</summary>
    public int? Series { get; init; }

    /// <summary>True to take the current shown at rest off every reading.</summary>
    public bool CorrectOffset { get; init; }

    /// <summary>True where the log has only the first and the last moment of each step, so that the tester's counter alone knows its charge.</summary>
    public bool IsStepTable { get; init; }
}
