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

    /// <summary>Largest difference between two of its tests as a fraction of their mean; 0 with one test.</summary>
    internal double RepeatsDifferFraction => Tests.Count < 2 ? 0
        : (Tests.Max(row => row.CapacityAh!.Value) - Tests.Min(row => row.CapacityAh!.Value)) / CapacityAh!.Value;

    /// <summary>Tests of one cell that differ by more than this are no repeats of one thing: testers repeat to 1 to 2 %. Our choice.</summary>
    internal const double MostRepeatsDiffer = 0.1;

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
