namespace PackPlanner.Core.UsableEnergy;

/// <summary>From what the label says to what a ride gets, with every step named.</summary>
public sealed record EnergyBudget
{
    /// <summary>Groups x nominal volts x rated ampere-hours.</summary>
    public required double NominalWh { get; init; }

    /// <summary>Steps from nominal to usable: with <see cref="NominalWh"/> the known ones add up to <see cref="UsableWh"/>.</summary>
    public required IReadOnlyList<LossStep> Losses { get; init; }

    /// <summary>Watt-hours at the pack's terminals.</summary>
    public required double UsableWh { get; init; }

    /// <summary>Ampere-hours that go with them.</summary>
    public required double UsableAh { get; init; }

    /// <summary>Half the width of the 90 % range of <see cref="UsableWh"/>, and its ends.</summary>
    public required UsableSpread Spread { get; init; }

    /// <summary>Ampere-hours between the first full and the first empty group without a load, warm, nothing kept back.</summary>
    public required double UsableAhAtRest { get; init; }

    /// <summary>Watt-hours that go with them.</summary>
    public required double UsableWhAtRest { get; init; }

    /// <summary>Number of the group that ends it, or that stands lowest when the controller does.</summary>
    public required int EndsAtGroup { get; init; }

    /// <summary>True when the controller's low-voltage limit ends it before a cell does.</summary>
    public required bool EndedByController { get; init; }

    /// <summary>Volts of the pack under load when it ends; below zero where the load is more than a short circuit would draw, see <see cref="EndsAtOnce"/>.</summary>
    public required double EndPackV { get; init; }

    /// <summary>True where the load ends it in the first instant, though charge is left: the pack cannot carry it.</summary>
    public required bool EndsAtOnce { get; init; }

    /// <summary>Root mean square of the current, amperes; 0 at rest.</summary>
    public required double EffectiveA { get; init; }

    /// <summary>Hours until it ends; 0 at rest.</summary>
    public required double Hours { get; init; }

    /// <summary>The same ride after every group has been brought to full.</summary>
    public required UsableAfter AfterBalance { get; init; }

    /// <summary>The same ride with one, two … weakest groups replaced by the median one, all balanced.</summary>
    public required IReadOnlyList<UsableAfter> AfterReplacement { get; init; }

    /// <summary>What one change of each kind would give or take.</summary>
    public required IReadOnlyList<LossStep> Sensitivity { get; init; }

    /// <summary>Largest power along the ride; empty where no resistance is known.</summary>
    public required IReadOnlyList<PulsePower> PulsePowers { get; init; }

    /// <summary>Heat while riding; null parts where a resistance or the load is unknown.</summary>
    public required HeatParts Heat { get; init; }
}

/// <summary>One step of the list, or one change tried.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Wh">Watt-hours, negative for a loss; null where the readings do not tell.</param>
public sealed record LossStep(string Name, double? Wh);

/// <summary>What a remedy would give.</summary>
/// <param name="Groups">Numbers of the groups replaced; empty for balancing alone.</param>
/// <param name="UsableAh">Ampere-hours then.</param>
/// <param name="UsableWh">Watt-hours then.</param>
/// <param name="NextBottleneck">Number of the group that ends it then; null when the controller does.</param>
public sealed record UsableAfter(IReadOnlyList<int> Groups, double UsableAh, double UsableWh, int? NextBottleneck);

/// <summary>How well the usable energy is known from how well the readings repeat.</summary>
/// <param name="HalfWidthWh">Half the width of the 90 % range.</param>
/// <param name="LowWh">5 % of the truth lies below.</param>
/// <param name="HighWh">5 % of the truth lies above.</param>
/// <param name="EndAlike">Groups that may be the one that ends it, by the same readings; itself among them, so above 1 it cannot be told which.</param>
public sealed record UsableSpread(double HalfWidthWh, double LowWh, double HighWh, int EndAlike);
