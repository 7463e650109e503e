namespace PackPlanner.Core.Balancing;

/// <summary>Works out how to bring groups of a string into step.</summary>
/// <remarks>
/// Level at the top: each group lacks (1 - z) Q to full, and those that lack least are bled, or those that lack most are
/// charged, until all lack alike. Level at the bottom: the same with the charge left, z Q. Time is charge over current
/// and duty; balancers work at once, one charger works on one group after the other.
/// </remarks>
public static class Balancer
{
    // A range of 90 % is 1.645 standard deviations either way.
    internal const double NinetyPercent = 1.6448536269514722;
    private const double StopPerHour = 0.02;
    private const double StopOfCharger = 0.1;

    /// <summary>Plans the balancing.</summary>
    /// <param name="request">Groups and currents.</param>
    /// <returns>The plan.</returns>
    public static BalancingPlan Plan(BalancingRequest request)
    {
        double?[] depthAh = [.. request.Groups.Select(group => Reason(group) is null ? DepthAh(group, request.AtTop) : (double?)null)];
        // One group that is told stands level with nothing.
        bool alone = request.Groups.Count > 1 && depthAh.Count(depth => depth is not null) == 1;
        double most = depthAh.Max() ?? 0;
        double least = depthAh.Min() ?? 0;
        GroupBalance[] groups = [.. request.Groups.Select((group, g) => Balance(request, group, alone ? null : depthAh[g], least, most))];
        bool told = groups.Any(group => group.RemoveAh is not null);
        return new BalancingPlan(
            groups,
            told && request.BleedA is not null ? groups.Max(group => group.BleedHours) : null,
            told && request.ChargerA is not null ? groups.Sum(group => group.ChargeHours) : null,
            Parallel(request));
    }

    /// <summary>How far groups drift apart by what they lose at rest.</summary>
    /// <param name="groups">Ampere-hours and per cent lost in a month of each group, at least one.</param>
    /// <param name="months">Months without balancing.</param>
    /// <returns>Ampere-hours between the group that loses most and the one that loses least.</returns>
    public static double DriftAh(IReadOnlyList<(double CapacityAh, double PercentPerMonth)> groups, double months)
    {
        double[] lostAh = [.. groups.Select(group => group.CapacityAh * group.PercentPerMonth / 100 * months)];
        return lostAh.Max() - lostAh.Min();
    }

    /// <summary>Current of a balancer inside a monitor.</summary>
    /// <param name="cellV">Volts of the cell.</param>
    /// <param name="resistorOhm">The resistor in each of its two sense lines, ohms.</param>
    /// <param name="switchOhm">On-resistance of the switch, ohms.</param>
    /// <returns>Amperes. Source: [Slva87] equation 2: V / (2 R + R_switch).</returns>
    public static double InternalBleedA(double cellV, double resistorOhm, double switchOhm) => cellV / (2 * resistorOhm + switchOhm);

    private static GroupBalance Balance(BalancingRequest request, GroupCharge group, double? depthAh, double least, double most)
    {
        if (depthAh is not { } depth)
            return new GroupBalance(group.Number, null, null, null, null, null, Reason(group) ?? "nothing-to-compare");
        // At the top a group that lacks little is bled; at the bottom a group with much left is.
        double removeAh = request.AtTop ? most - depth : depth - least;
        double addAh = request.AtTop ? depth - least : most - depth;
        return new GroupBalance(
            group.Number, removeAh, addAh, group.FractionSpread * group.CapacityAh * NinetyPercent,
            removeAh / (request.BleedA * request.BleedDuty), addAh / request.ChargerA, null);
    }

    private static ParallelTopBalance? Parallel(BalancingRequest request)
    {
        if (!request.AtTop || request.Groups.Any(group => group.CapacityAh is null || group.Fraction is null || group.NotToBeCharged))
            return null;
        double chargeAh = request.Groups.Sum(group => Math.Max(0, 1 - group.Fraction!.Value) * group.CapacityAh!.Value);
        double bankAh = request.Groups.Sum(group => group.CapacityAh!.Value);
        double? stopA = request.ChargerA is { } chargerA ? Math.Min(StopOfCharger * chargerA, StopPerHour * bankAh) : null;
        return new ParallelTopBalance(chargeAh, chargeAh / request.ChargerA, stopA);
    }

    private static double DepthAh(GroupCharge group, bool atTop) =>
        group.LacksAh is { } lacks ? (atTop ? lacks : -lacks)
        : (atTop ? 1 - group.Fraction!.Value : group.Fraction!.Value) * group.CapacityAh!.Value;

    private static string? Reason(GroupCharge group) =>
        group.NotToBeCharged ? "not-to-be-charged"
        : group.LacksAh is not null ? null
        : group.Fraction is null ? "cannot-tell"
        : group.CapacityAh is null ? "no-capacity"
        : null;
}
