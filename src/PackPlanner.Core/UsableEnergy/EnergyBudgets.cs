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
        return new EnergyBudget
        {
            NominalWh = list.NominalWh,
            Losses = list.Steps,
            UsableWh = usable.DeliveredWh,
            UsableAh = usable.TakenAh,
            Spread = EnergySpread.Of(request, full, list.Ridden),
            UsableAhAtRest = atRest.TakenAh,
            UsableWhAtRest = atRest.DeliveredWh,
            EndsAtGroup = request.Groups[full.LowestGroup].Number,
            EndedByController = full.ByController,
            EndPackV = full.EndPackV,
            EffectiveA = full.EffectiveA,
            Hours = usable.Hours,
            AfterBalance = After([], model.Balanced(), request, list),
            AfterReplacement = Replacements(request, model, list),
            Sensitivity = EnergySensitivity.Of(request, usable.DeliveredWh, stopped),
            Heat = Heat(request, model, full.EffectiveA),
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

    private static HeatParts Heat(EnergyRequest request, StringModel model, double effectiveA)
    {
        if (request.Load is null)
            return new HeatParts(null, null, null, null);
        double warmth = request.TemperatureDegC is { } degC ? ResistanceLaw.AtTemperature(degC) : 1;
        double square = effectiveA * effectiveA;
        double? cellsW = model.ResistanceOhm is { } ohms ? square * ohms.Sum() * warmth : null;
        int? cells = request.Groups.All(group => group.Parallel is not null) ? request.Groups.Sum(group => group.Parallel!.Value) : null;
        return new HeatParts(
            cellsW,
            model.LinkOhm is { } linkOhm ? square * linkOhm : null,
            cellsW / cells,
            request.LinkMilliohm is { } link ? square * link / 1000 : null);
    }
}
