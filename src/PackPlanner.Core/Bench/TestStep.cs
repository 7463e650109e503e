namespace PackPlanner.Core.Bench;

/// <summary>One charge or discharge found in a log.</summary>
public sealed record TestStep
{
    /// <summary>Charge or discharge.</summary>
    public required CurrentDirection Direction { get; init; }

    /// <summary>Seconds of its first row, as the log's clock has it.</summary>
    public double FromTimeS { get; init; }

    /// <summary>Seconds of its last row.</summary>
    public double ToTimeS { get; init; }

    /// <summary>Charge over the whole step, a constant-voltage tail included, ampere-hours, positive.</summary>
    public required double ChargeAh { get; init; }

    /// <summary>Energy over the whole step, watt-hours, positive.</summary>
    public required double EnergyWh { get; init; }

    /// <summary>Charge up to the first row at or below the cut-off; null for a charge, or where it was never reached.</summary>
    public double? ChargeToCutOffAh { get; init; }

    /// <summary>The cut-off that <see cref="ChargeToCutOffAh"/> means, volts; null where none is known.</summary>
    public double? CutOffV { get; init; }

    /// <summary>The volts at which it should have ended, as far as that is known: it was judged whole or broken off by them; null where they are not known.</summary>
    public double? LimitV { get; init; }

    /// <summary>Charge over time, amperes, positive.</summary>
    public required double MeanCurrentA { get; init; }

    /// <summary>Median current over its rows, amperes, positive: the rate of the test, without the tail.</summary>
    public required double UsualCurrentA { get; init; }

    /// <summary>Volts before the current came on, where the log shows them, else the first volts under current.</summary>
    public required double StartV { get; init; }

    /// <summary>Volts in the last row with current.</summary>
    public required double EndV { get; init; }

    /// <summary>How it ended.</summary>
    public required StepEnd EndedBy { get; init; }

    /// <summary>Mean temperature, degrees Celsius; null when not recorded.</summary>
    public double? MeanTemperatureDegC { get; init; }

    /// <summary>What the tester's own counter says, ampere-hours, positive; null when it has none.</summary>
    public double? CounterAh { get; init; }

    /// <summary>What the tester's own energy counter says, watt-hours, positive; null when it has none.</summary>
    public double? CounterWh { get; init; }

    /// <summary>The longest time between two rows inside it, seconds.</summary>
    public double LongestGapS { get; init; }

    /// <summary>Seconds of holes inside it for which no charge is counted, because nothing shows that the current went on.</summary>
    public double NotCountedS { get; init; }
}
