namespace PackPlanner.Core.Diagnosis;

/// <summary>
/// A pack's log as columns: one row a moment, one voltage column a series group. Millions of rows are ordinary.
/// </summary>
/// <remarks>A value that the log lost, or that physics rules out, is NaN in its column; its row stays.</remarks>
public sealed class RideLog
{
    /// <summary>Seconds since the first row, shape [rows], never falling.</summary>
    public required double[] TimeS { get; init; }

    /// <summary>Pack current, amperes, discharge positive, shape [rows]; null when the log has none.</summary>
    public required double[]? CurrentA { get; init; }

    /// <summary>Volts of each group, shape [groups][rows]; NaN where lost.</summary>
    public required double[][] GroupV { get; init; }

    /// <summary>Probe temperatures, degrees Celsius, shape [probes][rows]; empty when there are none.</summary>
    public double[][] TemperatureDegC { get; init; } = [];

    /// <summary>Volts of the whole pack as logged, shape [rows]; null when not logged.</summary>
    public double[]? PackV { get; init; }

    /// <summary>State of charge as the vehicle showed it, fraction, shape [rows]; null when not logged.</summary>
    public double[]? ShownStateOfCharge { get; init; }

    /// <summary>The current has no sign in this log: charge and discharge look alike.</summary>
    public bool CurrentIsUnsigned { get; init; }

    /// <summary>Each row is the average over the time since the row before, not a momentary reading.</summary>
    public bool RowsAreAverages { get; init; }

    /// <summary>The usual time between two rows, seconds.</summary>
    public double UsualStepS { get; init; }

    /// <summary>When the first row was written, local time as in the file; null when the file counts seconds only.</summary>
    public DateTime? Start { get; init; }

    /// <summary>The file or files that it came from, as the user named them.</summary>
    public required string Source { get; init; }

    /// <summary>Line of the file for each row, shape [rows]; null when rows were put together from several lines.</summary>
    public int[]? Line { get; init; }

    /// <summary>Rows.</summary>
    public int Rows => TimeS.Length;

    /// <summary>Series groups.</summary>
    public int Groups => GroupV.Length;

    /// <summary>The same log with other volts of its groups.</summary>
    /// <param name="groupV">Volts, shape [groups][rows].</param>
    internal RideLog WithGroupV(double[][] groupV) => new()
    {
        TimeS = TimeS,
        CurrentA = CurrentA,
        GroupV = groupV,
        TemperatureDegC = TemperatureDegC,
        PackV = PackV,
        ShownStateOfCharge = ShownStateOfCharge,
        CurrentIsUnsigned = CurrentIsUnsigned,
        RowsAreAverages = RowsAreAverages,
        UsualStepS = UsualStepS,
        Start = Start,
        Source = Source,
        Line = Line,
    };
}
