using System.Text.Json.Serialization;

namespace PackPlanner.Formats.Json;

/// <summary>What <c>cells --json</c> prints.</summary>
public sealed record CellsAnswer : Answer
{
    /// <inheritdoc/>
    public override string Schema => "packplanner/cells";

    /// <summary>One entry per label, in the order of the files.</summary>
    public required IReadOnlyList<CellVerdictJson> Cells { get; init; }

    /// <summary>Cells per verdict.</summary>
    public required VerdictCountsJson Counts { get; init; }

    /// <summary>Medians over all cells with a usable value, before any verdict.</summary>
    public required LotMediansJson Lot { get; init; }

    /// <summary>One standard deviation of repeating a capacity test, as a fraction of the capacity.</summary>
    public required double Repeatability { get; init; }

    /// <summary>given, repeats or assumed.</summary>
    public required string RepeatabilityFrom { get; init; }

    /// <summary>Degrees of freedom of the repeats in these files.</summary>
    public required int RepeatabilityDegreesOfFreedom { get; init; }

    /// <summary>The same figure as these files' own repeats give it, also where they are too few to be used.</summary>
    public required double? RepeatabilityOfRepeats { get; init; }

    /// <summary>Tester slots.</summary>
    public required IReadOnlyList<SlotJson> Slots { get; init; }

    /// <summary>The models met, each with its own median and limit.</summary>
    public required IReadOnlyList<ModelLotJson> Models { get; init; }

    /// <summary>The chemistry that was judged by; null when unknown.</summary>
    public required string? Chemistry { get; init; }

    /// <summary>What still has to be tested for --series times --parallel; null when these are not given.</summary>
    public required StillToTestJson? StillToTest { get; init; }

    /// <summary>Rejected and held cells together: how many, Ah and Wh to store.</summary>
    public required IReadOnlyList<SetApartJson> SetApart { get; init; }

    /// <summary>Where the number asked for with --why comes from; left out when none was asked for.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<string>? Why { get; init; }
}

/// <summary>One cell.</summary>
public sealed record CellVerdictJson
{
    /// <summary>What is written on it.</summary>
    public required string Cell { get; init; }

    /// <summary>use, hold or reject.</summary>
    public required string Verdict { get; init; }

    /// <summary>Why, gravest first.</summary>
    public required IReadOnlyList<VerdictReasonJson> Reasons { get; init; }

    /// <summary>Mean of its whole tests as read, Ah.</summary>
    public required double? CapacityAh { get; init; }

    /// <summary>One standard deviation of it, Ah.</summary>
    public required double? CapacitySpreadAh { get; init; }

    /// <summary>The same with the slots' offsets taken off, Ah.</summary>
    public required double? CapacityCorrectedAh { get; init; }

    /// <summary>Capacity over rated capacity, percent, at the test's own rate.</summary>
    public required double? HealthPercent { get; init; }

    /// <summary>Whole tests of it.</summary>
    public required int CapacityTests { get; init; }

    /// <summary>Charge counted in a test that was broken off, Ah; no capacity.</summary>
    public required double? AbortedAh { get; init; }

    /// <summary>Conditions of the test.</summary>
    public required CapacityTestJson CapacityTest { get; init; }

    /// <summary>Milliohm.</summary>
    public required double? ResistanceMilliohm { get; init; }

    /// <summary>One standard deviation of it.</summary>
    public required double? ResistanceSpreadMilliohm { get; init; }

    /// <summary>dc, ac-1khz or unknown.</summary>
    public required string ResistanceKind { get; init; }

    /// <summary>Seconds after the step.</summary>
    public required double? ResistanceAfterS { get; init; }

    /// <summary>The 1 kHz figure beside a DC one.</summary>
    public required double? AcResistanceMilliohm { get; init; }

    /// <summary>Latest resting volts.</summary>
    public required double? RestV { get; init; }

    /// <summary>Fall a day, positive when falling.</summary>
    public required double? SelfDischargeMillivoltPerDay { get; init; }

    /// <summary>Charge lost in 30 days; null when it cannot be told.</summary>
    public required double? SelfDischargePercentPerMonth { get; init; }

    /// <summary>The steady current that would lose as much.</summary>
    public required double? SelfDischargeMilliamp { get; init; }

    /// <summary>told, too-early, coarse-meter, flat-curve, rose, no-curve or not-measured.</summary>
    public required string SelfDischargeAnswer { get; init; }

    /// <summary>Days between readings after which it could be told with this meter; null when time does not help.</summary>
    public required double? SelfDischargeDaysNeeded { get; init; }

    /// <summary>Tester slot.</summary>
    public required string? Slot { get; init; }

    /// <summary>Model.</summary>
    public required string? Model { get; init; }

    /// <summary>Chemistry that it was judged by.</summary>
    public required string? Chemistry { get; init; }

    /// <summary>Batch or origin.</summary>
    public required string? Batch { get; init; }

    /// <summary>Where it lies.</summary>
    public required string? Tray { get; init; }

