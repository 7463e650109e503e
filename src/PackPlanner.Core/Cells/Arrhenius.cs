namespace PackPlanner.Core.Cells;

/// <summary>How a rate, a leak or a resistance changes with temperature: by a constant factor for each step of 1/T.</summary>
/// <remarks>
/// Two points make a fit, and no more than that: a leak fitted to 20 and 50 °C foretold 391 µA at 40 °C where 553 µA was
/// measured. Source: [LeakNote]; so whatever rests on two points is good to 40 %.
/// </remarks>
public static class Arrhenius
{
    private const double ZeroDegCInKelvin = 273.15;

    /// <summary>The slope through two points.</summary>
    /// <param name="coldDegC">One temperature, degrees Celsius.</param>
    /// <param name="warmDegC">The other.</param>
    /// <param name="warmOverCold">The figure at the warm one over that at the cold one, above zero.</param>
    /// <returns>Kelvin: activation energy over the molar gas constant; below zero for a figure that falls with warmth.</returns>
    public static double SlopeKelvin(double coldDegC, double warmDegC, double warmOverCold) =>
        Math.Log(warmOverCold) / (1 / (coldDegC + ZeroDegCInKelvin) - 1 / (warmDegC + ZeroDegCInKelvin));

    /// <summary>The figure at a temperature over that at another.</summary>
    /// <param name="slopeKelvin">From <see cref="SlopeKelvin"/>.</param>
    /// <param name="degC">Where it is wanted, degrees Celsius.</param>
    /// <param name="knownAtDegC">Where it is known.</param>
    /// <returns>The factor, 1 where both temperatures are the same.</returns>
    public static double Factor(double slopeKelvin, double degC, double knownAtDegC) =>
        Math.Exp(slopeKelvin * (1 / (knownAtDegC + ZeroDegCInKelvin) - 1 / (degC + ZeroDegCInKelvin)));
}
