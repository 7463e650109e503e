namespace PackPlanner.Core.Balancing;

/// <summary>Groups out of step, and what there is to level them with.</summary>
/// <param name="Groups">The groups.</param>
/// <param name="BleedA">Current of each balancer, amperes; null: none.</param>
/// <param name="BleedDuty">Part of the time that it bleeds, 0..1.</param>
/// <param name="ChargerA">Current of a charger for one group at a time, amperes; null: none.</param>
/// <param name="AtTop">Level them full (true) or empty (false).</param>
public sealed record BalancingRequest(
    IReadOnlyList<GroupCharge> Groups, double? BleedA, double BleedDuty, double? ChargerA, bool AtTop);
