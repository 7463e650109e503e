namespace PackPlanner.Core.Jobs;

/// <summary>A column of a cell that can be changed or filled in by hand.</summary>
public enum CellField
{
    /// <summary>Measured charge, ampere-hours.</summary>
    CapacityAh,

    /// <summary>Resistance, milliohm.</summary>
    ResistanceMilliohm,

    /// <summary>Resting volts at the test.</summary>
    RestV,

    /// <summary>Day of the resting volts.</summary>
    Date,

    /// <summary>Fresh resting volts, such as those of assembly day.</summary>
    LaterRestV,

    /// <summary>Day of the fresh resting volts.</summary>
    LaterDate,

    /// <summary>Rated charge when new, ampere-hours.</summary>
    RatedAh,

    /// <summary>Tester slot.</summary>
    Slot,

    /// <summary>Where the cell lies.</summary>
    Tray,

    /// <summary>Maker's model.</summary>
    Model,

    /// <summary>Batch or origin.</summary>
    Batch,

    /// <summary>Seen by eye: swollen, dented, leaking, smell, rust, torn wrap.</summary>
    Condition,

    /// <summary>Mass, grams.</summary>
    MassG,

    /// <summary>Temperature of the test, degrees Celsius.</summary>
    TemperatureDegC,
}
