namespace PackPlanner.Core.Packs;

/// <summary>How warm a cell can get at most.</summary>
public static class CellHeat
{
    /// <summary>Specific heat of 18650 cells, joules per kilogram and kelvin: from 690 to 810. Source: [BatteryKnowledge].</summary>
    public static (double Low, double High) SpecificHeat18650 => (690, 810);

    /// <summary>Rise of temperature when no heat leaves the cell: an upper bound.</summary>
    /// <param name="loadA">Current through the cell, amperes.</param>
    /// <param name="milliohm">DC resistance of a load that lasts, milliohm; a 1 kHz figure makes the rise look small.</param>
    /// <param name="seconds">How long.</param>
    /// <param name="massKg">Mass of the cell, kilograms.</param>
    /// <param name="specificHeat">Joules per kilogram and kelvin.</param>
    /// <returns>Kelvin. Source: [BatteryKnowledge]: dT = P t / (m c).</returns>
    public static double AdiabaticRiseK(double loadA, double milliohm, double seconds, double massKg, double specificHeat) =>
        loadA * loadA * milliohm / 1000 * seconds / (massKg * specificHeat);
}