    /// <summary>Damage noted.</summary>
    public required IReadOnlyList<string> Conditions { get; init; }

    /// <summary>True when it must not be grouped or charged for a safety reason.</summary>
    public required bool HeldForSafety { get; init; }

    /// <summary>The rows it was put together from.</summary>
    public required IReadOnlyList<CellTestJson> Tests { get; init; }
}

/// <summary>One reason for a verdict.</summary>
/// <param name="Code">Stable short name.</param>
/// <param name="Value">The reading.</param>
/// <param name="Limit">What it was held against.</param>
/// <param name="LimitFrom">user, data-sheet, chemistry, lot-median or common-practice.</param>
/// <param name="What">capacity, resistance, rest-voltage, self-discharge, condition or chemistry.</param>
/// <param name="Unit">Unit of value and limit.</param>
/// <param name="Bears">The verdict that this reason alone brings.</param>
/// <param name="Caution">The caution raised with it.</param>
/// <param name="Says">The same as a sentence.</param>
public sealed record VerdictReasonJson(
    string Code, double? Value, double? Limit, string? LimitFrom, string What, string Unit, string Bears, string? Caution, string Says);

/// <summary>Conditions of a capacity test.</summary>
/// <param name="CurrentA">Amperes.</param>
/// <param name="CutoffV">Volts.</param>
public sealed record CapacityTestJson(double? CurrentA, double? CutoffV);

/// <summary>One row of a cell.</summary>
/// <param name="File">File.</param>
/// <param name="Line">Line.</param>
/// <param name="CapacityAh">As read.</param>
/// <param name="Slot">Slot.</param>
/// <param name="ResistanceMilliohm">As read.</param>
/// <param name="RestV">As read.</param>
public sealed record CellTestJson(string? File, int? Line, double? CapacityAh, string? Slot, double? ResistanceMilliohm, double? RestV);

/// <summary>Cells per verdict.</summary>
/// <param name="Use">May be used.</param>
/// <param name="Hold">Held.</param>
/// <param name="Reject">Rejected.</param>
public sealed record VerdictCountsJson(int Use, int Hold, int Reject);

/// <summary>Medians of a lot.</summary>
/// <param name="MedianCapacityAh">Ah.</param>
/// <param name="MedianResistanceMilliohm">Milliohm.</param>
public sealed record LotMediansJson(double? MedianCapacityAh, double? MedianResistanceMilliohm);

/// <summary>One tester slot.</summary>
/// <param name="Slot">Its name.</param>
/// <param name="OffsetPercent">Reads high by; null when repeats do not tie it to the others.</param>
/// <param name="SpreadPercent">One standard deviation of the offset.</param>
/// <param name="Tests">Whole tests made in it.</param>
public sealed record SlotJson(string Slot, double? OffsetPercent, double? SpreadPercent, int Tests);

/// <summary>One model.</summary>
/// <param name="Model">Name; null when the table names none.</param>
/// <param name="Cells">Cells.</param>
/// <param name="RatedAh">Capacity when new.</param>
/// <param name="MedianCapacityAh">Median.</param>
/// <param name="MedianResistanceMilliohm">Median.</param>
/// <param name="LeastAh">Capacity limit.</param>
/// <param name="LeastFrom">Whose.</param>
/// <param name="LeastPercent">The limit as a percentage of the rated or the median capacity.</param>
public sealed record ModelLotJson(
    string? Model, int Cells, double? RatedAh, double? MedianCapacityAh, double? MedianResistanceMilliohm, double? LeastAh, string? LeastFrom, double LeastPercent);

/// <summary>What still has to be tested.</summary>
/// <param name="Missing">Places not filled.</param>
/// <param name="Low">Fewest tests, low end of a 90 % range.</param>
/// <param name="Likely">Short over the pass rate.</param>
/// <param name="High">Most tests, high end of a 90 % range.</param>
/// <param name="Hours">For the likely number.</param>
/// <param name="Rounds">Rounds of testing for the likely number.</param>
/// <param name="Places">Series times parallel.</param>
/// <param name="Passed">Cells that passed.</param>
/// <param name="Tried">Cells judged.</param>
public sealed record StillToTestJson([property: JsonPropertyName("short")] int Missing, int Low, int? Likely, int? High, double? Hours, int? Rounds, int Places, int Passed, int Tried);

/// <summary>Cells of one verdict that do not go into the pack.</summary>
/// <param name="Verdict">hold or reject.</param>
/// <param name="Cells">How many.</param>
/// <param name="Labels">Which.</param>
/// <param name="CapacityAh">Sum of the known capacities.</param>
/// <param name="EnergyWh">That times the chemistry's nominal volts; null when the chemistry is unknown.</param>
public sealed record SetApartJson(string Verdict, int Cells, IReadOnlyList<string> Labels, double CapacityAh, double? EnergyWh);

/// <summary>Source-generated description.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(CellsAnswer))]
public sealed partial class CellsAnswerContext : JsonSerializerContext;
