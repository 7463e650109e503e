namespace PackPlanner.Core.Cells;

/// <summary>Which part of the charge is left to draw when the pack is cold.</summary>
public static class ColdCapacity
{
    /// <summary>Temperature at which capacities are taken to be measured, degrees Celsius.</summary>
    public const double TestDegC = 25;

    // Source: [LfpColdSheet]: 100 % at 25 °C, 80 % at 0 °C, 50 % at -20 °C.
    private static readonly (double DegC, double Fraction)[] IronPhosphate = [(-20, 0.5), (0, 0.8), (25, 1)];

    // Source: [Nenadic2020]: a new cell gave 1.5 % more or less for 3 K of room temperature, 0.5 % for each kelvin.
    private const double PerKelvin = 0.005;
    private const double MeasuredDownToDegC = 15;

    // Drawn on far below what was measured, the line of LFP would cross nought; some charge is always left. Our choice.
    private const double Least = 0.05;

    /// <summary>Charge left over charge at 25 °C.</summary>
    /// <param name="chemistry">The chemistry.</param>
    /// <param name="degC">Cell temperature, degrees Celsius.</param>
    /// <returns>0..1; warmth above 25 °C is not counted as a gain.</returns>
    public static double Fraction(Chemistry chemistry, double degC)
    {
        if (degC >= TestDegC)
            return 1;
        if (chemistry.Name != "LFP")
            return Math.Max(Least, 1 - PerKelvin * (TestDegC - degC));
        int upper = degC < 0 ? 1 : 2;
        (double lowC, double low) = IronPhosphate[upper - 1];
        (double highC, double high) = IronPhosphate[upper];
        return Math.Max(Least, low + (high - low) * (degC - lowC) / (highC - lowC));
    }

    /// <summary>Whether a temperature lies outside what the rule was measured for.</summary>
    /// <param name="chemistry">The chemistry.</param>
    /// <param name="degC">Degrees Celsius.</param>
    /// <returns>True where the figure is an extrapolation.</returns>
    public static bool IsExtrapolated(Chemistry chemistry, double degC) =>
        chemistry.Name == "LFP" ? degC < -20 : degC < MeasuredDownToDegC;
}
