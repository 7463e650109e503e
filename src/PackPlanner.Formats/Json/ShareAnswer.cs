using System.Text.Json.Serialization;

namespace PackPlanner.Formats.Json;

/// <summary>What <c>share --json</c> prints.</summary>
/// <param name="Groups">Each group at the first instant of the load.</param>
/// <param name="Through">The same at rising ampere-hours; null where capacities or the chemistry are unknown.</param>
/// <param name="EndedByGroup">The group that meets its cut-off first; null without <paramref name="Through"/>.</param>
/// <param name="Swings">The largest share of each group on the way down; null without <paramref name="Through"/>.</param>
/// <param name="LoadA">The load, discharge positive.</param>
public sealed record ShareAnswer(
    IReadOnlyList<ShareGroupJson> Groups,
    IReadOnlyList<ShareMomentJson>? Through,
    int? EndedByGroup,
    IReadOnlyList<ShareSwingJson>? Swings,
    double LoadA) : Answer
{
    /// <inheritdoc/>
    public override string Schema => "packplanner/share";
}

/// <summary>One group at one instant.</summary>
/// <param name="Group">Number, from 1.</param>
/// <param name="TerminalV">Volts between the two take-off points.</param>
/// <param name="Cells">Each cell's current.</param>
/// <param name="Worst">The hardest-worked cell.</param>
/// <param name="CirculatingA">What flows between the cells without a load.</param>
public sealed record ShareGroupJson(
    int Group, double TerminalV, IReadOnlyList<ShareCellJson> Cells, ShareWorstJson Worst, double CirculatingA);

/// <summary>One cell.</summary>
/// <param name="Cell">Its label.</param>
/// <param name="CurrentA">Amperes, discharge positive.</param>
/// <param name="SharePercent">Percent of the load; null without a load.</param>
public sealed record ShareCellJson(string Cell, double CurrentA, double? SharePercent);

/// <summary>The hardest-worked cell of a group.</summary>
/// <param name="Cell">Its label.</param>
/// <param name="TimesEqual">Its current over an equal share; null without a load.</param>
public sealed record ShareWorstJson(string Cell, double? TimesEqual);

/// <summary>All groups after some charge has been taken.</summary>
/// <param name="AtAh">Ampere-hours since the start.</param>
/// <param name="Groups">The groups then.</param>
public sealed record ShareMomentJson(double AtAh, IReadOnlyList<ShareGroupJson> Groups);

/// <summary>How far one group's currents swing during the discharge.</summary>
/// <param name="Group">Number, from 1.</param>
/// <param name="Cell">The cell with the largest share at any moment kept.</param>
/// <param name="TimesEqual">That share over an equal one.</param>
/// <param name="AtAh">When.</param>
/// <param name="Crossings">Ampere-hours at which another cell had become the hardest-worked one.</param>
public sealed record ShareSwingJson(int Group, string Cell, double? TimesEqual, double AtAh, IReadOnlyList<ShareCrossingJson> Crossings);

/// <summary>Another cell has become the hardest-worked one.</summary>
/// <param name="AtAh">The first moment kept at which it was.</param>
/// <param name="Cell">The cell.</param>
public sealed record ShareCrossingJson(double AtAh, string Cell);

/// <summary>Source-generated description.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(ShareAnswer))]
public sealed partial class ShareAnswerContext : JsonSerializerContext;
