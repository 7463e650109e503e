using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Sharing;

/// <summary>Cells to be joined into one parallel group, and what they may carry.</summary>
/// <param name="Group">Number of the group, from 1.</param>
/// <param name="Cells">The cells.</param>
/// <param name="LinkMilliohm">Link or lead in the path of the current, milliohm.</param>
/// <param name="ChargeRatingA">Highest charging current of one cell; null: half its ampere-hours as amperes.</param>
/// <param name="DischargeRatingA">Highest discharge current of one cell; null: half its ampere-hours as amperes.</param>
/// <param name="Chemistry">Null when unknown; then no time through a resistor can be told.</param>
public sealed record JoinRequest(
    int Group,
    IReadOnlyList<JoinCell> Cells,
    double LinkMilliohm,
    double? ChargeRatingA,
    double? DischargeRatingA,
    Chemistry? Chemistry);
