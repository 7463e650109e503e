using PackPlanner.Core.Cells;

namespace PackPlanner.Core.Balancing;

/// <summary>Works out how to bring groups of a string into step.</summary>
/// <remarks>
/// Level at the top: each group lacks (1 - z) Q to full, and those that lack least are bled, or those that lack most are
/// charged, until all lack alike. Level at the bottom: the same with the charge left, z Q. Time is charge over current
/// and duty; balancers work at once, one charger works on one group after the other.
/// </remarks>
public static class Balancer
{
    // Current at which a parallel charge is ended: 0.02 C of the bank, or a tenth of the charger's. Common practice, no source.
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
        double?[] spreadAh = [.. request.Groups.Select(group => SpreadAh(group, request.AtTop))];
        // The spread of the group that sets the level; bled down to one end of the row, charged up to the other.
        double? SpreadAt(double depth) => Array.IndexOf(depthAh, depth) is var at and >= 0 ? spreadAh[at] : null;
        (double? ofLeast, double? ofMost) = (SpreadAt(least), SpreadAt(most));
        GroupBalance[] groups =
        [
            .. request.Groups.Select((group, g) => Balance(
                request, group, alone ? null : depthAh[g], (least, ofLeast), (most, ofMost), spreadAh[g])),
        ];
        bool told = groups.Any(group => group.RemoveAh is not null);
        return new BalancingPlan(
            groups,
            told && request.BleedA is not null ? groups.Max(group => group.BleedHours) : null,
            told && request.ChargerA is not null ? groups.Sum(group => group.ChargeHours) : null,
            Parallel(request))
        {
            BleedRange = told && request.BleedA is not null ? Together(groups, group => group.BleedRange) : null,
            ChargeRange = told && request.ChargerA is not null ? ChargedInTurn(groups, request.ChargerA.Value) : null,
        };
    }

    // Bled at once: the group that takes longest, at either end of its range.
    private static HoursRange? Together(IReadOnlyList<GroupBalance> groups, Func<GroupBalance, HoursRange?> range)
    {
        GroupBalance[] told = [.. groups.Where(group => group.RemoveAh is not null)];
        return told.All(group => range(group) is not null)
            ? new HoursRange(told.Max(group => range(group)!.Low), told.Max(group => range(group)!.High))
            : null;
    }

    // One after the other: what each lacks is uncertain by its own reading, and all alike by the one of the group they are brought up to.
    private static HoursRange? ChargedInTurn(IReadOnlyList<GroupBalance> groups, double chargerA)
    {
        GroupBalance[] told = [.. groups.Where(group => group.AddAh is not null)];
        if (!told.All(group => group.OwnSpreadAh is not null))
            return null;
        GroupBalance level = told.MinBy(group => group.AddAh)!;
        double own = told.Where(group => group != level).Sum(group => group.OwnSpreadAh!.Value * group.OwnSpreadAh.Value);
        double spreadAh = Math.Sqrt(own + Math.Pow((told.Length - 1) * level.OwnSpreadAh!.Value, 2));
        return HoursRange.Of(told.Sum(group => group.AddAh!.Value), spreadAh, chargerA);
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

    private static GroupBalance Balance(
        BalancingRequest request, GroupCharge group, double? depthAh, (double Ah, double? SpreadAh) least, (double Ah, double? SpreadAh) most, double? ownAh)
    {
        if (depthAh is not { } depth)
            return new GroupBalance(group.Number, null, null, null, null, null, Reason(group) ?? "nothing-to-compare");
        // At the top a group that lacks little is bled; at the bottom a group with much left is.
        (double Ah, double? SpreadAh) bled = request.AtTop ? most : least;
        (double Ah, double? SpreadAh) charged = request.AtTop ? least : most;
        double removeAh = Math.Abs(bled.Ah - depth);
        double addAh = Math.Abs(charged.Ah - depth);
        double? removeSpreadAh = Against(ownAh, removeAh, bled.SpreadAh);
        double? addSpreadAh = Against(ownAh, addAh, charged.SpreadAh);
        double? bleedA = request.BleedA * request.BleedDuty;
        return new GroupBalance(
            group.Number, removeAh, addAh, removeSpreadAh is { } remove && addSpreadAh is { } add ? Math.Max(remove, add) : null,
            removeAh / bleedA, addAh / request.ChargerA, null)
        {
            OwnSpreadAh = ownAh,
            BleedRange = removeSpreadAh is { } known && bleedA is { } ampere ? HoursRange.Of(removeAh, known, ampere) : null,
            ChargeRange = addSpreadAh is { } told && request.ChargerA is { } chargerA ? HoursRange.Of(addAh, told, chargerA) : null,
        };
    }

    // The group that sets the level stands off by its own reading alone.
    private static double? Against(double? ownAh, double movedAh, double? levelAh) =>
        movedAh == 0 ? ownAh : ownAh is { } own && levelAh is { } level ? Math.Sqrt(own * own + level * level) : null;

    /// <summary>Half the width of the 90 % range of what a group lacks, or holds: its charge and its capacity are both readings.</summary>
    private static double? SpreadAh(GroupCharge group, bool atTop)
    {
        if (group.LacksAh is not null || group.FractionSpread is not { } sigma || group.CapacityAh is not { } capacityAh || group.Fraction is not { } fraction)
            return null;
        double byCapacityAh = (atTop ? 1 - fraction : fraction) * (group.CapacitySigmaAh ?? 0);
        return NormalRange.NinetyPercent * Math.Sqrt(sigma * capacityAh * sigma * capacityAh + byCapacityAh * byCapacityAh);
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
