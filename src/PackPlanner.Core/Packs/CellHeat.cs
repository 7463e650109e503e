namespace PackPlanner.Core.Packs;

/// <summary>How warm a cell can get at most.</summary>
public static class CellHeat
{
    /// <summary>
    /// Specific heat of a cell, joules per kilogram and kelvin. 690 to 810 for 18650 cells, source: [BatteryKnowledge];
    /// other cells up to 1100, source: [FromMemory].
    /// </summary>
    public static (double Low, double High) SpecificHeat => (690, 1100);

    /// <summary>Rise of temperature when no heat leaves the cell: an upper bound.</summary>
    /// <param name="watts">Heat in the cell, watts: by the DC resistance of a load that lasts; a 1 kHz figure makes the rise look small.</param>
    /// <param name="seconds">How long.</param>
    /// <param name="massKg">Mass of the cell, kilograms.</param>
    /// <param name="specificHeat">Joules per kilogram and kelvin.</param>
    /// <returns>Kelvin. Source: [BatteryKnowledge]: dT = P t / (m c).</returns>
    public static double RiseK(double watts, double seconds, double massKg, double specificHeat) => watts * seconds / (massKg * specificHeat);
}
