using PackPlanner.Core.Cells;

namespace PackPlanner.Core.UsableEnergy;

/// <summary>How fast a cell may be charged at a temperature, where its own data sheet is not at hand.</summary>
/// <remarks>
/// Source: [Inr18650-26] for NMC, taken for the other graphite cells but LFP as well; [Lfp26650-40] for LFP. A cell's own data sheet wins.
/// </remarks>
public static class ChargeRates
{
    private static readonly (double BelowDegC, double PerHour)[] Oxide = [(0, 0), (5, 0.1), (15, 0.2), (55, 0.5)];
    private static readonly (double BelowDegC, double PerHour)[] IronPhosphate = [(0, 0), (5, 0.2), (15, 0.5), (55, 1)];

    /// <summary>Highest charging current over capacity.</summary>
    /// <param name="chemistry">The chemistry.</param>
    /// <param name="degC">Cell temperature, degrees Celsius.</param>
    /// <returns>Amperes for each ampere-hour, 0 where charging is not allowed; null where only the data sheet can say.</returns>
    public static double? PerHour(Chemistry chemistry, double degC)
    {
        if (!chemistry.HasGraphiteAnode)
            return null;
        (double BelowDegC, double PerHour)[] steps = chemistry.Name == "LFP" ? IronPhosphate : Oxide;
        foreach ((double belowDegC, double perHour) in steps)
            if (degC < belowDegC)
                return perHour;
        return degC == 55 ? steps[^1].PerHour : 0;
    }

    /// <summary>Current at which a constant-voltage charge is ended, over capacity.</summary>
    /// <param name="chemistry">The chemistry.</param>
    /// <returns>Amperes for each ampere-hour. Source: [LFP-26650-3300] for LFP, [Inr18650-26] for the others.</returns>
    public static double TaperPerHour(Chemistry chemistry) => chemistry.Name == "LFP" ? 0.01 : 0.02;
}
