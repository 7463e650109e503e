using System.Text.Json.Serialization;
using PackPlanner.Core.Diagnosis;

namespace PackPlanner.Formats.Json;

/// <summary>What <c>compare --json</c> prints.</summary>
public sealed record CompareAnswer : Answer
{
    /// <inheritdoc/>
    public override string Schema => "packplanner/compare";

    /// <summary>Each group.</summary>
    public required IReadOnlyList<ComparedGroupJson> Groups { get; init; }

    /// <summary>What the lost range is put down to.</summary>
    public required IReadOnlyList<LossCauseJson> Causes { get; init; }

    /// <summary>Usable energy then and now, loaded.</summary>
    public required ChangedEnergyJson UsableWh { get; init; }

    /// <summary>Kilometres on that energy at the owner's use; null when the use is not known.</summary>
    public required ChangedRangeJson? RangeKm { get; init; }

    /// <summary>The two rides and the range at their own use; null when the kilometres of one are not known.</summary>
    public required ComparedRidesJson? Rides { get; init; }

    /// <summary>The answer of a comparison.</summary>
    /// <param name="comparison">The comparison.</param>
    /// <param name="whPerKm">What the vehicle uses for each kilometre; null when not known.</param>
    /// <returns>The answer, without account of rows.</returns>
    public static CompareAnswer From(PackComparison comparison, double? whPerKm = null) => new()
    {
        Groups = [.. comparison.Groups.Select(g => new ComparedGroupJson(g.Group, Changed(g.CapacityAh), Changed(g.ResistanceMilliohm)))],
        Causes = [.. comparison.Causes.Select(c => new LossCauseJson(c.Name, JsonFigures.Known(c.WhShare), c.Grounds))],
        UsableWh = new ChangedEnergyJson(comparison.ThenWh, comparison.NowWh, comparison.NowWh - comparison.ThenWh),
        RangeKm = whPerKm is not { } use ? null : new ChangedRangeJson(comparison.ThenWh / use, comparison.NowWh / use, (comparison.NowWh - comparison.ThenWh) / use),
        Rides = comparison.Rides is not { } rides ? null : new ComparedRidesJson(
            rides.KmThen, rides.KmNow, rides.DeliveredWhThen, rides.DeliveredWhNow, rides.WhPerKmThen, rides.WhPerKmNow, comparison.RangeKmThen, comparison.RangeKmNow),
    };

    private static ChangedJson? Changed(ChangedFigure? figure) => figure is null ? null : new ChangedJson(
        figure.Then.Value, figure.Now.Value, figure.Change.Value, figure.Change.Low, figure.Change.High);
}

/// <summary>Change of one group.</summary>
/// <param name="Group">From 1.</param>
/// <param name="CapacityAh">Capacity.</param>
/// <param name="ResistanceMilliohm">Resistance at like temperature.</param>
public sealed record ComparedGroupJson(int Group, ChangedJson? CapacityAh, ChangedJson? ResistanceMilliohm);

/// <summary>A figure then and now.</summary>
/// <param name="Then">Earlier.</param>
/// <param name="Now">Later.</param>
/// <param name="Change">Later less earlier.</param>
/// <param name="ChangeLow">Lower end of its 90 % range.</param>
/// <param name="ChangeHigh">Upper end.</param>
public sealed record ChangedJson(double Then, double Now, double Change, double ChangeLow, double ChangeHigh);

/// <summary>Usable energy then and now.</summary>
/// <param name="Then">Watt-hours.</param>
/// <param name="Now">Watt-hours.</param>
/// <param name="Change">Watt-hours.</param>
public sealed record ChangedEnergyJson(double? Then, double? Now, double? Change);

/// <summary>Range then and now, at one and the same use.</summary>
/// <param name="Then">Kilometres.</param>
/// <param name="Now">Kilometres.</param>
/// <param name="Change">Kilometres.</param>
public sealed record ChangedRangeJson(double? Then, double? Now, double? Change);

/// <summary>The rides behind the two logs.</summary>
/// <param name="KmThen">Kilometres of the earlier ride.</param>
/// <param name="KmNow">Kilometres of the later ride.</param>
/// <param name="DeliveredWhThen">Watt-hours that left the pack on the earlier ride.</param>
/// <param name="DeliveredWhNow">Watt-hours that left it on the later ride.</param>
/// <param name="WhPerKmThen">Watt-hours for each kilometre of the earlier ride.</param>
/// <param name="WhPerKmNow">Watt-hours for each kilometre of the later ride.</param>
/// <param name="RangeKmThen">Kilometres from full to empty at that use then, at the warmth of that ride; null when the usable energy cannot be told.</param>
/// <param name="RangeKmNow">Kilometres from full to empty now.</param>
public sealed record ComparedRidesJson(
    double KmThen, double KmNow, double DeliveredWhThen, double DeliveredWhNow, double WhPerKmThen, double WhPerKmNow, double? RangeKmThen, double? RangeKmNow);

/// <summary>One cause of lost range.</summary>
/// <param name="Name">pack, cold or vehicle.</param>
/// <param name="WhShare">Share of the earlier range that it took, negative where it gave; the pack's is counted first, each next one's on what is left; those known add up to all that was lost; null when it cannot be told.</param>
/// <param name="Grounds">Where it comes from, or what is missing.</param>
public sealed record LossCauseJson(string Name, double? WhShare, string Grounds);

/// <summary>Source-generated description.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(CompareAnswer))]
public sealed partial class CompareAnswerContext : JsonSerializerContext;
