using System.Text.Json.Serialization;

namespace PackPlanner.Formats.Json;

/// <summary>What <c>diagnose --json</c> prints.</summary>
public sealed record DiagnoseAnswer : Answer
{
    /// <inheritdoc/>
    public override string Schema => "packplanner/diagnose";

    /// <summary>Each group.</summary>
    public required IReadOnlyList<DiagnosedGroupJson> Groups { get; init; }

    /// <summary>Usable charge now and after repairs.</summary>
    public required RecoveryJson? Recovery { get; init; }

    /// <summary>What could be done.</summary>
    public required IReadOnlyList<RemedyJson> Remedies { get; init; }

    /// <summary>What happened.</summary>
    public required IReadOnlyList<RideEventJson> Events { get; init; }

    /// <summary>What the cold took; null without temperatures.</summary>
    public required ColdJson? Cold { get; init; }

    /// <summary>Whether capacities can be told from this log.</summary>
    public required bool CapacityTold { get; init; }

    /// <summary>What the log does not reach; null when they can.</summary>
    public required string? CannotTellBecause { get; init; }

    /// <summary>The log that the figures come from, where several were given.</summary>
    public required string Log { get; init; }
}

/// <summary>A figure with its 90 % range.</summary>
/// <param name="Value">Best value.</param>
/// <param name="Low">Lower end.</param>
/// <param name="High">Upper end.</param>
public sealed record RangedJson(double Value, double Low, double High);

/// <summary>One group.</summary>
/// <param name="Group">From 1.</param>
/// <param name="CapacityAh">Null only where the log holds no figure.</param>
/// <param name="StateOfChargeOffset">Against the median group at the first row.</param>
/// <param name="ResistanceMilliohm">After one second, near half charge.</param>
/// <param name="CapacityShare">Capacity over the median group's.</param>
/// <param name="StateOfCharge">At the first row.</param>
/// <param name="LeakMilliamp">Beyond the median group; null in a short log.</param>
/// <param name="TapMillivolt">What its readings are too high by.</param>
/// <param name="Findings">Names.</param>
/// <param name="FindingDetails">One for each name.</param>
public sealed record DiagnosedGroupJson(
    int Group, RangedJson? CapacityAh, RangedJson? StateOfChargeOffset, RangedJson? ResistanceMilliohm, RangedJson? CapacityShare,
    double? StateOfCharge, double? LeakMilliamp, double TapMillivolt, IReadOnlyList<string> Findings, IReadOnlyList<FindingDetailJson> FindingDetails);

/// <summary>One finding.</summary>
/// <param name="Finding">Name.</param>
/// <param name="Evidence">Grounds.</param>
/// <param name="Sure">high, medium or low.</param>
/// <param name="SettleBy">The measurement that would settle it.</param>
public sealed record FindingDetailJson(string Finding, IReadOnlyList<string> Evidence, string Sure, string SettleBy);

/// <summary>Usable charge.</summary>
/// <param name="UsableAhNow">Between resting windows.</param>
/// <param name="UsableAhAfterBalance">All groups full.</param>
/// <param name="UsableAhAfterReplacement">The smallest replaced, all balanced.</param>
/// <param name="ReplacedGroup">Which one.</param>
/// <param name="NextBottleneck">The group that limits then.</param>
/// <param name="LimitingGroup">The group that empties first now.</param>
/// <param name="Loaded">The same at the log's mean current down to the loaded cut-off.</param>
public sealed record RecoveryJson(
    double UsableAhNow, double UsableAhAfterBalance, double UsableAhAfterReplacement, int ReplacedGroup, int NextBottleneck, int LimitingGroup, LoadedRecoveryJson? Loaded);

/// <summary>Usable charge and energy under load.</summary>
/// <param name="CurrentA">Steady current supposed.</param>
/// <param name="UsableAhNow">As the groups stand.</param>
/// <param name="UsableWhNow">Energy of that.</param>
/// <param name="UsableAhAfterBalance">All groups full.</param>
/// <param name="UsableAhAfterReplacement">The group that ends the ride replaced, all balanced.</param>
/// <param name="RangeKmNow">Kilometres on the energy now at the owner's use; null when the use is not known.</param>
public sealed record LoadedRecoveryJson(
    double CurrentA, double UsableAhNow, double UsableWhNow, double UsableAhAfterBalance, double UsableAhAfterReplacement, double? RangeKmNow);

/// <summary>One remedy.</summary>
/// <param name="Do">What to do.</param>
/// <param name="UsableAh">Afterwards, under load.</param>
/// <param name="UsableWh">Energy of that.</param>
/// <param name="GainPercent">Of now.</param>
/// <param name="NextBottleneck">The group that ends the ride then.</param>
/// <param name="RangeKm">Kilometres on that energy at the owner's use; null when the use is not known.</param>
public sealed record RemedyJson(string Do, double UsableAh, double UsableWh, double GainPercent, int NextBottleneck, double? RangeKm);

/// <summary>One event.</summary>
/// <param name="AtTimeS">Seconds since the first row.</param>
/// <param name="What">Kind.</param>
/// <param name="Group">From 1; null for the pack.</param>
/// <param name="VoltageV">Of that group.</param>
/// <param name="CurrentA">Discharge positive.</param>
/// <param name="Says">In words.</param>
/// <param name="Log">The log.</param>
public sealed record RideEventJson(double AtTimeS, string What, int? Group, double? VoltageV, double? CurrentA, string Says, string Log);

/// <summary>What the cold took.</summary>
/// <param name="LossPercent">Of usable charge, expected back in the warmth.</param>
/// <param name="MeanDegC">Mean temperature.</param>
public sealed record ColdJson(double LossPercent, double MeanDegC);

/// <summary>Source-generated description.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(DiagnoseAnswer))]
public sealed partial class DiagnoseAnswerContext : JsonSerializerContext;
