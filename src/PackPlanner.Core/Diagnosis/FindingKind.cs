namespace PackPlanner.Core.Diagnosis;

/// <summary>What can be wrong with a series group, or with what the log says of it.</summary>
public enum FindingKind
{
    /// <summary>Holds less than the others: aged, or a parallel cell is dead.</summary>
    LowCapacity,

    /// <summary>Stands at another state of charge than the others; its capacity may be sound.</summary>
    Imbalance,

    /// <summary>The cells, or welds inside the group, resist more than the others'.</summary>
    HighResistance,

    /// <summary>A joint, bar or tap joint adds plain resistance.</summary>
    Connection,

    /// <summary>Loses charge while the pack stands.</summary>
    SelfDischarge,

    /// <summary>Its sense wire reads wrong.</summary>
    Sensor,

    /// <summary>The log does not determine capacities; said of all groups or of none.</summary>
    CannotTell,
}
