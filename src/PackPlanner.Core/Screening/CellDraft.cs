using PackPlanner.Core.Bench;
using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Screening;

/// <summary>One cell with its rows combined, before it is held against any limit.</summary>
internal sealed record CellDraft
{
    internal required string Label { get; init; }

    internal required IReadOnlyList<CellRow> Rows { get; init; }

    /// <summary>Rows that are whole capacity tests, copies of one test counted once.</summary>
    internal required IReadOnlyList<CellRow> Tests { get; init; }

    /// <summary>A test that was broken off, where there is no whole one.</summary>
    internal CellRow? Aborted { get; init; }

    /// <summary>Cut-off that the aborted test should have reached, volts.</summary>
    internal double? AbortedCutoffV { get; init; }

    internal double? CapacityAh { get; init; }

    internal double? ResistanceMilliohm { get; init; }

    internal ResistanceKind ResistanceKind { get; init; }

    internal double? ResistanceAfterS { get; init; }

    internal double? AcResistanceMilliohm { get; init; }

    internal int ResistanceReadings { get; init; }

    internal double? RestV { get; init; }

    /// <summary>Every resting voltage of the cell, the latest included.</summary>
    internal required IReadOnlyList<double> AllRestV { get; init; }

    internal SelfDischarge? SelfDischarge { get; init; }

    internal string? Model { get; init; }

    internal double? RatedAh { get; init; }

    internal Chemistry? Chemistry { get; init; }

    /// <summary>Chemistry as the table writes it, where that is not a name we know.</summary>
    internal string? UnknownChemistry { get; init; }

    internal IReadOnlyList<string> Damage { get; init; } = [];

    /// <summary>Words on its condition that were not understood.</summary>
    internal string? UnreadCondition { get; init; }

    internal bool HasCondition { get; init; }
}
