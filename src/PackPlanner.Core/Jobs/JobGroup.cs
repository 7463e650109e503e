using System.Collections.Immutable;
using PackPlanner.Core.Packs;
using PackPlanner.Core.Screening;

namespace PackPlanner.Core.Jobs;

/// <summary>A parallel group of a job: its cells as they were judged.</summary>
/// <param name="Number">From 1, in series order from pack minus.</param>
/// <param name="Cells">In the order of their labels.</param>
public sealed record JobGroup(int Number, IReadOnlyList<ScreenedCell> Cells)
{
    /// <summary>Sum of the capacities, ampere-hours; null when one is unknown.</summary>
    public double? CapacityAh => Cells.All(cell => cell.CapacityAh is not null) ? Cells.Sum(cell => cell.CapacityAh!.Value) : null;

    /// <summary>All cells in parallel, milliohm; null when one is unknown.</summary>
    public double? ResistanceMilliohm => ParallelResistance.Of(Cells, cell => cell.ResistanceMilliohm);

    /// <summary>
    /// Volts, by label, of the cells that are charged or discharged alone before they are joined: these count, not what was read. Planned when they are
    /// first asked for: of ten thousand cells that takes a second, and most screens never ask.
    /// </summary>
    public Lazy<IReadOnlyDictionary<string, double>> BroughtToV { get; init; } = new(ImmutableDictionary<string, double>.Empty);

    /// <summary>Resting volts of the group once joined: the cells' mean, by conductance where all are known; null when a reading is missing.</summary>
    /// <remarks>Source: [Kirchhoff]: sources behind resistances in parallel settle at the mean weighted by 1/R.</remarks>
    public double? RestV => Cells.Any(cell => cell.RestV is null) ? null
        : ResistanceMilliohm is { } milliohm ? Cells.Sum(cell => JoinedAtV(cell) / cell.ResistanceMilliohm!.Value) * milliohm
        : Cells.Average(JoinedAtV);

    private double JoinedAtV(ScreenedCell cell) => BroughtToV.Value.TryGetValue(cell.Label, out double volts) ? volts : cell.RestV!.Value;
}
