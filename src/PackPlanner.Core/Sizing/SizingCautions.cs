using System.Globalization;
using PackPlanner.Core.Cautions;
using PackPlanner.Core.Cells;
using PackPlanner.Core.Packs;
using PackPlanner.Core.UsableEnergy;

namespace PackPlanner.Core.Sizing;

/// <summary>The cautions that a choice of S, P and cell raises.</summary>
internal static class SizingCautions
{
    internal static IReadOnlyList<Caution> Of(PackChoice choice, SizingRequest request)
    {
        List<Caution> raised = [];
        string where = choice.Parallel is { } p ? $"{choice.Series}s{p}p" : $"{choice.Series}s";
        if (TouchVoltage.Of(where, choice.VoltageFullV) is { } touch)
            raised.Add(touch);
        if (choice.LimitsBroken.Contains("charge-too-cold"))
            raised.Add(new("caution-11", SignalWord.Warning, where,
                $"charging planned at {Text(request.Need.ChargeTemperatureDegC)} °C, the cell allows {Text(choice.Cell.MinChargeDegC)} °C"));
        else if (choice.Cell.MinChargeDegC is null && Chemistries.Find(choice.Cell.Chemistry)?.LowestCharging?.DegreesCelsius is { } usual && request.Need.ChargeTemperatureDegC < usual)
            raised.Add(new("caution-11", SignalWord.Warning, where,
                $"charging planned at {Text(request.Need.ChargeTemperatureDegC)} °C, {choice.Cell.Chemistry} cells are usually charged from {Text(usual)} °C on"));
        if (choice.ProspectiveShortCircuitA is { } first && ShortCircuit.HighCurrent(where, first) is { } high)
            raised.Add(high with { Saw = $"{high.Saw}; {Text(choice.ShortCircuitA)} A by DC resistance" });
        if (choice.ProspectiveShortCircuitA > request.Electrics.FuseBreakingA)
            raised.Add(new("caution-21", SignalWord.Warning, "fuse",
                $"a short circuit begins at about {Text(choice.ProspectiveShortCircuitA)} A, the fuse breaks {Text(request.Electrics.FuseBreakingA)} A"));
        if (choice is { Parallel: { } parallel, Cell: { } cell } && ShortCircuit.NoCellFuses(where, parallel, cell.FullV, cell.ResistanceMilliohm, cell.CapacityAh) is { } unfused)
            raised.Add(unfused);
        if (request.Electrics.FuseA is null)
            raised.Add(new("caution-23", SignalWord.Warning, where, "no fuse stated; disconnect, pre-charge and monitor are not asked here"));
        if (choice.LimitsBroken.Contains("cell-peak-current") || choice.LimitsBroken.Contains("cell-continuous-current"))
            raised.Add(new("caution-24", SignalWord.Warning, where,
                $"{Text(choice.CellPeakA)} A peak and {Text(choice.CellContinuousA)} A continuous a cell, before any unequal share"));
        raised.AddRange(new[]
        {
            ChargerCautions.Controller(where, choice.VoltageFullV, request.Electrics.ControllerMaxV),
            ChargerCautions.Volts(choice.VoltageFullV, request.Electrics.ChargerV),
            ChargerCautions.Current(request.Electrics.ChargerA, choice.Parallel * choice.Cell.MaxChargeA, "its cells' charging limit"),
        }.OfType<Caution>());
        if (HeavyBox.Of(where, choice.PackMassKg, "in one box") is { } heavy)
            raised.Add(heavy);
        return Caution.InOrder(raised);
    }

    private static string Text(double? figure) => figure is { } known ? known.ToString("0.#", CultureInfo.InvariantCulture) : "-";
}
