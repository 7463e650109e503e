namespace PackPlanner.Core.Cells;

/// <summary>
/// One row of a per-cell table: what one test of one cell gave. A cell that was tested twice has two rows, and they
/// are kept apart, because the difference between them tells how well the tester repeats.
/// </summary>
/// <remarks>
/// Every figure is null where the table is silent. Lots have at most some hundred thousand rows, so a record a row
/// is affordable here; logs, which have millions, are columns (see <see cref="Diagnosis.RideLog"/>).
/// </remarks>
public sealed record CellRow
{
    /// <summary>What is written on the cell, as in the file, outer spaces removed.</summary>
    public required string Label { get; init; }

    /// <summary>The file that the row came from; null when typed by hand.</summary>
    public string? File { get; init; }

    /// <summary>Line of the file, counted from 1; null when typed by hand.</summary>
    public int? Line { get; init; }

    /// <summary>Charge delivered in the test, ampere-hours.</summary>
    public double? CapacityAh { get; init; }

    /// <summary>The smallest step in which the table writes capacities, ampere-hours (0.001 for whole mAh).</summary>
    public double? CapacityStepAh { get; init; }

    /// <summary>Discharge current of the capacity test, amperes, positive.</summary>
    public double? TestCurrentA { get; init; }

    /// <summary>Voltage at which the capacity test was to end, volts.</summary>
    public double? TestCutoffV { get; init; }

    /// <summary>Voltage at which the capacity test did end, volts; above the cut-off it was aborted.</summary>
    public double? TestEndV { get; init; }

    /// <summary>Capacity of the cell when new, ampere-hours.</summary>
    public double? RatedAh { get; init; }

    /// <summary>Internal resistance, milliohm.</summary>
    public double? ResistanceMilliohm { get; init; }

    /// <summary>Which quantity <see cref="ResistanceMilliohm"/> is.</summary>
    public ResistanceKind ResistanceKind { get; init; }

    /// <summary>Seconds between the current step and the reading of a DC resistance.</summary>
    public double? ResistanceAfterS { get; init; }

    /// <summary>A second resistance column where the table has both: the 1 kHz figure, milliohm.</summary>
    public double? AcResistanceMilliohm { get; init; }

    /// <summary>Resting volts.</summary>
    public double? RestV { get; init; }

    /// <summary>When the resting volts, or the whole row, were read; local time as written.</summary>
    public DateTime? Date { get; init; }

    /// <summary>Fall of the resting volts as the table itself states it, millivolts a day, positive when falling.</summary>
    public double? SelfDischargeMillivoltPerDay { get; init; }

    /// <summary>A second, later resting reading of the same cell, volts.</summary>
    public double? LaterRestV { get; init; }

    /// <summary>Date of <see cref="LaterRestV"/>.</summary>
    public DateTime? LaterDate { get; init; }

    /// <summary>Cell or room temperature of the test, degrees Celsius.</summary>
    public double? TemperatureDegC { get; init; }

    /// <summary>Mass, grams.</summary>
    public double? MassG { get; init; }

    /// <summary>Tester slot or channel.</summary>
    public string? Slot { get; init; }

    /// <summary>Where the cell lies, so that it can be found again.</summary>
    public string? Tray { get; init; }

    /// <summary>Maker's model.</summary>
    public string? Model { get; init; }

    /// <summary>Batch or origin, where the table has one.</summary>
    public string? Batch { get; init; }

    /// <summary>Chemistry as written in the table; compare by <see cref="Chemistries.Find"/>.</summary>
    public string? Chemistry { get; init; }

    /// <summary>What was seen by eye, as written: swollen, dented, leaking, smell, rust, torn wrap.</summary>
    public string? Condition { get; init; }

    /// <summary>Words found where a figure was expected (dead, n/a), kept so that nothing is lost.</summary>
    public string? Remark { get; init; }

    /// <summary>Group number from 1, where the table is a grouping or a table of groups.</summary>
    public int? Group { get; init; }

    /// <summary>State of charge as a fraction, where the table has one; negative where the table gives offsets against the other groups.</summary>
    public double? StateOfChargeFraction { get; init; }

    /// <summary>Charge against the other groups, ampere-hours, negative for one that is less full; null where the table has none.</summary>
    public double? ChargeOffsetAh { get; init; }
}
