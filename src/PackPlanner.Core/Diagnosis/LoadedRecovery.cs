namespace PackPlanner.Core.Diagnosis;

/// <summary>Usable charge and energy when a group ends the ride as its loaded voltage meets the cut-off.</summary>
/// <param name="CurrentA">The steady current supposed: the mean of the log's discharge.</param>
/// <param name="UsableAhNow">As the groups stand.</param>
/// <param name="UsableWhNow">Energy of that.</param>
/// <param name="UsableAhAfterBalance">All groups full at the start.</param>
/// <param name="UsableAhAfterReplacement">The group that ends the balanced ride replaced by a median one.</param>
public sealed record LoadedRecovery(
    double CurrentA, double UsableAhNow, double UsableWhNow, double UsableAhAfterBalance, double UsableAhAfterReplacement);
