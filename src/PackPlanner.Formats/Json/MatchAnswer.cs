using System.Text.Json.Serialization;

namespace PackPlanner.Formats.Json;

/// <summary>What <c>match --json</c> prints.</summary>
/// <param name="Groups">From 1.</param>
/// <param name="LeftOut">Cells that may be used but are not, largest first, then those that the user left out.</param>
/// <param name="MinGroupAh">Smallest group.</param>
/// <param name="SpreadAh">Largest less smallest group.</param>
/// <param name="MinGroupBoundAh">No grouping of these cells has a larger smallest group than this.</param>
/// <param name="ProvenOptimal">Both strict figures are proven to be the best there are.</param>
/// <param name="StrictMinGroupAh">Smallest group before resistances were levelled.</param>
/// <param name="StrictSpreadAh">Spread before resistances were levelled.</param>
/// <param name="NoiseSpreadAh">Spread that measurement noise alone would show; null when no repeatability is known.</param>
/// <param name="LargestShare">Largest share of the first current in any group; null when a resistance is unknown.</param>
/// <param name="Replacements">Best spares for the cell of --replace; null when none was asked for.</param>
public sealed record MatchAnswer(
    IReadOnlyList<MatchGroupJson> Groups,
    IReadOnlyList<string> LeftOut,
    double MinGroupAh,
    double SpreadAh,
    double MinGroupBoundAh,
    bool ProvenOptimal,
    double StrictMinGroupAh,
    double StrictSpreadAh,
    double? NoiseSpreadAh,
    MatchShareJson? LargestShare,
    IReadOnlyList<MatchReplacementJson>? Replacements) : Answer
{
    /// <inheritdoc/>
    public override string Schema => "packplanner/match";

    /// <summary>True when no grouping has a larger smallest group than the strict one.</summary>
    public required bool MinGroupProven { get; init; }

    /// <summary>The step in which the capacities are written.</summary>
    public required double StepAh { get; init; }

    /// <summary>equal-ah or even-currents.</summary>
    public required string Prefer { get; init; }

    /// <summary>Strict smallest group less this one: what the preference costs.</summary>
    public required double CostAh { get; init; }

    /// <summary>What one more cell like the middle of the used ones would add to the smallest group, about.</summary>
    public required double OneMoreCellAh { get; init; }

    /// <summary>Largest less smallest group resistance; null when a resistance is unknown.</summary>
    public double? ResistanceSpreadMilliohm { get; init; }

    /// <summary>With --fewest-moves: no fewer cells than this must move for such a smallest group, proven; null when not asked or not known.</summary>
    public int? FewestMovesBound { get; init; }

    /// <summary>With --keep-batches: how far that went; null when not asked.</summary>
    public MatchBatchesJson? Batches { get; init; }

    /// <summary>Cells that may not be used, with the verdict.</summary>
    public IReadOnlyList<MatchNotUsedJson> NotUsed { get; init; } = [];

    /// <summary>What goes elsewhere than in the grouping of --from; null when none was given.</summary>
    public IReadOnlyList<MatchMoveJson>? Moves { get; init; }
}

/// <summary>One parallel group.</summary>
/// <param name="Group">From 1.</param>
/// <param name="Cells">Labels, largest first.</param>
/// <param name="CapacityAh">Sum of the capacities as typed.</param>
/// <param name="ResistanceMilliohm">Of all in parallel; null when one is unknown.</param>
/// <param name="LargestShare">Largest share of the first current; null when a resistance is unknown.</param>
public sealed record MatchGroupJson(
    int Group, IReadOnlyList<string> Cells, double CapacityAh, double? ResistanceMilliohm, MatchShareJson? LargestShare);

/// <summary>The largest share of the first current.</summary>
/// <param name="Group">From 1.</param>
/// <param name="Cell">Label.</param>
/// <param name="TimesEqual">Its current over an equal share.</param>
public sealed record MatchShareJson(int Group, string Cell, double TimesEqual);

/// <summary>A spare in the place of a failed cell.</summary>
/// <param name="Cell">The spare.</param>
/// <param name="Group">The failed cell's group.</param>
/// <param name="GroupAh">Capacity of that group after.</param>
/// <param name="PackAh">Smallest group after.</param>
/// <param name="GroupResistanceMilliohm">Of that group after; null when one is unknown.</param>
/// <param name="BringToV">Volts to bring the spare to before it is joined; null when unknown.</param>
public sealed record MatchReplacementJson(
    string Cell, int Group, double GroupAh, double PackAh, double? GroupResistanceMilliohm, double? BringToV);

/// <summary>Batches kept together.</summary>
/// <param name="MixedGroups">Groups with cells of more than one batch, or of an unknown one.</param>
/// <param name="FewestMixedGroups">No grouping of these cells has fewer.</param>
/// <param name="MinGroupBoundAh">No grouping with so few mixed groups has a larger smallest group.</param>
/// <param name="ProvenOptimal">The smallest group is that large.</param>
/// <param name="Groups">The batches of each group, in the order of the groups; null for unknown.</param>
public sealed record MatchBatchesJson(
    int MixedGroups, int FewestMixedGroups, double MinGroupBoundAh, bool ProvenOptimal, IReadOnlyList<IReadOnlyList<string?>> Groups);

/// <summary>A cell that may not be used.</summary>
/// <param name="Cell">Label.</param>
/// <param name="Verdict">hold or reject.</param>
/// <param name="Reasons">Codes.</param>
public sealed record MatchNotUsedJson(string Cell, string Verdict, IReadOnlyList<string> Reasons);

/// <summary>A cell that goes elsewhere.</summary>
/// <param name="Cell">Label.</param>
/// <param name="FromGroup">From 1; null: from the spares.</param>
/// <param name="ToGroup">From 1; null: out.</param>
public sealed record MatchMoveJson(string Cell, int? FromGroup, int? ToGroup);

/// <summary>Source-generated description.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(MatchAnswer))]
public sealed partial class MatchAnswerContext : JsonSerializerContext;
