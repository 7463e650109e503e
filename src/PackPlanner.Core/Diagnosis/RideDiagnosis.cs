using PackPlanner.Core.Cautions;
using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Diagnosis;

/// <summary>What a log says of a pack.</summary>
public sealed record RideDiagnosis
{
    /// <summary>One entry for each series group, in the log's own order.</summary>
    public required IReadOnlyList<GroupDiagnosis> Groups { get; init; }

    /// <summary>Resistance of the median group, which a joint or a worn group stands above; null when none is known.</summary>
    public double? MedianMilliohm => Robust.MedianOrNull(Groups.Select(group => group.ResistanceMilliohm?.Value).OfType<double>());

    /// <summary>Capacities can be told from this log.</summary>
    public required bool CapacityTold { get; init; }

    /// <summary>What the log does not reach, when they cannot.</summary>
    public string? WhyNot { get; init; }

    /// <summary>Usable charge now and after repairs, resting windows; null when there is no charge count.</summary>
    public Recovery? Recovery { get; init; }

    /// <summary>The same under the log's mean current.</summary>
    public LoadedRecovery? Loaded { get; init; }

    /// <summary>What could be done, and what it would give back.</summary>
    public required IReadOnlyList<Remedy> Remedies { get; init; }

    /// <summary>What happened in the log.</summary>
    public required IReadOnlyList<RideEvent> Events { get; init; }

    /// <summary>How much of the usable charge the cold took; null without temperatures.</summary>
    public ColdLoss? Cold { get; init; }

    /// <summary>Energy drawn less energy put back by braking while the pack was ridden, watt-hours.</summary>
    public double? DeliveredWh { get; init; }

    /// <summary>Cautions raised by what the log shows.</summary>
    public required IReadOnlyList<Caution> Cautions { get; init; }

    /// <summary>What was understood and supposed, a sentence each.</summary>
    public required IReadOnlyList<string> Notes { get; init; }
}
