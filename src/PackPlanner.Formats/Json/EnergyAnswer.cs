using System.Text.Json.Serialization;

namespace PackPlanner.Formats.Json;

/// <summary>What <c>energy --json</c> prints.</summary>
public sealed record EnergyAnswer : Answer
{
    /// <inheritdoc/>
    [JsonPropertyOrder(-100)]
    public override string Schema => "packplanner/energy";

    /// <summary>Groups x nominal volts x rated ampere-hours.</summary>
    public required double NominalWh { get; init; }

    /// <summary>Groups in series.</summary>
    public required int Series { get; init; }

    /// <summary>Nominal volts of a group.</summary>
    public required double NominalV { get; init; }

    /// <summary>Rated ampere-hours of a group; where none were given, the mean of the groups.</summary>
    public required double RatedAh { get; init; }

    /// <summary>Steps from nominal to usable; the known ones and <see cref="NominalWh"/> add up to <see cref="UsableWh"/>.</summary>
    public required IReadOnlyList<LossJson> Losses { get; init; }

    /// <summary>Watt-hours at the pack's terminals.</summary>
    public required double UsableWh { get; init; }

    /// <summary>Ampere-hours that go with them.</summary>
    public required double UsableAh { get; init; }

    /// <summary>Half the width of the 90 % range of the watt-hours.</summary>
    public required double SpreadWh { get; init; }

    /// <summary>The 90 % range itself.</summary>
    public required RangeJson UsableWhRange { get; init; }

    /// <summary>Ampere-hours at rest.</summary>
    public required double UsableAhAtRest { get; init; }

    /// <summary>Watt-hours at rest.</summary>
    public required double UsableWhAtRest { get; init; }

    /// <summary>Kilometres; null without a use for each kilometre.</summary>
    public required double? RangeKm { get; init; }

    /// <summary>Watt-hours for each kilometre; null when neither given nor computed.</summary>
    public required double? WhPerKm { get; init; }

    /// <summary>What ends it.</summary>
    public required EndsAtJson EndsAt { get; init; }

    /// <summary>Volts of the whole pack.</summary>
    public required VoltagesJson Voltages { get; init; }

    /// <summary>Heat while riding.</summary>
    public required HeatJson HeatW { get; init; }

    /// <summary>Largest power along the ride by volts alone; empty where no resistance is known.</summary>
    public required IReadOnlyList<PulsePowerJson> PulsePower { get; init; }

    /// <summary>Low estimate by DC resistance, amperes.</summary>
    public required double? ShortCircuitA { get; init; }

    /// <summary>First instant, amperes.</summary>
    public required double? ProspectiveShortCircuitA { get; init; }

    /// <summary>After every group has been brought to full.</summary>
    public required AfterJson AfterBalance { get; init; }

    /// <summary>After one, two … groups have been replaced by the median one, all balanced.</summary>
    public required IReadOnlyList<AfterReplacementJson> AfterReplacement { get; init; }

    /// <summary>What one change of each kind would give or take, the largest first.</summary>
    public required IReadOnlyList<LossJson> Sensitivity { get; init; }

    /// <summary>Charger settings; null without --charger.</summary>
    public required ChargerJson? Charger { get; init; }

    /// <summary>Fuse, cable and pre-charge to start a choice from, never the final one.</summary>
    public required StartingPointsJson StartingPoints { get; init; }

    /// <summary>Draws behind the spread; null where it was formed directly.</summary>
    public required int? Draws { get; init; }

    /// <summary>Cautions that could not be judged.</summary>
    public required IReadOnlyList<NotCheckedJson> NotChecked { get; init; }
}

/// <summary>One step or change.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Wh">Watt-hours, negative for a loss; null where the readings do not tell.</param>
public sealed record LossJson(string Name, double? Wh);

/// <summary>A range that holds the truth nine times in ten.</summary>
/// <param name="Low">Lower end.</param>
/// <param name="High">Upper end.</param>
public sealed record RangeJson(double Low, double High);

/// <summary>What ends the ride.</summary>
/// <param name="Group">The group with the least volts then.</param>
/// <param name="Reason">cell-cut-off or controller-low-voltage.</param>
/// <param name="PackV">Volts of the pack under load then.</param>
/// <param name="AfterHours">Hours of the load until then; null at rest.</param>
/// <param name="Alike">Groups that may be the one, within the noise of their readings, itself among them: above 1 it cannot be told which.</param>
/// <param name="AtOnce">True where the load ends it in the first instant: the pack cannot carry it, and its volts are those of the sum alone.</param>
public sealed record EndsAtJson(int Group, string Reason, double PackV, double? AfterHours, int Alike, bool AtOnce);

/// <summary>Volts of the whole pack.</summary>
/// <param name="Full">At the charge limit.</param>
/// <param name="Nominal">As on the label.</param>
/// <param name="Empty">With every group at its cut-off.</param>
/// <param name="MarginHigh">Controller's most volts less full; null when unknown.</param>
/// <param name="MarginLow">Empty less the controller's least volts; null when unknown.</param>
public sealed record VoltagesJson(double Full, double Nominal, double Empty, double? MarginHigh, double? MarginLow);

