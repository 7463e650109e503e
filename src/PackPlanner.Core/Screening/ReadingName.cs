namespace PackPlanner.Core.Screening;

/// <summary>A reading that a verdict can rest on.</summary>
public enum ReadingName
{
    /// <summary>Charge delivered in a whole test, Ah.</summary>
    Capacity,

    /// <summary>Internal resistance, milliohm.</summary>
    Resistance,

    /// <summary>Volts at rest.</summary>
    RestVoltage,

    /// <summary>Charge lost at rest: percent a month where it can be told, else millivolts a day.</summary>
    SelfDischarge,

    /// <summary>What was seen by eye.</summary>
    Condition,

    /// <summary>The chemistry.</summary>
    Chemistry,
}
