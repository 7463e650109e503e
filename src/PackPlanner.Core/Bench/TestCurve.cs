namespace PackPlanner.Core.Bench;

/// <summary>What a tester recorded of one cell, or of a series string, over time.</summary>
/// <remarks>Lost values are NaN. Formats has turned the current round so that discharge is positive.</remarks>
public sealed class TestCurve
{
    /// <summary>Seconds since the first row, shape [rows], never falling.</summary>
    public required double[] TimeS { get; init; }

    /// <summary>Amperes, discharge positive, shape [rows].</summary>
    public required double[] CurrentA { get; init; }

    /// <summary>Volts at the tester's sense leads, shape [rows].</summary>
    public required double[] Volts { get; init; }

    /// <summary>Degrees Celsius, shape [rows]; null when not recorded.</summary>
    public double[]? TemperatureDegC { get; init; }

    /// <summary>The tester's own charge counter, ampere-hours, shape [rows]; null when not recorded.</summary>
    public double[]? CounterAh { get; init; }

    /// <summary>The tester's own energy counter, watt-hours, shape [rows]; null when not recorded.</summary>
    public double[]? CounterWh { get; init; }

    /// <summary>The tester's step number, shape [rows]; null when not recorded.</summary>
    public int[]? Step { get; init; }

    /// <summary>The file, as the user named it.</summary>
    public required string Source { get; init; }
}
