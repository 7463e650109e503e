using PackPlanner.Core.Cautions;
using PackPlanner.Core.Packs;
using PackPlanner.Core.UsableEnergy;

namespace PackPlanner.Core.Jobs;

/// <summary>Cautions that the givens alone raise, whatever the cells and the layout are.</summary>
public static class JobCautions
{
    /// <summary>Judges what the job was told.</summary>
    /// <param name="givens">The givens; what is unknown is named, never passed.</param>
    /// <returns>Cautions in no order.</returns>
    public static IEnumerable<Caution> Of(JobGivens givens)
    {
        if (CellVoltsGiven.AboveChemistry(givens) is { } over)
            yield return over;
        double? fullV = givens.Series * givens.FullV;
        if (TouchVoltage.Of("pack", fullV) is { } touch)
            yield return touch;
        if (ChargerCautions.Controller("pack at full charge", fullV, givens.NumberOf("controllerHighV")) is { } controller)
            yield return controller;
        if (ChargerCautions.Volts(fullV, givens.NumberOf("chargerV")) is { } charger)
            yield return charger;
        if (givens.NumberOf("insulationOhm") is { } ohm && fullV is { } volts && EnergyCautions.Insulation(ohm, volts) is { } insulation)
            yield return insulation;
        if (givens.Parallel is { } parallel && givens.TickOf("cellFuse") != true && ShortCircuit.NoCellFuses("each group", parallel, givens.RatedAh) is { } unfused)
            yield return unfused;
        string[] lacking = EnergyCautions.Lacking(JobEnergy.Protection(givens, []));
        if (givens.Series is not null && lacking.Length > 0)
            yield return new Caution("caution-23", SignalWord.Warning, "pack", $"not ticked: {string.Join(", ", lacking)}");
    }
}
