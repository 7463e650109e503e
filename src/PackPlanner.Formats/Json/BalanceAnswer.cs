using System.Text.Json.Serialization;

namespace PackPlanner.Formats.Json;

/// <summary>What <c>balance --json</c> prints.</summary>
/// <param name="Groups">What to bleed from or add to each group.</param>
/// <param name="Hours">Hours of the quicker way; null where it cannot be told or no current is given.</param>
/// <param name="Method">bleed or charge, the quicker; null likewise.</param>
/// <param name="BleedHours">All groups bled at once; null without --bleed.</param>
/// <param name="ChargeHours">One group after the other charged; null without --charger.</param>
/// <param name="Level">top or bottom.</param>
/// <param name="OtherLevel">The same at the other end; null where no hours can be told.</param>
/// <param name="QuickerLevel">top or bottom, or same; null likewise.</param>
/// <param name="DriftAhPerMonth">How far the groups drift apart in a month by their self-discharge; null unless two or more are known.</param>
/// <param name="HoursRange">Range of the hours that holds the truth nine times in ten; null where a reading has no spread.</param>
/// <param name="ParallelTopBalance">All groups side by side on one charger; null where it cannot be told.</param>
public sealed record BalanceAnswer(
    IReadOnlyList<BalanceGroupJson> Groups,
    double? Hours,
    string? Method,
    double? BleedHours,
    double? ChargeHours,
    string Level,
    OtherLevelJson? OtherLevel,
    string? QuickerLevel,
    double? DriftAhPerMonth,
    RangeJson? HoursRange,
    ParallelTopBalanceJson? ParallelTopBalance) : Answer
{
    /// <inheritdoc/>
    [JsonPropertyOrder(-100)]
    public override string Schema => "packplanner/balance";
}

/// <summary>Levelling at the other end.</summary>
/// <param name="Level">top or bottom.</param>
/// <param name="Hours">Hours of the quicker way there.</param>
/// <param name="Method">bleed or charge.</param>
public sealed record OtherLevelJson(string Level, double Hours, string Method);

/// <summary>One group.</summary>
/// <param name="Group">Number, from 1.</param>
/// <param name="RemoveAh">To bleed so that it stands with the emptiest; null where it cannot be told.</param>
/// <param name="AddAh">To add so that it stands with the fullest; null where it cannot be told.</param>
/// <param name="SpreadAh">Half the width of the 90 % range of either figure, with the spread of the group it is levelled with; null when unknown.</param>
/// <param name="Hours">Hours by the method chosen; null without one.</param>
/// <param name="Reason">not-to-be-charged, cannot-tell, no-capacity, or nothing-to-compare where no other group is told; null where it is told.</param>
/// <param name="HoursRange">Holds the truth nine times in ten; null when unknown.</param>
public sealed record BalanceGroupJson(int Group, double? RemoveAh, double? AddAh, double? SpreadAh, double? Hours, string? Reason, RangeJson? HoursRange);

/// <summary>All groups joined in parallel and charged to the limit of one.</summary>
/// <param name="ChargeAh">Ampere-hours to full.</param>
/// <param name="LeastHours">At the charger's current; null without one.</param>
/// <param name="StopBelowA">Current below which the charge is ended; null without a charger.</param>
/// <param name="LargestInrushA">Largest current on joining the groups side by side; null when unknown.</param>
public sealed record ParallelTopBalanceJson(double ChargeAh, double? LeastHours, double? StopBelowA, double? LargestInrushA);

/// <summary>Source-generated description.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(BalanceAnswer))]
public sealed partial class BalanceAnswerContext : JsonSerializerContext;
