namespace PackPlanner.Core.Sizing;

/// <summary>Which S the controller and the charger allow; null where the limit is unknown.</summary>
/// <param name="Min">Cut-off never under the controller's low-voltage limit.</param>
/// <param name="Max">Full charge never above the controller.</param>
/// <param name="MinStranding">From here the controller stops before the cells are empty.</param>
/// <param name="MatchingCharger">All S that suit the charger; null without one.</param>
public sealed record SeriesWindow(int? Min, int? Max, int? MinStranding, IReadOnlyList<int>? MatchingCharger);