/// <summary>Heat while riding, watts.</summary>
/// <param name="Cells">All cells; null when unknown.</param>
/// <param name="Links">All links, joints and leads; null when unknown.</param>
/// <param name="PerCell">One cell; null when unknown.</param>
/// <param name="PerLink">One link; null when unknown.</param>
/// <param name="PerJoint">One joint of a cell; null when unknown.</param>
/// <param name="CellRiseKPerMinute">Kelvin that a cell warms each minute if no heat leaves it; null without its mass.</param>
/// <param name="Peak">At the largest current; null where none is given.</param>
public sealed record HeatJson(
    double? Cells, double? Links, double? PerCell, double? PerLink, double? PerJoint, RangeJson? CellRiseKPerMinute, PeakHeatJson? Peak);

/// <summary>Heat at the largest current, watts.</summary>
/// <param name="LoadA">The current, amperes.</param>
/// <param name="Seconds">How long it lasts; null when unknown.</param>
/// <param name="Cells">All cells; null when unknown.</param>
/// <param name="Links">All links, joints and leads; null when unknown.</param>
/// <param name="PerCell">One cell; null when unknown.</param>
/// <param name="PerLink">One link; null when unknown.</param>
/// <param name="PerJoint">One joint of a cell; null when unknown.</param>
/// <param name="CellRiseK">Kelvin that a cell warms in that time if no heat leaves it; null without its mass or the time.</param>
public sealed record PeakHeatJson(
    double LoadA, double? Seconds, double? Cells, double? Links, double? PerCell, double? PerLink, double? PerJoint, RangeJson? CellRiseK);

/// <summary>The most that the pack gives and takes back before a limit of volts.</summary>
/// <param name="LeftPercent">Part of the ride's charge that is left.</param>
/// <param name="GivesA">Amperes given.</param>
/// <param name="GivesW">Watts given.</param>
/// <param name="TakesA">Amperes taken back.</param>
/// <param name="TakesW">Watts taken back.</param>
public sealed record PulsePowerJson(double LeftPercent, double GivesA, double GivesW, double TakesA, double TakesW);

/// <summary>What balancing gives.</summary>
/// <param name="UsableAh">Ampere-hours then.</param>
/// <param name="UsableWh">Watt-hours then.</param>
/// <param name="NextBottleneck">The group that ends it then; null when the controller does.</param>
public sealed record AfterJson(double UsableAh, double UsableWh, int? NextBottleneck);

/// <summary>What replacing gives.</summary>
/// <param name="Groups">The groups replaced.</param>
/// <param name="UsableAh">Ampere-hours then.</param>
/// <param name="UsableWh">Watt-hours then.</param>
/// <param name="NextBottleneck">The group that ends it then; null when the controller does.</param>
public sealed record AfterReplacementJson(IReadOnlyList<int> Groups, double UsableAh, double UsableWh, int? NextBottleneck);

/// <summary>Charger settings, to be checked against the cells' data sheet.</summary>
/// <param name="SetV">Volts of the whole pack.</param>
/// <param name="CurrentA">Charging current.</param>
/// <param name="EndA">Current at which the charge is ended.</param>
/// <param name="Hours">About how long from empty, the tail at constant volts included.</param>
/// <param name="HighestA">Highest current at the temperature given; null when unknown.</param>
public sealed record ChargerJson(double SetV, double CurrentA, double EndA, double Hours, double? HighestA);

/// <summary>Figures to start a choice from: makers' data, local codes and a qualified person decide.</summary>
/// <param name="ContinuousA">The ride's effective current; null without a load.</param>
/// <param name="FuseLeastA">1.25 times the effective current; null without a load.</param>
/// <param name="FuseStandardA">The next standard rating; null above the largest.</param>
/// <param name="BreakingCapacityA">The fuse must break at least this; null when unknown.</param>
/// <param name="MustClearA">The fuse must still clear in time at this; null when unknown.</param>
/// <param name="CableMm2">The larger of the next two; null while the length or the load is unknown.</param>
/// <param name="CableByFuseMm2">Smallest flexible cable that carries the fuse's rating; null without a load.</param>
/// <param name="CableByDropMm2">Smallest flexible cable that loses at most 1 % of the nominal volts; null without a length, or where none does.</param>
/// <param name="CableDropV">Volts that the cable loses there and back; null when unknown.</param>
/// <param name="PreChargeOhm">Largest resistor for 99 % within half a second; null without a capacitance.</param>
/// <param name="PreChargePeakA">Current through it at first; null likewise.</param>
/// <param name="PreChargeJ">Energy that it takes each time, joules; null likewise.</param>
/// <param name="Basis">Where each figure comes from, or what to say so that it can be told.</param>
public sealed record StartingPointsJson(
    double? ContinuousA, double? FuseLeastA, double? FuseStandardA, double? BreakingCapacityA, double? MustClearA,
    double? CableMm2, double? CableByFuseMm2, double? CableByDropMm2, double? CableDropV,
    double? PreChargeOhm, double? PreChargePeakA, double? PreChargeJ, IReadOnlyList<BasisJson> Basis);

/// <summary>Where a figure comes from.</summary>
/// <param name="Figure">Its key.</param>
/// <param name="Name">What it is, in words.</param>
/// <param name="Value">The figure; null when it cannot be told.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="From">The rule and its inputs, or what is missing.</param>
public sealed record BasisJson(string Figure, string Name, double? Value, string Unit, string From);

/// <summary>A caution that could not be judged.</summary>
/// <param name="Code">Its code.</param>
/// <param name="Why">Which reading is missing.</param>
public sealed record NotCheckedJson(string Code, string Why);

/// <summary>Source-generated description.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(EnergyAnswer))]
public sealed partial class EnergyAnswerContext : JsonSerializerContext;
