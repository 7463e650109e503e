namespace PackPlanner.Core.UsableEnergy;

/// <summary>How much of a pack's label a ride really gets.</summary>
/// <remarks>
/// Each step of the list is the difference of two discharges that differ in one thing only, taken in a fixed order, so
/// the steps add up by construction. Resistances are those of a load that lasts; charge transfer, diffusion and self
/// heating are not followed apart.
/// </remarks>
public static class EnergyBudgets
{
    /// <summary>Replacements are followed up to this many groups.</summary>
    public const int MostReplaced = 5;

    /// <summary>Works out the budget.</summary>
    /// <param name="request">Pack, load and limits.</param>
    /// <param name="stopped">Ends the work early.</param>
    /// <returns>The budget.</returns>
    /// <exception cref="ArgumentException">There are no groups, a capacity is not above zero, or only some groups have a state of charge.</exception>
    /// <exception cref="EndlessLoadException">The load profile never empties the pack.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static EnergyBudget Of(EnergyRequest request, CancellationToken stopped)
    {
        if (request.Groups.Count == 0 || request.Groups.Any(group => !(group.CapacityAh > 0 && double.IsFinite(group.CapacityAh))))
            throw new ArgumentException("Each group needs a capacity above zero.", nameof(request));
        StringModel model = new(request);
        LossList list = new(request, model, stopped);
        DischargeRun atRest = list.Build();
        DischargeRun full = list.BeforeReserve;
        DischargeRun usable = list.Last;
        // The mean of a steady current over its run misses it by the last digit, and a fuse of exactly that rating is enough.
        double effectiveA = request.Load is LoadPlan.ConstantCurrent steady ? steady.LoadA : full.EffectiveA;
        return new EnergyBudget
        {
            NominalWh = list.NominalWh,
            Losses = list.Steps,
            UsableWh = usable.DeliveredWh,
            UsableAh = usable.TakenAh,
            Spread = EnergySpread.Of(request, full, list.Ridden, model.TopFraction),
            UsableAhAtRest = atRest.TakenAh,
            UsableWhAtRest = atRest.DeliveredWh,
            EndsAtGroup = request.Groups[full.LowestGroup].Number,
            EndedByController = full.ByController,
            EndPackV = full.EndPackV,
            EndsAtOnce = request.Load is not null && full.TakenAh <= 0 && atRest.TakenAh > 0,
            EffectiveA = effectiveA,
            Hours = usable.Hours,
            AfterBalance = After([], model.Balanced(), request, list),
            AfterReplacement = Replacements(request, model, list),
            Sensitivity = EnergySensitivity.Of(request, model.Curve, usable.DeliveredWh, stopped),
            PulsePowers = PulsePower.Of(request, list.Ridden, full.TakenAh),
            Heat = HeatParts.Of(request, model, effectiveA),
        };
    }

    private static UsableAfter[] Replacements(EnergyRequest request, StringModel model, LossList list)
    {
        List<UsableAfter> after = [];
        for (int count = 1; count <= Math.Min(MostReplaced, request.Groups.Count - 1); count++)
        {
            SeriesString pack = model.Replaced(count, out IReadOnlyList<int> replaced);
            after.Add(After(replaced, pack, request, list));
        }

        return [.. after];
    }

    private static UsableAfter After(IReadOnlyList<int> replaced, SeriesString pack, EnergyRequest request, LossList list)
    {
        (DischargeRun ride, DischargeRun kept) = list.Ride(pack);
        return new UsableAfter(replaced, kept.TakenAh, kept.DeliveredWh, ride.ByController ? null : request.Groups[ride.LowestGroup].Number);
    }
}
