using System.Diagnostics;
using PackPlanner.Core.Cells;

namespace PackPlanner.Core.UsableEnergy;

/// <summary>What matters most: one thing changed at a time, everything else as it is.</summary>
internal static class EnergySensitivity
{
    private const double WarmerK = 10;

    // No change tried here moves the limits, so one curve serves them all.
    internal static IReadOnlyList<LossStep> Of(EnergyRequest request, OpenCircuitCurve curve, double usableWh, CancellationToken stopped)
    {
        List<LossStep> changes = [];
        void Try(string name, EnergyRequest changed)
        {
            StringModel model = new(changed, curve);
            DischargeRun kept = new LossList(changed, model, stopped).Ride(model.Now()).Kept;
            changes.Add(new LossStep(name, kept.DeliveredWh - usableWh));
        }

        if (request.Load is { } load)
        {
            Try("load 10 % lower", request with { Load = Scaled(load, 0.9) });
            if (MissingResistances.Taken(request.Groups) is { } milliohm)
                Try("resistance of every group 10 % lower", request with { Groups = [.. request.Groups.Zip(milliohm, (group, each) => group with { ResistanceMilliohm = each * 0.9 })] });
            if (request.LinkMilliohm is not null)
                Try("links of half the resistance", request with { LinkMilliohm = request.LinkMilliohm / 2 });
        }

        if (request.TemperatureDegC is { } degC && degC < ColdCapacity.TestDegC)
            Try($"{Math.Min(WarmerK, ColdCapacity.TestDegC - degC):0.#} K warmer", request with { TemperatureDegC = Math.Min(degC + WarmerK, ColdCapacity.TestDegC) });
        double weakestAh = request.Groups.Min(group => group.CapacityAh);
        int weakest = request.Groups.First(group => group.CapacityAh == weakestAh).Number;
        Try($"group {weakest} with 1 % more capacity", request with { Groups = [.. request.Groups.Select(group => group.Number == weakest ? group with { CapacityAh = group.CapacityAh * 1.01 } : group)] });
        return [.. changes.OrderByDescending(change => Math.Abs(change.Wh ?? 0)).ThenBy(change => change.Name, StringComparer.Ordinal)];
    }

    private static LoadPlan Scaled(LoadPlan load, double factor) => load switch
    {
        LoadPlan.ConstantCurrent current => new LoadPlan.ConstantCurrent(current.LoadA * factor),
        LoadPlan.ConstantPower power => new LoadPlan.ConstantPower(power.LoadW * factor),
        LoadPlan.Profile profile => new LoadPlan.Profile([.. profile.Steps.Select(step => step with { Value = step.Value * factor })]),
        _ => throw new UnreachableException(),
    };
}
