namespace PackPlanner.Core.Bench;

/// <summary>What a log of a cell or a string holds.</summary>
public sealed record CurveReading
{
    /// <summary>Charges and discharges in order, pulses left out.</summary>
    public required IReadOnlyList<TestStep> Steps { get; init; }

    /// <summary>Rests of a day or more, with the fall of their volts.</summary>
    public required IReadOnlyList<RestReading> Rests { get; init; }

    /// <summary>Resistances at every step of the current.</summary>
    public required IReadOnlyList<PulseReading> Pulses { get; init; }

    /// <summary>Leads or a contact in the voltage reading; null when nothing points to them.</summary>
    public LeadFinding? Leads { get; init; }

    /// <summary>Median current shown while no current flows, amperes, discharge positive; null without a rest.</summary>
    public double? RestOffsetA { get; init; }

    /// <summary>Rows that lack time, current or volts and were passed over.</summary>
    public required int RowsLost { get; init; }

    /// <summary>The source, as the user named it.</summary>
    public required string Source { get; init; }
}
