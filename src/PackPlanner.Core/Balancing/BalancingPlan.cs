namespace PackPlanner.Core.Balancing;

/// <summary>What to bleed or add, and how long it takes.</summary>
/// <param name="Groups">Each group, in the order given.</param>
/// <param name="BleedHours">All groups bled at once, each by its own balancer; null without one.</param>
/// <param name="ChargeHours">Group after group with the charger; null without one.</param>
/// <param name="Parallel">All groups side by side on one charger, the other way of levelling them full; null where capacities or charges are unknown.</param>
public sealed record BalancingPlan(
    IReadOnlyList<GroupBalance> Groups, double? BleedHours, double? ChargeHours, ParallelTopBalance? Parallel)
{
    /// <summary>Range of <see cref="BleedHours"/>; null where a reading has no spread.</summary>
    public HoursRange? BleedRange { get; init; }

    /// <summary>Range of <see cref="ChargeHours"/>; null where a reading has no spread.</summary>
    public HoursRange? ChargeRange { get; init; }

    /// <summary>Range of <see cref="Hours"/>.</summary>
    public HoursRange? Range => ByBleeding switch { true => BleedRange, false => ChargeRange, null => null };

    /// <summary>Hours of the quicker way; null where there is none.</summary>
    public double? Hours => ByBleeding switch { true => BleedHours, false => ChargeHours, null => null };

    /// <summary>True when bleeding is quicker or the only way; false when charging is; null when there is neither.</summary>
    public bool? ByBleeding => (BleedHours, ChargeHours) switch
    {
        (null, null) => null,
        ({ } bleed, { } charge) => bleed <= charge,
        var (bleed, _) => bleed is not null,
    };
}

/// <summary>One group.</summary>
/// <param name="Number">Number of the group, from 1.</param>
/// <param name="RemoveAh">To bleed so that it stands with the emptiest; null where it cannot be told or nothing may be done.</param>
/// <param name="AddAh">To add so that it stands with the fullest; null likewise.</param>
/// <param name="SpreadAh">Half the width of the 90 % range of the less sure of the two, with the spread of the group it is levelled with; null when unknown.</param>
/// <param name="BleedHours">Hours of its balancer; null without one.</param>
/// <param name="ChargeHours">Hours of the charger; null without one.</param>
/// <param name="Reason">not-to-be-charged, cannot-tell, no-capacity, or nothing-to-compare where no other group is told; null where it is told.</param>
public sealed record GroupBalance(
    int Number, double? RemoveAh, double? AddAh, double? SpreadAh, double? BleedHours, double? ChargeHours, string? Reason)
{
    /// <summary>The part of <see cref="SpreadAh"/> that is the group's own, ampere-hours; null when unknown.</summary>
    public double? OwnSpreadAh { get; init; }

    /// <summary>Range of <see cref="BleedHours"/>; null when unknown.</summary>
    public HoursRange? BleedRange { get; init; }

    /// <summary>Range of <see cref="ChargeHours"/>; null when unknown.</summary>
    public HoursRange? ChargeRange { get; init; }
}

/// <summary>Hours that hold the truth nine times in ten.</summary>
/// <param name="Low">Lower end, never below 0.</param>
/// <param name="High">Upper end.</param>
public sealed record HoursRange(double Low, double High)
{
    internal static HoursRange Of(double movedAh, double spreadAh, double ampere) =>
        new(Math.Max(0, movedAh - spreadAh) / ampere, (movedAh + spreadAh) / ampere);
}

/// <summary>All groups joined in parallel and charged to the limit of one.</summary>
/// <param name="ChargeAh">Ampere-hours from the present charge to full.</param>
/// <param name="LeastHours">At the charger's current; lead drop and the tail come on top. Null without a charger.</param>
/// <param name="StopBelowA">Current below which, at the limit's volts at the cells, the charge is ended; null without a charger.</param>
public sealed record ParallelTopBalance(double ChargeAh, double? LeastHours, double? StopBelowA);
